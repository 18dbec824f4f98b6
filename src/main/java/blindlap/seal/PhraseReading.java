package blindlap.seal;

import java.util.List;

/** What became of a typed helper phrase. */
public sealed interface PhraseReading {

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
