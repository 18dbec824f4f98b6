package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The six words that open the key to the helper: 66 bits. It never prints itself; {@link #text} is
 * for the helper's paper alone.
 */
public final class HelperPhrase {
  /** Words in a phrase. */
  public static final int WORDS = 6;

  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");

  private final List<String> words;

  private HelperPhrase(List<String> words) {
    this.words = words;
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
   * Reads a phrase as people type it: capitals, spaces, dashes and commas do not matter, and the
   * first four letters of a word are enough.
   */
  public static PhraseReading parse(String typed) {
    List<String> parts =
        BETWEEN.splitAsStream(typed.toLowerCase(Locale.ROOT)).filter(p -> !p.isEmpty()).toList();
    List<String> words = new ArrayList<>(WORDS);
    for (int i = 0; i < parts.size() && i < WORDS; i++) {
      int index = Words.find(parts.get(i));
      if (index < 0) {
        return new PhraseReading.UnknownWord(i + 1, parts.get(i), Words.near(parts.get(i)));
      }
      words.add(Words.word(index));
    }
    if (parts.size() != WORDS) {
      return new PhraseReading.WrongCount(parts.size());
    }
    return new PhraseReading.Read(new HelperPhrase(List.copyOf(words)));
  }

  /**
   * The words in order, lower case, with one space between: what is printed and what is derived.
   */
  public String text() {
    return String.join(" ", words);
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
