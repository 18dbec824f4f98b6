package blindlap.stats.noise;

import blindlap.fault.StatsException;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.distribution.Interval;

/**
 * How a known noise SD, which is that of means of so many laps a stint, becomes that of stints of
 * another number of laps (docs/method.md#lap-noise).
 *
 * <p>With ρ = σ_b²/(σ_b² + σ_w²) the variance of a stint is that of one lap times ρ + (1 − ρ)·c, c
 * being 1/m for the mean of m laps. λ = ρ/(1 − ρ); ρ ends at 1 where λ has no end.
 *
 * @param laps m of the known SD, at least 1
 * @param share ρ, from and to, within 0 and 1
 */
public record LapSplit(double laps, Interval share) {
  private static final Interval ALL = new Interval(0, 1);

  public LapSplit {
    if (!(laps >= 1)) {
      throw new StatsException("laps", "must be at least 1, but is " + laps + ".");
    }
    if (!(share.low() >= 0) || !(share.low() <= share.high()) || !(share.high() <= 1)) {
      throw new StatsException("share", "must lie within 0 and 1, the smaller end first.");
    }
  }

  /**
   * Variance of a stint's summary over σ_w²: 1/m for the mean; for the median of normal laps.
   *
   * @param laps m, at least 1
   */
  public static double variance(int laps, StintSummary summary) {
    return switch (summary) {
      case MEAN -> 1.0 / laps;
      case MEDIAN -> MedianVariance.of(laps);
    };
  }

  /** Nothing is known of ρ: from laps that share no noise to laps that share all of it. */
  public static LapSplit unknown(double laps) {
    return new LapSplit(laps, ALL);
  }

  /**
   * SD of a stint of so many laps over the known SD, for one ρ.
   *
   * @param planned scored laps of the stint, at least 1
   * @param summary how they become its value
   */
  public double factor(double share, int planned, StintSummary summary) {
    return Math.sqrt(
        (share + (1 - share) * variance(planned, summary)) / (share + (1 - share) * (1 / laps)));
  }

  /** The same at both ends of ρ, the smaller first; between them it lies between. */
  public Interval factor(int planned, StintSummary summary) {
    double one = factor(share.low(), planned, summary);
    double other = factor(share.high(), planned, summary);
    return new Interval(Math.min(one, other), Math.max(one, other));
  }
}
