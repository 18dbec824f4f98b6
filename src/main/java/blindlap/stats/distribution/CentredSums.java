package blindlap.stats.distribution;

import org.apache.commons.numbers.core.DD;

/**
 * Means and sums of squares about the mean in double-double arithmetic (about 106 bits).
 *
 * <p>Two passes: the mean first, then squares of deviations from it. What is lost on data with many
 * constant leading digits (NIST sets NumAcc and SmLs) is then only what the data lose when they are
 * stored as doubles.
 */
public final class CentredSums {
  private CentredSums() {}

  public static DD sum(double[] values) {
    DD sum = DD.ZERO;
    for (double value : values) {
      sum = sum.add(value);
    }
    return sum;
  }

  /** Mean of at least one value. */
  public static DD mean(double[] values) {
    return sum(values).divide(values.length);
  }

  /** Sum of squared deviations from {@code centre}. */
  public static DD squares(double[] values, DD centre) {
    DD sum = DD.ZERO;
    for (double value : values) {
      sum = sum.add(centre.negate().add(value).square());
    }
    return sum;
  }

  /** Sum of squared deviations from the mean. */
  public static DD squares(double[] values) {
    return squares(values, mean(values));
  }
}
