package blindlap.seal;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A SHA-256 value that people write down and compare: of a plan with its sealed order, of a closed
 * review, or of the plan's bytes alone. Equality takes the same time wherever two differ.
 */
public final class Fingerprint {
  private static final int BYTES = 32;
  private static final int GROUP = 8;
  private static final Pattern BETWEEN_GROUPS = Pattern.compile("[\\s\\-:]+");
  private static final Pattern HEX = Pattern.compile("[0-9a-f]{64}");

  private final byte[] value;

  private Fingerprint(byte[] value) {
    this.value = value;
  }

  /**
   * A fingerprint that was computed or stored.
   *
   * @param value 32 bytes
   */
  public static Fingerprint of(byte[] value) {
    if (value.length != BYTES) {
      throw new IllegalArgumentException("a fingerprint has 32 bytes, not " + value.length);
    }
    return new Fingerprint(value.clone());
  }

  /**
   * Reads a fingerprint as people write it: 64 hexadecimal digits, in groups or not, capitals or
   * not.
   *
   * @throws IllegalArgumentException if it is anything else; the message says what
   */
  public static Fingerprint parse(String text) {
    String digits = BETWEEN_GROUPS.matcher(text).replaceAll("").toLowerCase(Locale.ROOT);
    if (!HEX.matcher(digits).matches()) {
      throw new IllegalArgumentException(
          "a fingerprint is 64 digits 0-9 and a-f, in eight groups of eight, but this text has "
              + digits.length()
              + " characters"
              + (digits.length() == 2 * BYTES ? ", not all of them such digits" : ""));
    }
    return new Fingerprint(HexFormat.of().parseHex(digits));
  }

  /** SHA-256 of some bytes, as they are. */
  public static Fingerprint sha256(byte[] bytes) {
    return new Fingerprint(digest(bytes));
  }

  /** The 32 bytes. */
  public byte[] bytes() {
    return value.clone();
  }

  /** 64 lower-case hexadecimal digits. */
  public String hex() {
    return HexFormat.of().formatHex(value);
  }

  /** The digits in eight groups of eight, for reading aloud. */
  public String grouped() {
    String hex = hex();
    StringBuilder text = new StringBuilder(hex.substring(0, GROUP));
    for (int i = GROUP; i < hex.length(); i += GROUP) {
      text.append(' ').append(hex, i, i + GROUP);
    }
    return text.toString();
  }

  static byte[] digest(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Fingerprint that && MessageDigest.isEqual(value, that.value);
  }

  @Override
  public int hashCode() {
    return (value[0] & 0xff) << 24
        | (value[1] & 0xff) << 16
        | (value[2] & 0xff) << 8
        | (value[3] & 0xff);
  }

  @Override
  public String toString() {
    return hex();
  }
}
