package blindlap.stats.compare;

import java.util.Arrays;

/**
 * Sorts many doubles: one pass deals them into bins by their leading bits, which order as the
 * numbers do, and each bin is sorted on its own, small enough for the processor's cache. Few are
 * sorted at once. Needs a second array of the same size while it runs.
 */
final class KnotSort {
  private static final int FEW = 1 << 14;
  private static final int MANY = 1 << 18;

  private KnotSort() {}

  /**
   * The first {@code size} numbers in ascending order.
   *
   * @param values may be changed
   * @return an array of length {@code size}, perhaps the one given
   */
  static double[] sorted(double[] values, int size) {
    if (size < FEW) {
      double[] exact = size == values.length ? values : Arrays.copyOf(values, size);
      Arrays.sort(exact);
      return exact;
    }
    int bits = size < MANY ? 16 : 20;
    int[] ends = new int[1 << bits];
    for (int i = 0; i < size; i++) {
      ends[bin(values[i], bits)]++;
    }
    int sum = 0;
    for (int bin = 0; bin < ends.length; bin++) {
      int often = ends[bin];
      ends[bin] = sum;
      sum += often;
    }
    double[] dealt = new double[size];
    for (int i = 0; i < size; i++) {
      dealt[ends[bin(values[i], bits)]++] = values[i];
    }
    int from = 0;
    for (int end : ends) {
      if (end - from > 1) {
        Arrays.sort(dealt, from, end);
      }
      from = end;
    }
    return dealt;
  }

  private static int bin(double value, int bits) {
    long raw = Double.doubleToRawLongBits(value);
    // Negative numbers order against their bits; flipping all but the sign turns them round.
    long ascending = raw ^ ((raw >> 63) & Long.MAX_VALUE);
    return (int) ((ascending ^ Long.MIN_VALUE) >>> (64 - bits));
  }
}
