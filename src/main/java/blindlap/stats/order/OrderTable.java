package blindlap.stats.order;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * The orders of a two-setup set as bits (1 where B is ridden, the first stint lowest), for
 * simulations that draw from a set too large to be walked on every day but small enough to be
 * listed once: one random number and one look-up in place of a choice per stint.
 */
public final class OrderTable {
  /** Largest set that is listed; half a megabyte. */
  static final long LARGEST = 1L << 16;

  private static final int MOST_STINTS = 62;
  private static final int BYTE = 256;

  private final long[] orders;
  private final int bytes;

  private OrderTable(Assignments set) {
    this.orders = new long[set.count().intValueExact()];
    this.bytes = (set.stints() + 7) / 8;
    int[] at = {0};
    set.forEach(order -> orders[at[0]++] = bits(order));
  }

  private static long bits(int[] order) {
    long bits = 0;
    for (int i = 0; i < order.length; i++) {
      bits |= (long) order[i] << i;
    }
    return bits;
  }

  /** True if the set can be listed. */
  static boolean fits(Assignments set) {
    return set.setups() == 2 && set.stints() <= MOST_STINTS && set.atMost(LARGEST);
  }

  /**
   * @param set one that fits
   */
  static OrderTable of(Assignments set) {
    return new OrderTable(set);
  }

  /** One of the orders, all equally likely. */
  public long random(UniformRandomProvider source) {
    return orders[source.nextInt(orders.length)];
  }

  /**
   * Sums Σ±x over every byte of an order, + where B is ridden.
   *
   * @param x one value a stint
   * @return {@code [byte · 256 + value]}
   */
  public double[] sums(double[] x) {
    double[] sums = new double[bytes * BYTE];
    for (int b = 0; b < bytes; b++) {
      int first = b * BYTE;
      int stints = Math.min(8, x.length - 8 * b);
      for (int i = 0; i < stints; i++) {
        sums[first] -= x[8 * b + i];
      }
      for (int value = 1; value < BYTE; value++) {
        int lowest = Integer.numberOfTrailingZeros(value);
        double flipped = lowest < stints ? 2 * x[8 * b + lowest] : 0;
        sums[first + value] = sums[first + (value & (value - 1))] + flipped;
      }
    }
    return sums;
  }

  /** The sum of an order. */
  public double sum(double[] sums, long order) {
    double sum = sums[(int) (order & 0xff)];
    for (int b = 1; b < bytes; b++) {
      sum += sums[b * BYTE + (int) (order >>> 8 * b & 0xff)];
    }
    return sum;
  }
}
