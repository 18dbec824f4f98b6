package blindlap.stats.distribution;

import blindlap.fault.Require;
import blindlap.fault.StatsException;

/**
 * The noncentral t distribution: T = (Z + δ)/√(χ²_ν/ν).
 *
 * <p>P(T ≤ t) = E Φ(t·S − δ) with S = √(χ²_ν/ν) (Johnson, Kotz &amp; Balakrishnan, Continuous
 * Univariate Distributions 2, ch. 31, cited from memory). With S = eᵘ the integrand is analytic and
 * decays at both ends, so the trapezoidal rule converges exponentially (Trefethen &amp; Weideman
 * 2014, SIAM Review 56:385). Both tails are sums of positive terms; the density of S is normalised
 * on the same grid, so that no gamma function is needed and large ν costs no digits. Absolute
 * accuracy about 1e-14; small tails keep about ten digits down to 1e-30.
 */
public final class NoncentralT {
  private static final double LEAST_DF = 0.01;

  /** Largest size of the noncentrality that is accepted. */
  public static final double LARGEST_SHIFT = 1e5;

  private final double df;
  private final double shift;

  private NoncentralT(double df, double shift) {
    this.df = df;
    this.shift = shift;
  }

  /**
   * @param df degrees of freedom ν, at least 0.01, not necessarily whole
   * @param shift noncentrality δ, at most 1e5 in size
   * @throws StatsException if a value is impossible
   */
  public static NoncentralT of(double df, double shift) {
    Require.finite("df", df);
    if (df < LEAST_DF) {
      throw new StatsException("df", "must be at least " + LEAST_DF + ", but is " + df + ".");
    }
    Require.finite("ncp", shift);
    if (Math.abs(shift) > LARGEST_SHIFT) {
      throw new StatsException("ncp", "must lie between -1e5 and 1e5, but is " + shift + ".");
    }
    return new NoncentralT(df, shift);
  }

  /** P(T ≤ t). */
  public double cdf(double t) {
    return tail(t, -1);
  }

  /** P(T &gt; t). */
  public double sf(double t) {
    return tail(t, 1);
  }

  /** P(T ≤ t) for sign −1, P(T &gt; t) for sign +1. */
  private double tail(double t, int sign) {
    Require.finite("t", t);
    double step = step();
    return ScaleAverage.of(df, step, scale -> NormalCurve.upper(sign * (t * scale - shift)));
  }

  /** Fine against the width of the weight, 1/√(2ν), and against that of Φ, 1/δ. */
  private double step() {
    double widest = Math.min(0.1, 0.25 / Math.sqrt(2 * df));
    return Math.min(widest, 0.5 / Math.max(1, Math.abs(shift)));
  }
}
