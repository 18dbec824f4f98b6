package blindlap.plan;

import blindlap.stats.compare.Scale;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.LapSplit;
import blindlap.stats.noise.RiderNoise;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the rider's noise in a measure, for stints as planned.
 *
 * @param kind how it is known
 * @param sd standard deviation in the unit of the measure, of logarithms on the ratio scale; the
 *     most that it can be where it is not known how much of it the laps of a stint share. If the
 *     noise is unknown, that of laps of different stints is 1, so that answers are in units of it
 * @param least the least that it can be; the same where that is known
 * @param df degrees of freedom of an estimate; 0 otherwise
 * @param range 95 % interval of an estimate, if laps behave normally, from that of the least to
 *     that of the most; null otherwise
 */
public record NoiseKnown(Kind kind, double sd, double least, int df, @Nullable Interval range) {

  /** How the noise is known. */
  public enum Kind {
    /** Estimated from stints ridden before. */
    ESTIMATED,
    /** The tester's guess. */
    GUESSED,
    /** Not at all. */
    UNKNOWN
  }

  /** What a plan says of it; unknown if what it says is impossible. */
  public static NoiseKnown of(Plan plan) {
    DeclaredNoise noise = plan.noise();
    StintSummary summary = plan.primary().map(Measure::summary).orElse(StintSummary.MEAN);
    boolean ratio = plan.primary().map(m -> m.scale() == Scale.RATIO).orElse(false);
    return noise == null
        ? unknown(plan.laps().scored(), summary)
        : of(noise, ratio, plan.laps().scored(), summary);
  }

  /** What is known of a measure's noise by what is declared of it. */
  public static NoiseKnown of(DeclaredNoise noise, Measure measure, int scoredLaps) {
    return of(noise, measure.scale() == Scale.RATIO, scoredLaps, measure.summary());
  }

  private static NoiseKnown unknown(int scoredLaps, StintSummary summary) {
    Interval factor = LapSplit.unknown(1).factor(Math.max(1, scoredLaps), summary);
    return new NoiseKnown(Kind.UNKNOWN, factor.high(), factor.low(), 0, null);
  }

  private static NoiseKnown of(
      DeclaredNoise noise, boolean ratio, int scoredLaps, StintSummary summary) {
    int planned = Math.max(1, scoredLaps);
    if (noise.sd().signum() <= 0) {
      return unknown(planned, summary);
    }
    double typed = noise.sd().doubleValue();
    double known = ratio ? Math.log1p(typed / 100) : typed;
    Interval factor = noise.split(planned).factor(planned, summary);
    double sd = known * factor.high();
    double least = known * factor.low();
    Integer df = noise.df();
    if (df == null || df < 1) {
      return new NoiseKnown(Kind.GUESSED, sd, least, 0, null);
    }
    return new NoiseKnown(
        Kind.ESTIMATED,
        sd,
        least,
        df,
        new Interval(
            new RiderNoise(least, df).interval95IfNormal().low(),
            new RiderNoise(sd, df).interval95IfNormal().high()));
  }

  /** True if the answer is a range since it hangs on how much the laps of a stint share. */
  public boolean split() {
    return gain() < 1 - 1e-9;
  }

  /** The least over the most. */
  public double gain() {
    return least / sd;
  }

  /**
   * What a difference is at the least noise.
   *
   * @param difference at the most, in the unit of the measure or, on the ratio scale, in per cent
   */
  public double best(double difference, boolean ratio) {
    return ratio && kind != Kind.UNKNOWN
        ? 100 * Math.expm1(gain() * Math.log1p(difference / 100))
        : gain() * difference;
  }
}
