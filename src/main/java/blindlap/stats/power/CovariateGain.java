package blindlap.stats.power;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Quantiles;
import java.util.List;

/**
 * What taking covariates out does to the difference a day can show (docs/method.md#covariates):
 * noise with correlation r loses the share r² of its variance; a covariate takes one degree of
 * freedom and, on average over its values, its share of the information, 1/(N − columns).
 */
public final class CovariateGain {
  private static final double POWER = 0.8;

  private CovariateGain() {}

  /**
   * The factor on the detectable difference, 1 for none.
   *
   * @param stints number of stints, N
   * @param columns nuisance columns without the covariates, the constant included
   * @param setups number of setups
   * @param correlations of each covariate with the noise after drift, 0 or more and below 1; they
   *     are taken not to go with each other
   * @return NaN if no degree of freedom is left
   * @throws StatsException if a correlation is impossible
   */
  public static double factor(int stints, int columns, int setups, List<Double> correlations) {
    double explained = 0;
    for (double r : correlations) {
      if (!(r >= 0 && r < 1)) {
        throw new StatsException("correlation", "must be 0 or more and below 1, but is " + r + ".");
      }
      explained += r * r;
    }
    int q = correlations.size();
    int df = stints - columns - setups + 1;
    if (df - q < 1) {
      return Double.NaN;
    }
    double left = Math.sqrt(Math.max(0, 1 - explained));
    double information = Math.sqrt((stints - columns) / (double) (stints - columns - q));
    return left * information * reach(df - q) / reach(df);
  }

  /** Distance of a two-sided test at .05 with power .8, in standard errors. */
  private static double reach(int df) {
    return Quantiles.tUpper(0.025, df) + Quantiles.tUpper(1 - POWER, df);
  }
}
