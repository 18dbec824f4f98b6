package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;

/**
 * On which scale setups are compared: raw differences, or ratios through natural logarithms
 * (docs/method.md#scale).
 */
public enum Scale {
  RAW,
  RATIO;

  /** From a value as recorded to the scale of the analysis. */
  public double forward(double value) {
    if (this == RAW || Double.isNaN(value)) {
      return value;
    }
    if (!(value > 0)) {
      throw new Unusable(
          "values",
          "must be above 0 on the ratio scale, not " + value + ".",
          DayFault.NOT_ABOVE_ZERO,
          value);
    }
    return Math.log(value);
  }

  /**
   * From values as recorded to the scale of the analysis; NaN stays NaN.
   *
   * @param argument name used in a refusal
   * @throws StatsException if a value is infinite, or not above 0 on the ratio scale
   */
  public double[] forward(String argument, double[] values) {
    double[] result = new double[values.length];
    for (int i = 0; i < result.length; i++) {
      String at = argument + "[" + i + "]";
      if (Double.isInfinite(values[i])) {
        throw new StatsException(at, "must be a finite number, but is " + values[i] + ".");
      }
      if (this == RATIO && values[i] <= 0) {
        throw new StatsException(
            at, "must be above 0 on the ratio scale, but is " + values[i] + ".");
      }
      result[i] = forward(values[i]);
    }
    return result;
  }

  /** From a difference on the scale of the analysis to what is said: a difference, or a ratio. */
  public double back(double difference) {
    return this == RAW ? difference : Math.exp(difference);
  }

  /** The inverse of {@link #back}. */
  public double shift(double said) {
    return forward(said);
  }

  /**
   * The worthwhile difference on the scale of the analysis: D itself, or ln(1 + D/100) for D per
   * cent.
   */
  public double margin(double worthwhile) {
    return this == RAW ? worthwhile : Math.log1p(worthwhile / 100);
  }

  /** The name used in files and requests. */
  public String text() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
