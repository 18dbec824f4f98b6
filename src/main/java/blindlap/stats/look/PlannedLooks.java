package blindlap.stats.look;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;

/**
 * What looks before the end of a day would save (docs/method.md#looks): which of them can never
 * stop it, and, by simulated days of white normal noise, how many stints would be ridden.
 */
public final class PlannedLooks {
  private static final double LEVEL = 0.05;
  private static final double SAME = 1e-9;

  /**
   * A set that every simulated day shares: more draws change its figures by less than its error.
   */
  private static final Sampling SHARED = new Sampling(false, 1_499, 20_261_127L, 0);

  private final Assignments set;
  private final List<Integer> looks;
  private final Drift drift;

  /**
   * @param set the admissible orders of two setups
   * @param looks last stints of the looks, rising, all before the last of the set
   * @throws StatsException if the set or the looks are impossible
   */
  public PlannedLooks(Assignments set, List<Integer> looks, Drift drift) {
    DayCheck.twoSetups(set);
    Looks.number(looks.size());
    int before = 0;
    for (int look : looks) {
      if (look <= before || look >= set.stints()) {
        throw new StatsException("looks", "must come one after the other, before the last stint.");
      }
      before = look;
    }
    this.set = set;
    this.looks = List.copyOf(looks);
    this.drift = drift;
  }

  /**
   * Looks that can never stop a day: all orders that begin alike give the same statistic there, and
   * already the fewest that do, with their mirror images, are more than may be marked.
   */
  public List<Integer> never() {
    List<Integer> never = new ArrayList<>();
    Set<Integer> nodes = Set.of(0);
    for (int stint = 1; stint < set.stints(); stint++) {
      nodes = after(nodes);
      if (looks.contains(stint)) {
        double share = (double) stint / set.stints();
        double room =
            Spending.OBRIEN_FLEMING.share(LEVEL, share) * set.count().doubleValue() + SAME;
        if (2 * fewest(nodes).doubleValue() > Math.floor(room)) {
          never.add(stint);
        }
      }
    }
    return never;
  }

  private Set<Integer> after(Set<Integer> nodes) {
    Set<Integer> next = new HashSet<>();
    for (int node : nodes) {
      for (int setup = 0; setup < 2; setup++) {
        int to = set.next(node, setup);
        if (to >= 0 && set.completions(to).signum() > 0) {
          next.add(to);
        }
      }
    }
    return next;
  }

  private BigInteger fewest(Set<Integer> nodes) {
    return nodes.stream().map(set::completions).min(BigInteger::compareTo).orElseThrow();
  }

  /**
   * Simulated days.
   *
   * @param days how many
   * @param meanStints stints ridden on average, if everyone stops as soon as they may
   * @param stopped share of days that may stop before the end
   * @param shown share of days on which the setups are shown to differ, early or at the end
   * @param without the same without looks
   */
  public record Simulated(
      int days, double meanStints, double stopped, double shown, double without) {
    /** Standard error of a share. */
    public double error(double share) {
      return Math.sqrt(share * (1 - share) / days);
    }
  }

  /**
   * Simulates days.
   *
   * @param days at least 1
   * @param difference true difference in units of the noise
   * @param seed the same seed gives the same days
   * @param cancelled asked before every day
   * @throws CancellationException if cancelled or the thread is interrupted
   */
  public Simulated simulate(int days, double difference, long seed, BooleanSupplier cancelled) {
    if (days < 1) {
      throw new StatsException("days", "must be at least 1, but is " + days + ".");
    }
    Require.finite("difference", difference);
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    double[] y = new double[set.stints()];
    double stints = 0;
    double[] counts = new double[3];
    for (int day = 0; day < days; day++) {
      if (cancelled.getAsBoolean() || Thread.currentThread().isInterrupted()) {
        throw new CancellationException("simulation stopped after " + day + " days");
      }
      int[] order = set.random(source);
      for (int i = 0; i < y.length; i++) {
        y[i] = normal.sample() + difference * order[i];
      }
      int at = lookThatMarks(order, y);
      boolean early = at > 0 && at <= looks.size();
      stints += early ? looks.get(at - 1) : set.stints();
      counts[0] += early ? 1 : 0;
      counts[1] += at > 0 ? 1 : 0;
      counts[2] += shownAtTheEnd(order, y) ? 1 : 0;
    }
    double[] shares = Arrays.stream(counts).map(c -> c / days).toArray();
    return new Simulated(days, stints / days, shares[0], shares[1], shares[2]);
  }

  private int lookThatMarks(int[] order, double[] y) {
    List<PrefixRule.Look> taken = new ArrayList<>();
    looks.forEach(look -> taken.add(new PrefixRule.Look(look, y)));
    taken.add(new PrefixRule.Look(set.stints(), y));
    return PrefixRule.of(set, order, taken, true, drift, SHARED).crossedAt(LEVEL);
  }

  private boolean shownAtTheEnd(int[] order, double[] y) {
    PrefixRule.Look end = new PrefixRule.Look(set.stints(), y);
    return PrefixRule.of(set, order, List.of(end), true, drift, SHARED).crossedAt(LEVEL) > 0;
  }
}
