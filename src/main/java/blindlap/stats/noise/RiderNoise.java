package blindlap.stats.noise;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.distribution.Interval;
import java.util.List;

/**
 * The noise floor of a rider on a trail (docs/method.md#noise): standard deviation from stint to
 * stint once drift and setup are removed, with its degrees of freedom.
 *
 * @param sd standard deviation, in the unit of the measure (of its logarithm on the ratio scale)
 * @param df degrees of freedom, at least 1
 */
public record RiderNoise(double sd, int df) {
  public RiderNoise {
    if (!(sd >= 0) || Double.isInfinite(sd)) {
      throw new StatsException("sd", "must be a number that is not negative, but is " + sd + ".");
    }
    if (df < 1) {
      throw new StatsException("df", "must be at least 1, but is " + df + ".");
    }
  }

  /** The noise of one session, or of a null run. */
  public static RiderNoise of(OneDifference session) {
    return new RiderNoise(session.noiseSd(), session.df());
  }

  /** The noise of one session of three or more setups. */
  public static RiderNoise of(ManySetups session) {
    return new RiderNoise(session.noiseSd(), session.df());
  }

  /** The noise of one day over levels, each with a mean of its own: no bend is in it. */
  public static RiderNoise of(LevelMeans levels) {
    return new RiderNoise(levels.noiseSd(), levels.df());
  }

  /**
   * Pooled over sessions of one rider, trail and measure: √(Σ df·sd²/Σ df).
   *
   * @throws StatsException if there is no session
   */
  public static RiderNoise pooled(List<RiderNoise> sessions) {
    Repeatability pooled = repeatability(sessions);
    return new RiderNoise(pooled.sd(), pooled.df());
  }

  private static Repeatability repeatability(List<RiderNoise> sessions) {
    return Repeatability.pooled(
        sessions.stream().mapToDouble(RiderNoise::sd).toArray(),
        sessions.stream().mapToInt(RiderNoise::df).toArray());
  }

  /** 1.96·√2·sd: two single stints on one setup differ by more in one case of twenty. */
  public double coefficient() {
    return repeatability(List.of(this)).coefficient();
  }

  /** 95 % interval of the standard deviation by χ²; right only if laps behave normally. */
  public Interval interval95IfNormal() {
    return repeatability(List.of(this)).sdInterval95();
  }

  /**
   * From "two stints on one setup usually differ by about x": SD = x·√π/2, x being the mean
   * absolute difference of two normal values (x/1.13; docs/method.md#typed-noise).
   *
   * @param usualDifference x, above 0
   */
  public static double sdFromUsualDifference(double usualDifference) {
    return Require.positive("usual_difference", usualDifference) * Math.sqrt(Math.PI) / 2;
  }
}
