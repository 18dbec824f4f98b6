package blindlap.stats.tell;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.Optional;

/**
 * Whether the waits between stints told the rider what was done in them, by re-randomisation
 * (docs/method.md#waits): the waits are held fixed and the order varies over all admissible ones. A
 * straight line over the stints is taken out first, as a helper grows quicker over a day whatever
 * is fitted. Two questions are asked: did real swaps take longer than dummy swaps, and did it take
 * longer to fit one setup than another? A slow change from one setup to the other is nearly
 * invisible to the first and plain to the second.
 *
 * <p>A result without sign does not show that the blind held.
 *
 * @param count number of admissible orders
 * @param waits number of waits that were used
 * @param kind whether real swaps took longer
 * @param setup whether one setup took longer; empty if the waits left cannot tell setups apart
 * @param sampled true if the orders were sampled
 */
public record WaitTest(
    BigInteger count, int waits, Kind kind, Optional<BySetup> setup, boolean sampled) {
  /** At or below this mid-p a day is flagged, as with guesses. */
  public static final double FLAG = 0.10;

  /** Fewest waits that are tested. */
  public static final int FEWEST = 8;

  /**
   * Real swaps against dummy swaps.
   *
   * @param reals number of waits that were real swaps
   * @param seconds how much longer a real swap took, the line removed; in the unit of the waits
   * @param p one-sided: share of orders whose real swaps took as much longer
   * @param midP share with more, and half of those with as much
   */
  public record Kind(int reals, double seconds, double p, double midP) {
    /** True if the mid-p is at or below .10. */
    public boolean flagged() {
      return midP <= FLAG;
    }
  }

  /**
   * The setup that took longest to fit against the one that took least.
   *
   * @param slowest index of the setup whose waits were longest
   * @param quickest index of the one whose waits were shortest
   * @param seconds how much longer, the line removed; in the unit of the waits
   * @param p two-sided: share of orders that set the setups as far apart
   * @param midP share with further, and half of those with as far
   */
  public record BySetup(int slowest, int quickest, double seconds, double p, double midP) {
    /** True if the mid-p is at or below .10. */
    public boolean flagged() {
      return midP <= FLAG;
    }
  }

  /** Why waits are not tested. */
  public enum Untested {
    /** Fewer than {@value WaitTest#FEWEST} waits. */
    TOO_FEW,
    /** All of them real swaps, or all dummy swaps. */
    ONE_KIND
  }

  /**
   * Why these waits could not be tested, if they cannot.
   *
   * @param order the order ridden, one setup per stint
   * @param waits seconds before each stint; NaN where there is none or it does not count
   */
  public static Optional<Untested> untested(int[] order, double[] waits) {
    int known = 0;
    int reals = 0;
    for (int i = 1; i < order.length; i++) {
      if (!Double.isNaN(waits[i])) {
        known++;
        reals += order[i] != order[i - 1] ? 1 : 0;
      }
    }
    if (known < FEWEST) {
      return Optional.of(Untested.TOO_FEW);
    }
    return reals == 0 || reals == known ? Optional.of(Untested.ONE_KIND) : Optional.empty();
  }

  /**
   * Tests the waits of a session.
   *
   * @param set the admissible orders
   * @param order the order ridden
   * @param waits one per stint, in seconds: how long the rider waited before it; NaN where it is
   *     not known or does not count. The first is never used: nothing was changed before it
   * @param sampling what to do with very large sets
   * @throws StatsException if the waits do not fit, or {@link #untested} gives a reason
   */
  public static WaitTest of(Assignments set, int[] order, double[] waits, Sampling sampling) {
    DayCheck.order(set, order);
    double[] used = waits.clone();
    if (used.length > 0) {
      used[0] = Double.NaN;
    }
    boolean[] all = new boolean[order.length];
    java.util.Arrays.fill(all, true);
    boolean[] use = DayCheck.used(set, "waits", used, all);
    Untested why = untested(order, used).orElse(null);
    if (why != null) {
      throw new StatsException("waits", refusal(why, DayCheck.count(use)));
    }
    sampling.check(set);
    WaitWalk walk = new WaitWalk(set, used, use);
    walk.ride(order);
    if (sampling.samples(set)) {
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.walk();
    }
    Kind kind = new Kind(walk.reals(), walk.difference(), walk.kindP(), walk.kindMidP());
    Optional<BySetup> setup =
        walk.apart()
            .map(
                apart ->
                    new BySetup(
                        apart.slowest(),
                        apart.quickest(),
                        apart.difference(),
                        walk.setupP(),
                        walk.setupMidP()));
    return new WaitTest(set.count(), DayCheck.count(use), kind, setup, sampling.samples(set));
  }

  private static String refusal(Untested why, int known) {
    return switch (why) {
      case TOO_FEW ->
          "hold %d after the first stint, but at least %d are needed.".formatted(known, FEWEST);
      case ONE_KIND -> "belong to one kind of handling: all real swaps, or all dummy swaps.";
    };
  }
}
