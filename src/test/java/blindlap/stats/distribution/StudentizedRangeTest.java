package blindlap.stats.distribution;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.numbers.gamma.LogGamma;
import org.junit.jupiter.api.Test;

class StudentizedRangeTest {
  /** Tables of the upper points as printed in textbooks, from memory, two decimals. */
  private static final double[][] TABLE_95 = {
    {3, 5, 4.60},
    {3, 10, 3.88},
    {3, 20, 3.58},
    {4, 10, 4.33},
    {4, 16, 4.05},
    {4, 20, 3.96},
    {5, 20, 4.23},
    {6, 30, 4.30},
    {10, 60, 4.65},
    {3, 60, 3.40}
  };

  private static final double[][] TABLE_99 = {{3, 10, 5.27}, {4, 10, 5.77}, {3, 20, 4.64}};

  @Test
  void upperPointsAreThoseOfTheTables() {
    for (double[] row : TABLE_95) {
      assertThat(StudentizedRange.of((int) row[0], row[1]).quantile(0.95))
          .as("k %s, df %s", row[0], row[1])
          .isCloseTo(row[2], within(0.00501));
    }
    for (double[] row : TABLE_99) {
      assertThat(StudentizedRange.of((int) row[0], row[1]).quantile(0.99))
          .isCloseTo(row[2], within(0.00501));
    }
  }

  @Test
  void ofTwoValuesItIsStudentsTTimesTheRootOfTwo() {
    for (double df : new double[] {1, 2, 5, 14, 200}) {
      assertThat(StudentizedRange.of(2, df).quantile(0.95))
          .isCloseTo(
              Math.sqrt(2) * Quantiles.tUpper(0.025, df),
              org.assertj.core.data.Percentage.withPercentage(1e-8));
    }
  }

  /** Hartley's form of the range, Simpson's rule over s and z, gamma function for the weight. */
  @Test
  void itAgreesWithAnotherFormulaIntegratedAnotherWay() {
    for (int k : new int[] {3, 4, 6}) {
      for (double df : new double[] {4, 9, 14, 40}) {
        double q = StudentizedRange.of(k, df).quantile(0.95);
        assertThat(otherWay(q, k, df)).as("k %s, df %s", k, df).isCloseTo(0.95, within(1e-7));
      }
    }
  }

  private static double otherWay(double q, int k, double df) {
    double logConstant = Math.log(2) + df / 2 * Math.log(df / 2) - LogGamma.value(df / 2);
    return simpson(
        1e-9,
        6,
        1200,
        s -> Math.exp(logConstant + (df - 1) * Math.log(s) - df * s * s / 2) * hartley(q * s, k));
  }

  private static double hartley(double w, int k) {
    double middle = Math.pow(2 * NormalCurve.cdf(w / 2) - 1, k);
    return middle
        + 2
            * k
            * simpson(
                w / 2,
                w / 2 + 9,
                200,
                z ->
                    NormalCurve.density(z)
                        * Math.pow(NormalCurve.cdf(z) - NormalCurve.cdf(z - w), k - 1));
  }

  private static double simpson(
      double from, double to, int steps, java.util.function.DoubleUnaryOperator f) {
    double h = (to - from) / steps;
    double sum = f.applyAsDouble(from) + f.applyAsDouble(to);
    for (int i = 1; i < steps; i++) {
      sum += (i % 2 == 1 ? 4 : 2) * f.applyAsDouble(from + i * h);
    }
    return sum * h / 3;
  }

  @Test
  void theQuantileIsTheInverseAndImpossibleValuesAreRefused() {
    StudentizedRange range = StudentizedRange.of(4, 11);
    for (double p : new double[] {0.01, 0.5, 0.9, 0.95, 0.999}) {
      assertThat(range.cdf(range.quantile(p))).isCloseTo(p, within(1e-11));
    }
    assertThat(range.cdf(0)).isZero();
    refused("k", () -> StudentizedRange.of(1, 5));
    refused("df", () -> StudentizedRange.of(3, 0));
    refused("p", () -> range.quantile(1));
  }
}
