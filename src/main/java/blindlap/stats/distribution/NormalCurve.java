package blindlap.stats.distribution;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** Φ, its complement and φ of the standard normal distribution. */
public final class NormalCurve {
  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private NormalCurve() {}

  public static double cdf(double x) {
    return STANDARD.cumulativeProbability(x);
  }

  public static double upper(double x) {
    return STANDARD.survivalProbability(x);
  }

  public static double density(double x) {
    return STANDARD.density(x);
  }
}
