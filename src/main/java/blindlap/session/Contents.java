package blindlap.session;

import java.util.Optional;
import java.util.Set;

/**
 * Bytes that entries name by their SHA-256 and that no number hangs on: positions of recorded laps.
 * Kept compressed and once each, beside the record; any of them may be missing.
 */
public interface Contents {
  /**
   * Keeps bytes.
   *
   * @return their SHA-256, 64 lower-case hexadecimal digits
   */
  String put(byte[] plain);

  /** Bytes by their SHA-256; empty if they are not here, or not whole. */
  Optional<byte[]> find(String sha256);

  /** The SHA-256 of everything that is here. */
  Set<String> names();
}
