package blindlap.stats.noise;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.CentredSums;
import org.apache.commons.numbers.core.DD;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * One-way analysis of variance with fixed effects.
 *
 * <p>Sums of squares are built from deviations in double-double arithmetic; p is the upper tail of
 * F(between df, within df). Checked against the NIST Statistical Reference Datasets.
 *
 * @param betweenDf groups − 1
 * @param withinDf values − groups
 * @param betweenSquares Σ n_g(ȳ_g − ȳ)², squared unit of the values
 * @param withinSquares Σ(y − ȳ_g)²
 * @param f ratio of the mean squares
 * @param p upper tail of F
 */
public record OneWay(
    int betweenDf, int withinDf, double betweenSquares, double withinSquares, double f, double p) {
  /**
   * @param groups at least two groups, none empty, at least one of two or more values
   * @throws StatsException if a group is empty, a value not finite, all groups have one value or no
   *     group varies within itself
   */
  public static OneWay of(double[][] groups) {
    double[][] y = Require.groups("groups", groups, 1);
    int n = 0;
    DD total = DD.ZERO;
    DD within = DD.ZERO;
    for (double[] group : y) {
      n += group.length;
      total = total.add(CentredSums.sum(group));
      within = within.add(CentredSums.squares(group));
    }
    int withinDf = n - y.length;
    if (withinDf == 0) {
      throw new StatsException("groups", "has one value per group; nothing varies within a group.");
    }
    if (within.doubleValue() == 0) {
      throw new StatsException("groups", "is constant within every group; F is not defined.");
    }
    DD mean = total.divide(n);
    DD between = DD.ZERO;
    for (double[] group : y) {
      DD deviation = CentredSums.mean(group).subtract(mean);
      between = between.add(deviation.square().multiply(group.length));
    }
    int betweenDf = y.length - 1;
    double f = between.divide(betweenDf).divide(within.divide(withinDf)).doubleValue();
    double p = FDistribution.of(betweenDf, withinDf).survivalProbability(f);
    return new OneWay(betweenDf, withinDf, between.doubleValue(), within.doubleValue(), f, p);
  }

  public double betweenMean() {
    return betweenSquares / betweenDf;
  }

  public double withinMean() {
    return withinSquares / withinDf;
  }

  /** Share of the sum of squares that lies between groups. */
  public double rSquared() {
    return betweenSquares / (betweenSquares + withinSquares);
  }

  /** Standard deviation within groups. */
  public double residualSd() {
    return Math.sqrt(withinMean());
  }
}
