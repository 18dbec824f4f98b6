package blindlap.stats.pool;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;

/**
 * Counts, over the combinations of orders, how often (Σa)²/Σc and its maxima reach what was seen.
 */
final class StratifiedTally {
  /** Ties count as reached, with the tolerance of docs/method.md#ties. */
  private static final double SLACK = 1e-9;

  private final int measures;
  private final Integer[] descending;
  private final double[] threshold;
  private final long[] own;
  private final long[] step;
  private long orders;

  /**
   * @param observed a and c of every measure, summed over the sessions as ridden
   */
  StratifiedTally(double[] observed) {
    this.measures = observed.length / 2;
    this.threshold = new double[measures];
    this.descending = new Integer[measures];
    this.own = new long[measures];
    this.step = new long[measures];
    for (int m = 0; m < measures; m++) {
      descending[m] = m;
      threshold[m] = statistic(observed, m) * (1 - SLACK) - SLACK * SLACK;
    }
    Arrays.sort(
        descending, Collections.reverseOrder(Comparator.comparingDouble(m -> threshold[m])));
  }

  /** Numbers in a row of sums. */
  int width() {
    return 2 * measures;
  }

  private static double statistic(double[] sums, int measure) {
    double c = sums[2 * measure + 1];
    return c > 0 ? sums[2 * measure] * sums[2 * measure] / c : 0;
  }

  /** Takes the sums of a combination of orders; its mirror image has the same statistics. */
  void order(double[] sums) {
    orders++;
    double largest = 0;
    for (int rank = measures - 1; rank >= 0; rank--) {
      int m = descending[rank];
      double each = statistic(sums, m);
      largest = Math.max(largest, each);
      own[m] += each >= threshold[m] ? 1 : 0;
      step[m] += largest >= threshold[m] ? 1 : 0;
    }
  }

  /** p of every measure on its own. */
  double[] own() {
    double[] p = new double[measures];
    for (int m = 0; m < measures; m++) {
      p[m] = (double) own[m] / orders;
    }
    return p;
  }

  /** p adjusted by the step-down maximum. */
  double[] stepDown() {
    double[] p = new double[measures];
    double before = 0;
    for (int m : descending) {
      before = Math.max(before, (double) step[m] / orders);
      p[m] = before;
    }
    return p;
  }
}
