package blindlap.stats.noise;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.CentredSums;
import org.apache.commons.numbers.core.DD;

/**
 * Mean, standard deviation (divisor n − 1) and lag-1 autocorrelation of a series.
 *
 * <p>lag1 = Σ(y_i − ȳ)(y_{i+1} − ȳ) / Σ(y_i − ȳ)², the definition of the NIST Statistical Reference
 * Datasets (univariate summary statistics), which it is checked against.
 *
 * @param n number of values
 * @param mean mean, in the unit of the values
 * @param sd standard deviation, in the unit of the values
 * @param lag1 lag-1 autocorrelation; NaN if all values are equal
 */
public record Spread(int n, double mean, double sd, double lag1) {
  /**
   * @throws StatsException if there are fewer than two values or one is not finite
   */
  public static Spread of(double... values) {
    double[] y = Require.sample("values", values, 2);
    DD mean = CentredSums.mean(y);
    DD squares = CentredSums.squares(y, mean);
    double sd = squares.divide(y.length - 1).sqrt().doubleValue();
    DD products = DD.ZERO;
    DD before = mean.negate().add(y[0]);
    for (int i = 1; i < y.length; i++) {
      DD here = mean.negate().add(y[i]);
      products = products.add(before.multiply(here));
      before = here;
    }
    double lag1 = sd == 0 ? Double.NaN : products.divide(squares).doubleValue();
    return new Spread(y.length, mean.doubleValue(), sd, lag1);
  }
}
