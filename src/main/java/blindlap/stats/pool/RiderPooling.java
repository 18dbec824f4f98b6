package blindlap.stats.pool;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.HalfLineMaximum;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.noise.Spread;
import java.util.Arrays;

/**
 * Estimates of several riders (or sessions) pooled into one.
 *
 * <p>{@link #mean} asks nothing of the variances and is the primary. {@link #reml} and {@link
 * #dersimonianLaird} fit y_i ~ N(μ, v_i + τ²) with known v_i.
 */
public final class RiderPooling {
  private static final double TAIL = 0.025;

  private RiderPooling() {}

  /**
   * The plain mean with its t interval on k − 1 degrees of freedom.
   *
   * @param estimate mean of the estimates
   * @param interval95 95 % interval
   * @param df number of estimates − 1
   */
  public record Mean(double estimate, Interval interval95, int df) {}

  /**
   * Restricted maximum likelihood.
   *
   * @param tauSquared variance between riders, not negative
   * @param estimate weighted mean
   * @param se 1/√Σw with w = 1/(v + τ²)
   * @param interval95 estimate ± 1.96·se
   * @param hartungKnapp95 interval of Hartung &amp; Knapp (2001), Stat. Med. 20:3875
   * @param modifiedHartungKnapp95 the same, but not narrower than with se itself (Röver, Knapp
   *     &amp; Friede 2015, BMC Med. Res. Methodol. 15:99)
   */
  public record Reml(
      double tauSquared,
      double estimate,
      double se,
      Interval interval95,
      Interval hartungKnapp95,
      Interval modifiedHartungKnapp95) {}

  /**
   * The moment estimate of DerSimonian &amp; Laird (1986), Control. Clin. Trials 7:177.
   *
   * @param tauSquared variance between riders, not negative
   * @param estimate weighted mean
   * @param se 1/√Σw with w = 1/(v + τ²)
   */
  public record DerSimonianLaird(double tauSquared, double estimate, double se) {}

  /**
   * @param estimates one per rider, at least two
   * @throws StatsException if there are fewer or one is not finite
   */
  public static Mean mean(double[] estimates) {
    double[] y = Require.sample("estimates", estimates, 2);
    Spread spread = Spread.of(y);
    int df = y.length - 1;
    double half = Quantiles.tUpper(TAIL, df) * spread.sd() / Math.sqrt(y.length);
    return new Mean(spread.mean(), Interval.around(spread.mean(), half), df);
  }

  /**
   * τ² ≥ 0 maximises −½[Σln(v + τ²) + ln Σw + Σw(y − μ)²] (Viechtbauer 2005, J. Educ. Behav. Stat.
   * 30:261): best point of a geometric grid, sharpened as a root of the derivative.
   *
   * @param estimates one per rider, at least two
   * @param variances squared standard errors of the estimates, above 0
   * @throws StatsException if the lists differ in length or hold impossible values
   */
  public static Reml reml(double[] estimates, double[] variances) {
    double[] y = Require.sample("estimates", estimates, 2);
    double[] v = variances(variances, y.length);
    double sd = Spread.of(y).sd();
    double scale = sd * sd + Arrays.stream(v).average().orElseThrow();
    double tau2 =
        HalfLineMaximum.of(
            t -> Weighted.at(y, v, t).restrictedLogLikelihood(),
            t -> Weighted.at(y, v, t).restrictedSlope(),
            scale);
    Weighted at = Weighted.at(y, v, tau2);
    double t = Quantiles.tUpper(TAIL, y.length - 1.0);
    double root = Math.sqrt(at.scatter / (y.length - 1));
    return new Reml(
        tau2,
        at.mean,
        at.se(),
        Interval.normal95(at.mean, at.se()),
        Interval.around(at.mean, t * at.se() * root),
        Interval.around(at.mean, t * at.se() * Math.max(1, root)));
  }

  /**
   * τ² = max(0, (Q − (k − 1))/(Σw − Σw²/Σw)) with w = 1/v.
   *
   * @throws StatsException if the lists differ in length or hold impossible values
   */
  public static DerSimonianLaird derSimonianLaird(double[] estimates, double[] variances) {
    double[] y = Require.sample("estimates", estimates, 2);
    double[] v = variances(variances, y.length);
    Weighted fixed = Weighted.at(y, v, 0);
    double excess = fixed.scatter - (y.length - 1);
    double tau2 = Math.max(0, excess / (fixed.weights - fixed.weights2 / fixed.weights));
    Weighted at = Weighted.at(y, v, tau2);
    return new DerSimonianLaird(tau2, at.mean, at.se());
  }

  private static double[] variances(double[] variances, int n) {
    double[] v = Require.sample("variances", variances, 1);
    if (v.length != n) {
      throw new StatsException(
          "variances", "has %d values, but there are %d estimates.".formatted(v.length, n));
    }
    for (int i = 0; i < n; i++) {
      Require.positive("variances[" + i + "]", v[i]);
    }
    return v;
  }

  /** Sums at one τ². */
  private record Weighted(
      double weights,
      double weights2,
      double mean,
      double scatter,
      double scatter2,
      double logVariances) {
    static Weighted at(double[] y, double[] v, double tau2) {
      double sum = 0;
      double sum2 = 0;
      double total = 0;
      double logs = 0;
      for (int i = 0; i < y.length; i++) {
        double w = 1 / (v[i] + tau2);
        sum += w;
        sum2 += w * w;
        total += w * (y[i] - y[0]);
        logs += Math.log(v[i] + tau2);
      }
      double fromFirst = total / sum;
      double scatter = 0;
      double scatter2 = 0;
      for (int i = 0; i < y.length; i++) {
        double w = 1 / (v[i] + tau2);
        double residual = y[i] - y[0] - fromFirst;
        scatter += w * residual * residual;
        scatter2 += w * w * residual * residual;
      }
      return new Weighted(sum, sum2, y[0] + fromFirst, scatter, scatter2, logs);
    }

    double se() {
      return 1 / Math.sqrt(weights);
    }

    double restrictedLogLikelihood() {
      return -0.5 * (logVariances + Math.log(weights) + scatter);
    }

    double restrictedSlope() {
      return -0.5 * (weights - weights2 / weights - scatter2);
    }
  }
}
