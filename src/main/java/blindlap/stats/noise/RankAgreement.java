package blindlap.stats.noise;

import blindlap.fault.DayFault;
import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import org.apache.commons.math3.stat.ranking.NaNStrategy;
import org.apache.commons.math3.stat.ranking.NaturalRanking;
import org.apache.commons.math3.stat.ranking.TiesStrategy;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * Do riders rank setups alike? Friedman's test with midranks and correction for ties, and Kendall's
 * coefficient of concordance.
 *
 * <p>Friedman (1937), J. Am. Stat. Assoc. 32:675; tie correction and W as in Kendall &amp; Gibbons
 * (1990), Rank Correlation Methods. p from χ², an approximation for few riders.
 *
 * @param chiSquared statistic, corrected for ties
 * @param df setups − 1
 * @param p upper tail of χ²
 * @param kendallW χ²/(riders·(setups − 1)), 0 to 1
 */
public record RankAgreement(double chiSquared, int df, double p, double kendallW) {
  /**
   * @param table rows = riders, columns = setups; at least two of each
   * @throws StatsException if the table is smaller, ragged, holds a value that is not finite, or
   *     every rider ties all setups
   */
  public static RankAgreement of(double[][] table) {
    double[][] y = Require.table("table", table, 2, 2);
    int n = y.length;
    int k = y[0].length;
    NaturalRanking midranks = new NaturalRanking(NaNStrategy.FAILED, TiesStrategy.AVERAGE);
    double centre = (k + 1) / 2.0;
    double[] columnSums = new double[k];
    double scatter = 0;
    for (double[] row : y) {
      double[] ranks = midranks.rank(row);
      for (int j = 0; j < k; j++) {
        double deviation = ranks[j] - centre;
        columnSums[j] += deviation;
        scatter += deviation * deviation;
      }
    }
    if (scatter == 0) {
      throw new Unusable(
          "table", "ties all columns in every row; there is nothing to rank.", DayFault.ALL_TIED);
    }
    double between = 0;
    for (double sum : columnSums) {
      between += sum * sum;
    }
    double chiSquared = (k - 1) * between / scatter;
    double p = ChiSquaredDistribution.of(k - 1.0).survivalProbability(chiSquared);
    return new RankAgreement(chiSquared, k - 1, p, chiSquared / (n * (k - 1.0)));
  }
}
