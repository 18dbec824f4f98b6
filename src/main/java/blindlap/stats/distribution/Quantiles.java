package blindlap.stats.distribution;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Quantiles, polished to nearly full double precision.
 *
 * <p>The inverse of the library stops at an absolute error of about 1e-9, which is coarse for small
 * quantiles; a few Newton steps on the distribution function (or the survival function above one
 * half) remove it.
 */
public final class Quantiles {
  /** The 0.975 quantile of the normal distribution, 1.959963984540054. */
  public static final double Z_975 = normal(0.975);

  private static final int STEPS = 8;
  private static final double ENOUGH = 1e-15;

  private Quantiles() {}

  public static double normal(double p) {
    return NormalDistribution.of(0, 1).inverseCumulativeProbability(p);
  }

  static double beta(double p, double alpha, double beta) {
    return polished(BetaDistribution.of(alpha, beta), p);
  }

  public static double chiSquared(double p, double df) {
    return polished(ChiSquaredDistribution.of(df), p);
  }

  /** Quantile of Student's t with upper tail {@code tail}, 0 &lt; tail &lt; 1. */
  public static double tUpper(double tail, double df) {
    if (tail > 0.5) {
      return -tUpper(1 - tail, df);
    }
    TDistribution t = TDistribution.of(df);
    double x = t.inverseSurvivalProbability(tail);
    return newton(t, x, tail, true);
  }

  private static double polished(ContinuousDistribution distribution, double p) {
    double x = distribution.inverseCumulativeProbability(p);
    return p > 0.5 ? newton(distribution, x, 1 - p, true) : newton(distribution, x, p, false);
  }

  private static double newton(ContinuousDistribution d, double start, double tail, boolean upper) {
    double x = start;
    for (int i = 0; i < STEPS; i++) {
      double off = upper ? tail - d.survivalProbability(x) : d.cumulativeProbability(x) - tail;
      double step = off / d.density(x);
      double next = x - step;
      if (!Double.isFinite(next)
          || next <= d.getSupportLowerBound()
          || next >= d.getSupportUpperBound()) {
        return x;
      }
      x = next;
      if (Math.abs(step) <= ENOUGH * Math.abs(x)) {
        break;
      }
    }
    return x;
  }
}
