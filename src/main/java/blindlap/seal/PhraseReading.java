package blindlap.seal;

import java.util.ArrayList;
import java.util.List;

/** What became of a typed helper phrase. */
public sealed interface PhraseReading {
  /**
   * Reads a phrase as people type it: capitals, spaces, dashes and commas do not matter, and the
   * first four letters of a word are enough.
   */
  static PhraseReading of(String typed) {
    List<String> parts = TypedWords.of(typed);
    List<String> words = new ArrayList<>(HelperPhrase.WORDS);
    for (int i = 0; i < parts.size() && i < HelperPhrase.WORDS; i++) {
      int index = Words.find(parts.get(i));
      if (index < 0) {
        return new UnknownWord(i + 1, parts.get(i), Words.near(parts.get(i)));
      }
      words.add(Words.word(index));
    }
    if (parts.size() != HelperPhrase.WORDS) {
      return new WrongCount(parts.size());
    }
    return new Read(HelperPhrase.of(words));
  }

  /** Six words of the list. */
  record Read(HelperPhrase phrase) implements PhraseReading {}

  /**
   * A word that is not in the list. It is part of the helper's typing: show it to the helper alone.
   *
   * @param position which word, from 1
   * @param typed what was typed, lower case
   * @param near the words of the list that look most like it, possibly none
   */
  record UnknownWord(int position, String typed, List<String> near) implements PhraseReading {
    /** Says where only: what was typed may be a word of the phrase but for a letter. */
    @Override
    public String toString() {
      return "UnknownWord[position=" + position + "]";
    }
  }

  /**
   * All words are in the list, but there are not six.
   *
   * @param words how many there are
   */
  record WrongCount(int words) implements PhraseReading {}
}
