package blindlap.stats.compare;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.ScoreCounts;
import java.util.Arrays;

/**
 * Whether voids fell unevenly on the setups, by re-randomisation over the admissible orders
 * (docs/method.md#voids): of void laps, or of whole stints. The statistic is the sum of squares of
 * the numbers per setup, which for two setups orders the orders as |z'm| does, m the number of
 * voids of each stint. If laps become void because of the setup that was on, the test of the setups
 * is no longer exact; a small p says so. Exact for sets of any size.
 *
 * @param voids number of void laps, or stints, per setup
 * @param p share of orders at least as uneven
 */
public record VoidBalance(int[] voids, double p) {
  /** Below this p an imbalance is flagged. */
  public static final double FLAG = 0.10;

  public VoidBalance {
    voids = voids.clone();
  }

  /** Of whole stints: true where the stint is void. */
  public static VoidBalance of(Assignments set, int[] order, boolean[] isVoid) {
    int[] each = new int[isVoid.length];
    Arrays.setAll(each, i -> isVoid[i] ? 1 : 0);
    return of(set, order, each);
  }

  /**
   * @param set the admissible orders, closed under renaming
   * @param order the order ridden
   * @param inStint number of voids in each stint, none negative
   * @throws StatsException if the order is not admissible or lengths differ
   */
  public static VoidBalance of(Assignments set, int[] order, int[] inStint) {
    DayCheck.order(set, order);
    DayCheck.length(set, "voids", inStint.length, "entries");
    int[] voids = new int[set.setups()];
    for (int i = 0; i < order.length; i++) {
      voids[order[i]] += inStint[i];
    }
    // One whole number holds the number of voids of every setup, as digits.
    long base = Arrays.stream(voids).sum() + 1L;
    long[][] score = new long[order.length][set.setups()];
    long unit = 1;
    for (int setup = 0; setup < set.setups(); setup++) {
      for (int i = 0; i < order.length; i++) {
        score[i][setup] = inStint[i] * unit;
      }
      unit = Math.multiplyExact(unit, base);
    }
    long observed = Arrays.stream(voids).mapToLong(each -> (long) each * each).sum();
    double p = ScoreCounts.of(set, score).share(set, digits -> squares(digits, base) >= observed);
    return new VoidBalance(voids, p);
  }

  private static long squares(long digits, long base) {
    long sum = 0;
    for (long rest = digits; rest > 0; rest /= base) {
      sum += (rest % base) * (rest % base);
    }
    return sum;
  }

  @Override
  public int[] voids() {
    return voids.clone();
  }

  /** True if the voids fall so unevenly that it has to be said. */
  public boolean flagged() {
    return p < FLAG;
  }
}
