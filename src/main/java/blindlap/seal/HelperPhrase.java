package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;

/**
 * The six words that open the key to the helper: 66 bits. It never prints itself; {@link #text} is
 * for the helper's paper alone.
 */
public final class HelperPhrase {
  /** Words in a phrase. */
  public static final int WORDS = 6;

  private final List<String> words;

  private HelperPhrase(List<String> words) {
    this.words = words;
  }

  /** The phrase of six words of the list. */
  static HelperPhrase of(List<String> words) {
    return new HelperPhrase(List.copyOf(words));
  }

  /** Draws a phrase: each word is the one with index v mod 2048 of two bytes v, big-endian. */
  static HelperPhrase draw(SecureBytes source) {
    byte[] bytes = source.exactly(2 * WORDS);
    List<String> words = new ArrayList<>(WORDS);
    for (int i = 0; i < WORDS; i++) {
      int value = (bytes[2 * i] & 0xff) << 8 | (bytes[2 * i + 1] & 0xff);
      words.add(Words.word(value % Words.COUNT));
    }
    return new HelperPhrase(List.copyOf(words));
  }

  /**
   * The words in order, lower case, with one space between: what is printed and what is derived.
   */
  public String text() {
    return String.join(" ", words);
  }

  /** The word at a place from 1. */
  String word(int place) {
    return words.get(place - 1);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof HelperPhrase that && MessageDigest.isEqual(bytes(), that.bytes());
  }

  private byte[] bytes() {
    return text().getBytes(StandardCharsets.US_ASCII);
  }

  /** The same for every phrase, so that it tells nothing. */
  @Override
  public int hashCode() {
    return WORDS;
  }

  @Override
  public String toString() {
    return "HelperPhrase[" + WORDS + " words]";
  }
}
