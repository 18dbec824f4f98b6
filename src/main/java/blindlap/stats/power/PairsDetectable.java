package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.NoncentralT;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import java.util.Arrays;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * The difference between two of three or more setups that a day can detect, by an approximation:
 * the two-sided t test of one pair at level .05 divided by the number of pairs (Bonferroni) in
 * place of the largest-t adjustment, with the day's information shared equally. Against the
 * simulated power of docs/method.md#figures-of-pairs it differs by less than .03.
 *
 * <p>Orders that ride one setup in the same stints all show that setup's difference. If there are
 * many of them among few orders, the largest t of the order ridden is seldom among the highest 5 %,
 * however large the difference.
 *
 * @param setups number of setups k, at least 3
 * @param stints number of stints N, equally many of each setup
 * @param df degrees of freedom, N − nuisance columns − (k − 1)
 * @param mostPower the power that no difference exceeds, at most 1
 */
public record PairsDetectable(int setups, int stints, int df, double mostPower) {
  private static final double LEVEL = 0.05;

  /** All orders of a block rule have the same number of likes; those of other rules vary little. */
  private static final int ORDERS_LOOKED_AT = 32;

  /**
   * @param set the admissible orders of three or more setups
   * @param drift what will be removed
   * @throws StatsException if there are fewer setups or too few stints
   */
  public static PairsDetectable of(Assignments set, Drift drift) {
    if (set.setups() < 3) {
      throw new StatsException("rule", "has " + set.setups() + " setups; pairs need three.");
    }
    int df = set.stints() - drift.columns() - (set.setups() - 1);
    if (df < 1) {
      throw DayCheck.tooFew("rule", set.stints(), set.setups(), Nuisance.of(drift));
    }
    return new PairsDetectable(set.setups(), set.stints(), df, mostPower(set));
  }

  /** Renamings of the setups count once: K/k! orders, of which n/(k − 1)! ride A alike. */
  private static double mostPower(Assignments set) {
    double renamings = 1;
    for (int i = 2; i <= set.setups(); i++) {
      renamings *= i;
    }
    double highest = Math.floor(LEVEL * set.count().doubleValue() / renamings + 1e-9);
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(1L);
    int[] order = new int[set.stints()];
    double sum = 0;
    for (int i = 0; i < ORDERS_LOOKED_AT; i++) {
      set.random(source, order);
      sum += Math.min(1, highest * renamings / set.setups() / ridingFirstAlike(set, order));
    }
    return sum / ORDERS_LOOKED_AT;
  }

  private static double ridingFirstAlike(Assignments set, int[] order) {
    double[] ways = new double[set.nodes()];
    int[] layer = {0};
    ways[0] = 1;
    for (int ridden : order) {
      int[] found = new int[Math.min(set.nodes(), layer.length * set.setups())];
      int count = 0;
      int from = ridden == 0 ? 0 : 1;
      int to = ridden == 0 ? 0 : set.setups() - 1;
      for (int node : layer) {
        for (int setup = from; setup <= to; setup++) {
          int next = set.next(node, setup);
          if (next >= 0) {
            if (ways[next] == 0) {
              found[count++] = next;
            }
            ways[next] += ways[node];
          }
        }
      }
      layer = Arrays.copyOf(found, count);
    }
    double all = 0;
    for (int node : layer) {
      all += ways[node];
    }
    return all;
  }

  /** Standard error of a pair's estimate for noise of standard deviation 1. */
  private double unitError() {
    return Math.sqrt(2.0 * setups / stints);
  }

  /**
   * Probability that the pair is told apart.
   *
   * @param difference true difference of the pair
   * @param sd noise in the same unit, above 0
   */
  public double power(double difference, double sd) {
    Require.positive("sd", sd);
    return Math.min(
        mostPower, powerAt(Require.finite("difference", difference) / sd / unitError()));
  }

  private double powerAt(double shift) {
    int pairs = setups * (setups - 1) / 2;
    double critical = Quantiles.tUpper(LEVEL / 2 / pairs, df);
    NoncentralT t = NoncentralT.of(df, shift);
    return t.sf(critical) + t.cdf(-critical);
  }

  /**
   * The difference found with this power.
   *
   * @param sd noise, above 0
   * @param power above .05 and below 1
   * @return in the unit of {@code sd}; NaN if no difference has this power
   */
  public double difference(double sd, double power) {
    Require.positive("sd", sd);
    double about = about(power);
    return power > mostPower ? Double.NaN : about * sd;
  }

  /** As {@link #difference} for noise 1, as if there were orders enough. */
  double about(double power) {
    if (!(power > LEVEL && power < 1)) {
      throw new StatsException("power", "must lie above .05 and below 1, but is " + power + ".");
    }
    double high = 4;
    while (powerAt(high) < power) {
      high *= 2;
    }
    return new BrentSolver(1e-12, 1e-12, 1e-14).solve(200, x -> powerAt(x) - power, 0, high)
        * unitError();
  }
}
