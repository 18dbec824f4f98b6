package blindlap.stats.noise;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import org.apache.commons.numbers.core.DD;

/**
 * Limits of agreement of two methods on the same subjects: Bland &amp; Altman (1986), Lancet i:307,
 * with 1.96 = Φ⁻¹(0.975) standard deviations of the differences.
 *
 * @param bias mean of first − second
 * @param sd standard deviation of the differences
 */
public record Agreement(double bias, double sd) {
  /**
   * @param first at least two values
   * @param second as many values, of the same subjects in the same order
   * @throws StatsException if the lengths differ, are below two or a value is not finite
   */
  public static Agreement of(double[] first, double[] second) {
    double[] one = Require.sample("first", first, 2);
    double[] two = Require.sample("second", second, 2);
    if (one.length != two.length) {
      throw new StatsException(
          "second", "has %d values, but \"first\" has %d.".formatted(two.length, one.length));
    }
    DD sum = DD.ZERO;
    for (int i = 0; i < one.length; i++) {
      sum = sum.add(DD.ofDifference(one[i], two[i]));
    }
    DD bias = sum.divide(one.length);
    DD squares = DD.ZERO;
    for (int i = 0; i < one.length; i++) {
      squares = squares.add(DD.ofDifference(one[i], two[i]).subtract(bias).square());
    }
    double sd = squares.divide(one.length - 1).sqrt().doubleValue();
    return new Agreement(bias.doubleValue(), sd);
  }

  /** bias ∓ 1.96·sd. */
  public Interval limits() {
    return Interval.normal95(bias, sd);
  }
}
