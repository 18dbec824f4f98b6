package blindlap.plan;

import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the rider's noise in a measure.
 *
 * @param kind how it is known
 * @param sd standard deviation in the unit of the measure, of logarithms on the ratio scale; 1 if
 *     unknown, so that answers are in units of noise
 * @param df degrees of freedom of an estimate; 0 otherwise
 * @param range 95 % interval of an estimate, if laps behave normally; null otherwise
 */
public record NoiseKnown(Kind kind, double sd, int df, @Nullable Interval range) {

  /** How the noise is known. */
  public enum Kind {
    /** Estimated from stints ridden before. */
    ESTIMATED,
    /** The tester's guess. */
    GUESSED,
    /** Not at all. */
    UNKNOWN
  }

  /** Nothing is known. */
  public static final NoiseKnown UNKNOWN = new NoiseKnown(Kind.UNKNOWN, 1, 0, null);

  /** What a plan says of it; unknown if what it says is impossible. */
  public static NoiseKnown of(Plan plan) {
    DeclaredNoise noise = plan.noise();
    return noise == null
        ? UNKNOWN
        : of(noise, plan.primary().map(m -> m.scale() == Scale.RATIO).orElse(false));
  }

  /** What is known of a measure's noise by what is declared of it; unknown if impossible. */
  static NoiseKnown of(DeclaredNoise noise, boolean ratio) {
    if (noise.sd().signum() <= 0) {
      return UNKNOWN;
    }
    double typed = noise.sd().doubleValue();
    double sd = ratio ? Math.log1p(typed / 100) : typed;
    Integer df = noise.df();
    if (df == null || df < 1) {
      return new NoiseKnown(Kind.GUESSED, sd, 0, null);
    }
    return new NoiseKnown(Kind.ESTIMATED, sd, df, new RiderNoise(sd, df).interval95IfNormal());
  }
}
