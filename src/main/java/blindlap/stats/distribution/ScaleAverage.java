package blindlap.stats.distribution;

import java.util.function.DoubleUnaryOperator;

/**
 * The average of a function of s/σ, where ν·s²/σ² is χ² with ν degrees of freedom: what turns a
 * normal curve into a t, or a range of normal values into a studentised one. Summed by the
 * trapezoidal rule over u = ln(s/σ), which converges exponentially there; the weights are
 * normalised on the same grid, so that no gamma function is needed.
 */
final class ScaleAverage {
  /** Where ln of the weight, relative to its peak, is cut off: small tails keep their digits. */
  private static final double VANISHED = -110;

  private ScaleAverage() {}

  /**
   * @param df degrees of freedom, above 0
   * @param step of u, above 0
   * @param of a function of s/σ, bounded
   */
  static double of(double df, double step, DoubleUnaryOperator of) {
    double weights = 0;
    double sum = 0;
    // Upwards and downwards from the peak of the weight at u = 0.
    for (int direction = 1; direction >= -1; direction -= 2) {
      for (int i = direction > 0 ? 0 : 1; ; i++) {
        double u = direction * i * step;
        double logWeight = df * (u - Math.expm1(2 * u) / 2);
        if (logWeight < VANISHED) {
          break;
        }
        double weight = Math.exp(logWeight);
        weights += weight;
        sum += weight * of.applyAsDouble(Math.exp(u));
      }
    }
    return sum / weights;
  }
}
