package blindlap.seal;

import java.math.BigInteger;
import java.util.Arrays;

/**
 * Random numbers that anyone can recompute from the seed: word i (from 0) is the first 8 bytes,
 * big-endian and unsigned, of SHA-256(seed ‖ i as 8 bytes big-endian).
 */
final class OrderStream {
  static final int SEED_BYTES = 32;
  private static final int WORD_BITS = Long.SIZE;

  private final byte[] block;
  private long next;

  OrderStream(byte[] seed) {
    if (seed.length != SEED_BYTES) {
      throw new IllegalArgumentException("a seed has 32 bytes, not " + seed.length);
    }
    block = Arrays.copyOf(seed, SEED_BYTES + Long.BYTES);
  }

  /** The next word, from 0 to 2^64 − 1. */
  BigInteger word() {
    System.arraycopy(LengthPrefixed.eight(next++), 0, block, SEED_BYTES, Long.BYTES);
    return new BigInteger(1, Arrays.copyOf(Fingerprint.digest(block), Long.BYTES));
  }

  /**
   * A number from 0 to bound − 1, all equally likely. It takes k words, the fewest with 2^(64k) ≥
   * bound, as one big-endian number v; a v at or above the largest multiple of the bound is
   * rejected and the next k words are taken; the number is v mod bound.
   *
   * @param bound at least 1
   */
  BigInteger below(BigInteger bound) {
    int words =
        Math.max(1, (bound.subtract(BigInteger.ONE).bitLength() + WORD_BITS - 1) / WORD_BITS);
    BigInteger range = BigInteger.ONE.shiftLeft(WORD_BITS * words);
    BigInteger limit = range.subtract(range.mod(bound));
    while (true) {
      BigInteger value = BigInteger.ZERO;
      for (int i = 0; i < words; i++) {
        value = value.shiftLeft(WORD_BITS).or(word());
      }
      if (value.compareTo(limit) < 0) {
        return value.mod(bound);
      }
    }
  }
}
