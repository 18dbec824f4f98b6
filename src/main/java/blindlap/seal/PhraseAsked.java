package blindlap.seal;

import java.util.ArrayList;
import java.util.List;

/**
 * A helper phrase that was drawn and seals nothing yet. It is shown, two of its words are asked
 * back, and only then it is given out to seal with: a phrase that nobody has read seals no session.
 * It never prints itself.
 */
public final class PhraseAsked {
  /** Pairs of places: 5 + 4 + 3 + 2 + 1 for six words. */
  private static final int PAIRS = HelperPhrase.WORDS * (HelperPhrase.WORDS - 1) / 2;

  private static final int BYTE = 256;

  private final HelperPhrase phrase;
  private final int first;
  private final int second;

  private PhraseAsked(HelperPhrase phrase, int first, int second) {
    this.phrase = phrase;
    this.first = first;
    this.second = second;
  }

  /**
   * Draws a phrase, then the places: v of one byte; v ≥ 256 − 256 mod 15 is rejected; the pair is
   * number v mod 15 of (1, 2), (1, 3) … (5, 6).
   */
  static PhraseAsked draw(SecureBytes source) {
    HelperPhrase phrase = HelperPhrase.draw(source);
    int value = source.exactly(1)[0] & 0xff;
    while (value >= BYTE - BYTE % PAIRS) {
      value = source.exactly(1)[0] & 0xff;
    }
    int left = value % PAIRS;
    int first = 1;
    while (left >= HelperPhrase.WORDS - first) {
      left -= HelperPhrase.WORDS - first;
      first++;
    }
    return new PhraseAsked(phrase, first, first + 1 + left);
  }

  /** The six words, for the helper's eyes. */
  public String text() {
    return phrase.text();
  }

  /** Place of the first word that is asked back, from 1. */
  public int first() {
    return first;
  }

  /** Place of the second word that is asked back, after the first. */
  public int second() {
    return second;
  }

  /** What became of the words that were typed back. */
  public sealed interface Back {
    /** Both are right: the phrase may seal. */
    record Right(HelperPhrase phrase) implements Back {}

    /**
     * The phrase is to be shown again.
     *
     * @param places of the words that differ; both if two words were not typed
     */
    record Wrong(List<Integer> places) implements Back {
      public Wrong {
        places = List.copyOf(places);
      }
    }
  }

  /** Reads the two words, with the same patience as {@link PhraseReading}. */
  public Back typed(String typed) {
    List<String> parts = TypedWords.of(typed);
    if (parts.size() != 2) {
      return new Back.Wrong(List.of(first, second));
    }
    List<Integer> wrong = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      int place = i == 0 ? first : second;
      int index = Words.find(parts.get(i));
      if (index < 0 || !Words.word(index).equals(phrase.word(place))) {
        wrong.add(place);
      }
    }
    return wrong.isEmpty() ? new Back.Right(phrase) : new Back.Wrong(wrong);
  }

  /** For who has asked for no questions: the phrase must have been written out whole before. */
  public HelperPhrase unasked() {
    return phrase;
  }

  @Override
  public String toString() {
    return "PhraseAsked[" + HelperPhrase.WORDS + " words]";
  }
}
