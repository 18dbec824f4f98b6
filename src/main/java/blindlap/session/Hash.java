package blindlap.session;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.regex.Pattern;

/** SHA-256 of an entry's text, as 64 lower-case hexadecimal digits. */
public record Hash(String hex) {
  private static final Pattern FORM = Pattern.compile("[0-9a-f]{64}");

  /** What the first entry of a chain names as its predecessor. */
  public static final Hash NONE = new Hash("0".repeat(64));

  public Hash {
    if (!FORM.matcher(hex).matches()) {
      throw new IllegalArgumentException("a hash is 64 hexadecimal digits");
    }
  }

  /** The hash of a text in UTF-8. */
  public static Hash of(String text) {
    return of(text.getBytes(StandardCharsets.UTF_8));
  }

  /** The hash of bytes. */
  public static Hash of(byte[] bytes) {
    try {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      return new Hash(java.util.HexFormat.of().formatHex(digest));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  @Override
  public String toString() {
    return hex;
  }
}
