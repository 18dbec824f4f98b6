package blindlap.stats.noise;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.CentredSums;
import org.apache.commons.numbers.core.DD;

/**
 * The six intraclass correlations of Shrout &amp; Fleiss (1979), Psychological Bulletin 86:420.
 *
 * <p>Names: 1 one-way, 2 two-way random (absolute agreement), 3 two-way mixed (consistency); the
 * second letter is 1 for a single rater, k for the mean of all k. None is cut at 0; NaN where the
 * divisor is 0.
 */
public record Intraclass(
    double icc11, double icc21, double icc31, double icc1k, double icc2k, double icc3k) {
  /**
   * @param table rows = subjects, columns = raters; at least two of each
   * @throws StatsException if the table is smaller, ragged, holds a value that is not finite, or
   *     all values are equal
   */
  public static Intraclass of(double[][] table) {
    double[][] y = Require.table("table", table, 2, 2);
    int n = y.length;
    int k = y[0].length;
    double[] all = new double[n * k];
    double[] rowMeans = new double[n];
    double[] columnSums = new double[k];
    for (int i = 0; i < n; i++) {
      System.arraycopy(y[i], 0, all, i * k, k);
    }
    DD mean = CentredSums.mean(all);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < k; j++) {
        double deviation = mean.negate().add(y[i][j]).doubleValue();
        rowMeans[i] += deviation / k;
        columnSums[j] += deviation / n;
      }
    }
    double total = CentredSums.squares(all, mean).doubleValue();
    if (total == 0) {
      throw new StatsException("table", "holds one value throughout; nothing can be compared.");
    }
    double between = 0;
    double raters = 0;
    double rest = 0;
    for (double row : rowMeans) {
      between += k * row * row;
    }
    for (double column : columnSums) {
      raters += n * column * column;
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < k; j++) {
        double e = mean.negate().add(y[i][j]).doubleValue() - rowMeans[i] - columnSums[j];
        rest += e * e;
      }
    }
    double bms = between / (n - 1);
    double jms = raters / (k - 1);
    double ems = rest / ((n - 1.0) * (k - 1));
    double wms = (raters + rest) / (n * (k - 1.0));
    return new Intraclass(
        (bms - wms) / (bms + (k - 1) * wms),
        (bms - ems) / (bms + (k - 1) * ems + k * (jms - ems) / n),
        (bms - ems) / (bms + (k - 1) * ems),
        (bms - wms) / bms,
        (bms - ems) / (bms + (jms - ems) / n),
        (bms - ems) / bms);
  }
}
