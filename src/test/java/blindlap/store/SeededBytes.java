package blindlap.store;

import blindlap.seal.SealParameters;
import blindlap.seal.Sealing;
import blindlap.seal.SealingSources;
import blindlap.seal.SecureBytes;
import java.util.Random;

/** Bytes that a seed gives again, where a test needs chance that can be repeated. */
final class SeededBytes implements SecureBytes {
  private final Random random;

  SeededBytes(long seed) {
    this.random = new Random(seed);
  }

  @Override
  public byte[] next(int count) {
    byte[] bytes = new byte[count];
    random.nextBytes(bytes);
    return bytes;
  }

  /** A sealing whose every source is this one, and whose phrase costs one round. */
  static Sealing sealing(long seed) {
    return new Sealing(SealingSources.allFrom(new SeededBytes(seed)), new SealParameters(1));
  }
}
