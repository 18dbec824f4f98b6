package blindlap.desk;

import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import java.nio.ByteBuffer;
import java.util.SplittableRandom;

/** Sources of a sealing in tests: all but the order's are the same, whatever the order. */
public final class FixedSources {
  private FixedSources() {}

  /** Sources in which only the order follows from the seed, and the seed is its bytes. */
  public static SealingSources order(long seed) {
    return of(count -> ByteBuffer.allocate(count).putLong(seed).array());
  }

  /** Sources with a stream of their own for the order. */
  static SealingSources of(SecureBytes order) {
    return new SealingSources(
        order, stream(1), stream(2), stream(3), stream(4), stream(5), stream(6));
  }

  /** Bytes that follow from a seed. */
  static SecureBytes stream(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    return count -> {
      byte[] bytes = new byte[count];
      random.nextBytes(bytes);
      return bytes;
    };
  }
}
