package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import blindlap.stats.order.ScoreCounts;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.Map;

/**
 * Harmonic mean of c/(N/4) over a two-setup set, c = z'Wz with an intercept and a straight trend.
 * For balanced sets c depends on an order only through the sum of B's positions, whose distribution
 * is counted exactly along the graph; other sets are walked.
 */
public final class TrendEfficiency {
  private static final double NOTHING = 1e-12;

  private TrendEfficiency() {}

  /** With a straight trend removed. */
  public static double of(Assignments set) {
    return of(set, Drift.LINE, Sampling.PREFERRED);
  }

  /**
   * With any drift removed. Exact, but for sets beyond 2^22 orders whose c is no function of one
   * sum: those are sampled.
   */
  public static double of(Assignments set, Drift drift, Sampling sampling) {
    if (set.balanced() && drift != Drift.CURVE) {
      return drift == Drift.NONE ? 1 : counted(set);
    }
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return walked(set, all, drift, sampling);
  }

  /** True if the answer for this set and drift comes from a sample. */
  public static boolean sampled(Assignments set, Drift drift, Sampling sampling) {
    return sampling.samples(set) && !(set.balanced() && drift != Drift.CURVE);
  }

  /** On the stints used only, relative to a quarter of their number; by walk or sample. */
  public static double walked(Assignments set, boolean[] use, Drift drift, Sampling sampling) {
    sampling.check(set);
    double best = DayCheck.count(use) / 4.0;
    double[] sum = new double[2];
    PairSums sink =
        (a, b, c) -> {
          sum[0] += c > NOTHING * best ? best / c : Double.POSITIVE_INFINITY;
          sum[1]++;
        };
    double[] zero = new double[set.stints()];
    CurveWalk walk = new CurveWalk(set, new Residuals(use, drift), zero, zero, sink);
    if (sampling.samples(set)) {
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.run();
    }
    return sum[1] / sum[0];
  }

  private static double counted(Assignments set) {
    double n = set.stints();
    double spread = n * (n * n - 1) / 12;
    long[][] positions = new long[set.stints()][2];
    for (int i = 0; i < positions.length; i++) {
      positions[i][1] = i;
    }
    double sum = 0;
    for (Map.Entry<Long, BigInteger> entry : ScoreCounts.of(set, positions).counts().entrySet()) {
      double overlap = (2.0 * entry.getKey() - n * (n - 1) / 2) / 2;
      double c = n / 4 - (spread == 0 ? 0 : overlap * overlap / spread);
      sum +=
          c > NOTHING * n ? entry.getValue().doubleValue() * (n / 4) / c : Double.POSITIVE_INFINITY;
    }
    return set.count().doubleValue() / sum;
  }
}
