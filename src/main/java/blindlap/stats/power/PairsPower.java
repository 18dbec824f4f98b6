package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.fault.RuleFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/**
 * What a day with three or more setups can show, by simulating days with the tests that will be
 * used: F for "do they differ at all" and the single-step maximum of |t| for pairs
 * (docs/method.md#pairs-power). Noise is white and normal with standard deviation 1; one setup
 * differs from all others, which are alike. Every day has an order of its own, and draws of its own
 * where the set is too large to be walked on every day.
 */
public final class PairsPower {
  /** Up to so many orders, renamings counted once, are walked whole on every day. */
  static final long WHOLE_UP_TO = 1500;

  private static final int DRAWS = 999;

  /** Multiples of the approximate difference at which power is simulated. */
  private static final double[] STEPS = {0.7, 0.85, 1, 1.15, 1.35, 1.7, 2.5, 4};

  private final Assignments set;
  private final Drift drift;
  private final PairsDetectable approximation;

  private PairsPower(Assignments set, Drift drift, PairsDetectable approximation) {
    this.set = set;
    this.drift = drift;
    this.approximation = approximation;
  }

  /**
   * @param set the admissible orders of three or more setups, closed under renaming them
   * @param drift what will be removed
   * @throws StatsException if there are fewer setups, too few stints or the set is not closed
   */
  public static PairsPower of(Assignments set, Drift drift) {
    if (!set.closedUnderRenaming()) {
      throw new Unusable(
          "rule", "has orders that are no orders with the setups renamed.", RuleFault.NOT_CLOSED);
    }
    return new PairsPower(set, drift, PairsDetectable.of(set, drift));
  }

  /** The approximation that answers at once. */
  public PairsDetectable approximation() {
    return approximation;
  }

  /** True differences, in units of noise, between which the difference seen is looked for. */
  public double[] ladder(double power) {
    double about = approximation.about(power);
    return Arrays.stream(STEPS).map(step -> step * about).toArray();
  }

  /**
   * Simulates days; the same noise and order serve for all true differences.
   *
   * @param differences how far one setup differs from all others, in units of noise, not negative
   * @param days at least 1
   * @param seed the same seed gives the same days
   * @param cancelled asked before every day
   * @throws CancellationException if cancelled or the thread is interrupted
   */
  public SimulatedPairs simulate(
      double[] differences, int days, long seed, BooleanSupplier cancelled) {
    if (days < 1) {
      throw new StatsException("days", "must be at least 1, but is " + days + ".");
    }
    for (double difference : differences) {
      if (Require.finite("differences", difference) < 0) {
        throw new StatsException(
            "differences", "must not be negative, but hold " + difference + ".");
      }
    }
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    PairsDay day = new PairsDay(set, drift, differences);
    List<int[]> whole = orders();
    int[] order = new int[set.stints()];
    double[] noise = new double[set.stints()];
    for (int i = 0; i < days; i++) {
      if (cancelled.getAsBoolean() || Thread.currentThread().isInterrupted()) {
        throw new CancellationException("simulation stopped after " + i + " days");
      }
      for (int stint = 0; stint < noise.length; stint++) {
        noise[stint] = normal.sample();
      }
      set.random(source, order);
      day.begin(order, noise);
      if (!whole.isEmpty()) {
        whole.forEach(day::count);
      } else {
        day.count(order);
        for (int draw = 0; draw < DRAWS; draw++) {
          set.random(source, order);
          day.count(order);
        }
      }
      day.end();
    }
    return new SimulatedPairs(differences, days, set.setups(), day.tally());
  }

  /** One order of each class under renaming, or none if there are too many. */
  private List<int[]> orders() {
    long renamings = 1;
    for (int i = 2; i <= set.setups(); i++) {
      renamings *= i;
    }
    List<int[]> orders = new ArrayList<>();
    if (set.balanced() && set.atMost(WHOLE_UP_TO * renamings)) {
      collect(0, 0, 0, new int[set.stints()], orders);
    }
    return orders;
  }

  private void collect(int i, int node, int seen, int[] order, List<int[]> orders) {
    if (i == order.length) {
      orders.add(order.clone());
      return;
    }
    for (int setup = 0; setup <= Math.min(seen, set.setups() - 1); setup++) {
      int to = set.next(node, setup);
      if (to >= 0) {
        order[i] = setup;
        collect(i + 1, to, Math.max(seen, setup + 1), order, orders);
      }
    }
  }
}
