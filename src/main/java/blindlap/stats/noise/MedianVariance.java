package blindlap.stats.noise;

import blindlap.stats.distribution.NormalCurve;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * Variance of the median of n independent normal values of variance 1, from the densities of order
 * statistics (David and Nagaraja 2003, Order Statistics; cited from memory).
 */
final class MedianVariance {
  private static final double FAR = 8;
  private static final GaussIntegratorFactory RULES = new GaussIntegratorFactory();
  private static final GaussIntegrator RULE = RULES.legendre(200, -FAR, FAR);

  private MedianVariance() {}

  /**
   * @param n at least 1
   */
  static double of(int n) {
    return n % 2 == 1 ? odd(n / 2) : even(n / 2);
  }

  /** The middle one of 2k + 1 values. */
  private static double odd(int k) {
    double log = factorials(2 * k + 1, k);
    return RULE.integrate(
        x ->
            x
                * x
                * Math.exp(
                    log + k * Math.log(NormalCurve.cdf(x)) + k * Math.log(NormalCurve.upper(x)))
                * NormalCurve.density(x));
  }

  /** Half the sum of the two middle ones of 2k values, y the larger. */
  private static double even(int k) {
    double log = factorials(2 * k, k - 1);
    return RULE.integrate(
        x -> {
          double below = Math.log(NormalCurve.cdf(x));
          return NormalCurve.density(x)
              * RULES
                  .legendre(100, x, FAR)
                  .integrate(
                      y ->
                          (x + y)
                              * (x + y)
                              / 4
                              * Math.exp(log + (k - 1) * (below + Math.log(NormalCurve.upper(y))))
                              * NormalCurve.density(y));
        });
  }

  /** ln(n!/(k!·k!)). */
  private static double factorials(int n, int k) {
    return CombinatoricsUtils.factorialLog(n) - 2 * CombinatoricsUtils.factorialLog(k);
  }
}
