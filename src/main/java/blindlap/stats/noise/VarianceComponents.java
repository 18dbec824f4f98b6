package blindlap.stats.noise;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.CentredSums;
import blindlap.stats.distribution.HalfLineMaximum;

/**
 * Variance between and within groups: y_ij = μ + a_i + e_ij by restricted maximum likelihood,
 * balanced or not.
 *
 * <p>Patterson &amp; Thompson (1971), Biometrika 58:545; Searle, Casella &amp; McCulloch (1992),
 * Variance Components, ch. 3 (cited from memory). With λ = σ²_a/σ²_e and w_i = n_i/(1 + n_iλ) the
 * restricted likelihood is profiled to one variable: −½[(N − 1)·ln Q + Σln(1 + n_iλ) + ln Σw], Q =
 * SS within + Σw(ȳ_i − μ)², σ²_e = Q/(N − 1). λ ≥ 0.
 *
 * @param mean μ by generalised least squares
 * @param meanSe its standard error at the estimated variances
 * @param betweenSd σ_a
 * @param withinSd σ_e
 */
public record VarianceComponents(double mean, double meanSe, double betweenSd, double withinSd) {
  /**
   * @param groups at least two groups, none empty, at least one of two or more values
   * @throws StatsException if a group is empty, all have one value, no group varies within itself,
   *     or a value is not finite
   */
  public static VarianceComponents reml(double[][] groups) {
    OneWay anova = OneWay.of(groups);
    int k = groups.length;
    double[] sizes = new double[k];
    double[] means = new double[k];
    double[] first = groups[0];
    double origin = CentredSums.mean(first).doubleValue();
    int n = 0;
    for (int i = 0; i < k; i++) {
      sizes[i] = groups[i].length;
      means[i] = CentredSums.mean(groups[i]).subtract(origin).doubleValue();
      n += groups[i].length;
    }
    int total = n;
    double within = anova.withinSquares();
    double scale = Math.max(1, anova.f()) * k / n;
    double ratio =
        HalfLineMaximum.of(
            x -> Profile.at(sizes, means, within, total, x).logLikelihood(),
            x -> Profile.at(sizes, means, within, total, x).slope(),
            scale);
    Profile at = Profile.at(sizes, means, within, total, ratio);
    double withinSd = Math.sqrt(at.q / (n - 1));
    return new VarianceComponents(
        origin + at.mean, withinSd / Math.sqrt(at.weights), withinSd * Math.sqrt(ratio), withinSd);
  }

  /** The profiled likelihood at one ratio of variances. */
  private record Profile(
      int n, double q, double weights, double weights2, double scatter2, double logs, double mean) {
    static Profile at(double[] sizes, double[] means, double within, int n, double ratio) {
      double sum = 0;
      double sum2 = 0;
      double total = 0;
      double logs = 0;
      for (int i = 0; i < sizes.length; i++) {
        double w = sizes[i] / (1 + sizes[i] * ratio);
        sum += w;
        sum2 += w * w;
        total += w * means[i];
        logs += Math.log1p(sizes[i] * ratio);
      }
      double mean = total / sum;
      double q = within;
      double scatter2 = 0;
      for (int i = 0; i < sizes.length; i++) {
        double w = sizes[i] / (1 + sizes[i] * ratio);
        double residual = means[i] - mean;
        q += w * residual * residual;
        scatter2 += w * w * residual * residual;
      }
      return new Profile(n, q, sum, sum2, scatter2, logs, mean);
    }

    double logLikelihood() {
      return -0.5 * ((n - 1) * Math.log(q) + logs + Math.log(weights));
    }

    double slope() {
      return -0.5 * (weights - weights2 / weights - (n - 1) * scatter2 / q);
    }
  }
}
