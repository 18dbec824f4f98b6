package blindlap.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** Φ, its complement and φ of the standard normal distribution. */
final class NormalCurve {
  private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

  private NormalCurve() {}

  static double cdf(double x) {
    return STANDARD.cumulativeProbability(x);
  }

  static double upper(double x) {
    return STANDARD.survivalProbability(x);
  }

  static double density(double x) {
    return STANDARD.density(x);
  }
}
