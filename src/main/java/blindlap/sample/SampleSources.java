package blindlap.sample;

import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * Bytes for invented sessions, the same at every run so that their laps fit their order. Anyone can
 * compute them: never for a session that is really ridden.
 */
public final class SampleSources {
  private SampleSources() {}

  public static SealingSources of(String sample) {
    return new SealingSources(
        stream(sample, "order"),
        stream(sample, "codes"),
        stream(sample, "nonce"),
        stream(sample, "warm-up"),
        stream(sample, "phrase"),
        stream(sample, "salt"),
        stream(sample, "iv"));
  }

  /** SHA-256 of sample, purpose and a counter, block after block. */
  public static SecureBytes stream(String sample, String purpose) {
    int[] counter = {0};
    return count -> {
      byte[] bytes = new byte[count];
      int filled = 0;
      while (filled < count) {
        byte[] block = block(sample + "/" + purpose + "/" + counter[0]++);
        int part = Math.min(block.length, count - filled);
        System.arraycopy(block, 0, bytes, filled, part);
        filled += part;
      }
      return bytes;
    };
  }

  private static byte[] block(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
