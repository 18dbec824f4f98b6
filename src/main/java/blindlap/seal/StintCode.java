package blindlap.seal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Three words of the list that show somebody once what to set for one stint: 33 bits. It never
 * prints itself; {@link #text} is for the slip of paper alone.
 */
public final class StintCode {
  /** Words in a code. */
  public static final int WORDS = 3;

  private final List<String> words;

  private StintCode(List<String> words) {
    this.words = List.copyOf(words);
  }

  /** Draws a code: each word is the one with index v mod 2048 of two bytes v, big-endian. */
  static StintCode draw(SecureBytes source) {
    byte[] bytes = source.exactly(2 * WORDS);
    List<String> words = new ArrayList<>(WORDS);
    for (int i = 0; i < WORDS; i++) {
      int value = (bytes[2 * i] & 0xff) << 8 | (bytes[2 * i + 1] & 0xff);
      words.add(Words.word(value % Words.COUNT));
    }
    return new StintCode(words);
  }

  /**
   * Reads a code as people type it: capitals, spaces, dashes and commas do not matter, and the
   * first four letters of a word are enough.
   *
   * @return empty if these are not three words of the list
   */
  public static Optional<StintCode> read(String typed) {
    List<String> words = new ArrayList<>(WORDS);
    for (String part : TypedWords.of(typed)) {
      int index = Words.find(part);
      if (index < 0) {
        return Optional.empty();
      }
      words.add(Words.word(index));
    }
    return words.size() == WORDS ? Optional.of(new StintCode(words)) : Optional.empty();
  }

  /** The words in order, lower case, one space between: what is printed and what is derived. */
  public String text() {
    return String.join(" ", words);
  }

  @Override
  public String toString() {
    return "StintCode[" + WORDS + " words]";
  }
}
