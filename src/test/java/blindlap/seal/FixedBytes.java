package blindlap.seal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;

/** Sources that always give the same bytes, for tests. */
final class FixedBytes {
  private FixedBytes() {}

  /** These bytes, again and again. */
  static SecureBytes hex(String hex) {
    byte[] bytes = HexFormat.of().parseHex(hex);
    int[] at = {0};
    return count -> {
      byte[] next = new byte[count];
      for (int i = 0; i < count; i++) {
        next[i] = bytes[at[0]++ % bytes.length];
      }
      return next;
    };
  }

  /** A long stream of bytes that look random: SHA-256(label, call number), cut to length. */
  static SecureBytes stream(String label) {
    int[] call = {0};
    return count ->
        Arrays.copyOf(
            Fingerprint.digest((label + " " + call[0]++).getBytes(StandardCharsets.UTF_8)), count);
  }

  /** 32 bytes that count up. */
  static String counting(int first) {
    StringBuilder hex = new StringBuilder();
    for (int i = 0; i < 32; i++) {
      hex.append(String.format("%02x", first + i));
    }
    return hex.toString();
  }
}
