package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SpreadTest {
  private static final MathContext DIGITS = new MathContext(60);

  @Test
  void agreesWithSixtyDigitArithmeticOnDataWithALargeOffset() {
    Random random = new Random(3);
    for (double offset : new double[] {0, 1e3, 1e9, 1e14}) {
      double[] y = random.doubles(40).map(x -> offset + x).toArray();
      BigDecimal sum = BigDecimal.ZERO;
      for (double each : y) {
        sum = sum.add(new BigDecimal(each));
      }
      BigDecimal mean = sum.divide(BigDecimal.valueOf(y.length), DIGITS);
      BigDecimal squares = BigDecimal.ZERO;
      BigDecimal products = BigDecimal.ZERO;
      for (int i = 0; i < y.length; i++) {
        BigDecimal here = new BigDecimal(y[i]).subtract(mean);
        squares = squares.add(here.pow(2));
        if (i > 0) {
          products = products.add(here.multiply(new BigDecimal(y[i - 1]).subtract(mean)));
        }
      }
      double sd = squares.divide(BigDecimal.valueOf(39), DIGITS).sqrt(DIGITS).doubleValue();
      double lag1 = products.divide(squares, DIGITS).doubleValue();
      Spread spread = Spread.of(y);
      assertThat(spread.n()).isEqualTo(40);
      assertThat(spread.mean()).isCloseTo(mean.doubleValue(), within(Math.ulp(mean.doubleValue())));
      assertThat(spread.sd()).isCloseTo(sd, within(2 * Math.ulp(sd)));
      assertThat(spread.lag1()).isCloseTo(lag1, within(1e-15));
    }
  }

  @Test
  void equalValuesHaveNoSpreadAndNoLagCorrelation() {
    Spread spread = Spread.of(0.1, 0.1, 0.1, 0.1);
    assertThat(spread.sd()).isZero();
    assertThat(spread.mean()).isEqualTo(0.1);
    assertThat(spread.lag1()).isNaN();
  }

  @Test
  void tooFewOrInfiniteValuesAreRefused() {
    assertThatThrownBy(() -> Spread.of())
        .hasMessage("values: has 0 values, but at least 2 are needed.");
    assertThatThrownBy(() -> Spread.of(1)).hasMessageStartingWith("values: has 1 values");
    assertThatThrownBy(() -> Spread.of(1, 1e200))
        .hasMessage("values[1]: 1.0E200 is too large: squares would overflow.");
    assertThatThrownBy(() -> Spread.of(1, Double.NaN)).hasMessageStartingWith("values[1]:");
    assertThatThrownBy(() -> Spread.of(Double.NEGATIVE_INFINITY, 1))
        .hasMessageStartingWith("values[0]:");
  }
}
