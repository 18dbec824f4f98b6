package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.ProportionInterval;
import blindlap.stats.tell.BinomialChoice.Tail;
import java.math.BigInteger;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BinomialChoiceTest {
  /** Whole-number weights of the outcomes at chance num/den, and their sum den^n. */
  private static BigInteger[] weights(int n, int num, int den) {
    BigInteger[] weights = new BigInteger[n + 1];
    BigInteger coefficient = BigInteger.ONE;
    for (int k = 0; k <= n; k++) {
      weights[k] =
          coefficient
              .multiply(BigInteger.valueOf(num).pow(k))
              .multiply(BigInteger.valueOf(den - num).pow(n - k));
      coefficient =
          coefficient.multiply(BigInteger.valueOf(n - k)).divide(BigInteger.valueOf(k + 1L));
    }
    return weights;
  }

  private static double share(BigInteger part, int n, int den) {
    return part.doubleValue() / BigInteger.valueOf(den).pow(n).doubleValue();
  }

  @ParameterizedTest
  @CsvSource({"1, 2", "1, 4", "3, 4", "1, 8"})
  void everyTailEqualsTheDirectSumOfWholeNumbers(int num, int den) {
    for (int n = 1; n <= 16; n++) {
      BigInteger[] weights = weights(n, num, den);
      BinomialChoice test = BinomialChoice.of(n, (double) num / den);
      for (int k = 0; k <= n; k++) {
        BigInteger above = BigInteger.ZERO;
        BigInteger below = BigInteger.ZERO;
        BigInteger rarer = BigInteger.ZERO;
        for (int j = 0; j <= n; j++) {
          above = j >= k ? above.add(weights[j]) : above;
          below = j <= k ? below.add(weights[j]) : below;
          rarer = weights[j].compareTo(weights[k]) <= 0 ? rarer.add(weights[j]) : rarer;
        }
        assertThat(test.p(k, Tail.GREATER)).isCloseTo(share(above, n, den), within(1e-14));
        assertThat(test.p(k, Tail.LESS)).isCloseTo(share(below, n, den), within(1e-14));
        assertThat(test.p(k, Tail.TWO_SIDED)).isCloseTo(share(rarer, n, den), within(1e-14));
      }
    }
  }

  @Test
  void theMinimumIsTheFirstCountThatReachesTheLevel() {
    for (int n = 1; n <= 60; n++) {
      for (double chance : new double[] {1.0 / 3, 0.5, 0.9}) {
        BinomialChoice test = BinomialChoice.of(n, chance);
        OptionalInt least = test.minimum(0.05, Tail.GREATER);
        for (int k = 0; k <= n; k++) {
          boolean reaches = least.isPresent() && k >= least.getAsInt();
          assertThat(test.p(k, Tail.GREATER) <= 0.05).as("%d of %d", k, n).isEqualTo(reaches);
        }
      }
    }
  }

  @Test
  void theTwoSidedMinimumHoldsFromThereOn() {
    for (int n = 1; n <= 60; n++) {
      for (double chance : new double[] {0.2, 0.5}) {
        BinomialChoice test = BinomialChoice.of(n, chance);
        int least = test.minimum(0.05, Tail.TWO_SIDED).orElse(n + 1);
        for (int k = least; k <= n; k++) {
          assertThat(test.p(k, Tail.TWO_SIDED)).isLessThanOrEqualTo(0.05);
        }
        assertThat(least - 1 <= n * chance || test.p(least - 1, Tail.TWO_SIDED) > 0.05).isTrue();
      }
    }
  }

  @Test
  void aTailThatEqualsTheLevelExactlyReachesIt() {
    // Four of four at one half: 1/16.
    assertThat(BinomialChoice.of(4, 0.5).minimum(0.0625, Tail.GREATER)).hasValue(4);
    assertThat(BinomialChoice.of(4, 0.5).minimum(0.0624, Tail.GREATER)).isEmpty();
    // Eight of ten at one half: 56/1024.
    assertThat(BinomialChoice.of(10, 0.5).minimum(56.0 / 1024, Tail.GREATER)).hasValue(8);
  }

  @Test
  void powerIsTheTailAtTheTrueProportionAndZeroWithoutMinimum() {
    BinomialChoice test = BinomialChoice.of(10, 0.5);
    // Nine or ten of ten at three quarters: (10·3^9 + 3^10)/4^10.
    double expected = (10 * Math.pow(3, 9) + Math.pow(3, 10)) / Math.pow(4, 10);
    assertThat(test.power(0.05, 0.75)).isCloseTo(expected, within(1e-15));
    assertThat(test.power(0.05, 1)).isEqualTo(1);
    assertThat(BinomialChoice.of(3, 0.5).power(0.05, 0.9)).isZero();
  }

  @Test
  void clopperPearsonEndsLeaveTwoAndAHalfPerCentOutside() {
    for (int[] each : new int[][] {{1, 1_000_000}, {1, 20}, {7, 20}, {19, 20}, {500, 1000}}) {
      Interval interval = ProportionInterval.CLOPPER_PEARSON.of(each[0], each[1]);
      BinomialChoice low = BinomialChoice.of(each[1], interval.low());
      BinomialChoice high = BinomialChoice.of(each[1], interval.high());
      assertThat(low.p(each[0], Tail.GREATER)).isCloseTo(0.025, within(1e-11));
      assertThat(high.p(each[0], Tail.LESS)).isCloseTo(0.025, within(1e-11));
    }
    // At no success the upper end is 1 − 0.025^(1/n), in closed form.
    assertThat(ProportionInterval.CLOPPER_PEARSON.of(0, 12).high())
        .isCloseTo(1 - Math.pow(0.025, 1.0 / 12), within(1e-14));
    assertThat(ProportionInterval.CLOPPER_PEARSON.of(0, 12).low()).isZero();
    assertThat(ProportionInterval.CLOPPER_PEARSON.of(12, 12).high()).isEqualTo(1);
  }

  @Test
  void wilsonEndsAreWhereTheScoreIsTheNormalQuantile() {
    Interval interval = ProportionInterval.WILSON.of(7, 20);
    for (double end : new double[] {interval.low(), interval.high()}) {
      double score = Math.abs(7 / 20.0 - end) / Math.sqrt(end * (1 - end) / 20);
      assertThat(score).isCloseTo(1.959963984540054, within(1e-12));
    }
    assertThat(ProportionInterval.WILSON.of(0, 20).low()).isZero();
    assertThat(ProportionInterval.WILSON.of(20, 20).high()).isEqualTo(1);
  }

  @Test
  void impossibleNumbersAreRefusedByName() {
    assertThatThrownBy(() -> BinomialChoice.of(10, 0.5).p(11, Tail.GREATER))
        .isInstanceOf(StatsException.class)
        .hasMessage("chosen: 11 is more than the 10 of \"trials\".");
    assertThatThrownBy(() -> BinomialChoice.of(10, 0.5).p(-1, Tail.GREATER))
        .hasMessageStartingWith("chosen: must not be negative");
    assertThatThrownBy(() -> BinomialChoice.of(0, 0.5)).hasMessageStartingWith("trials:");
    assertThatThrownBy(() -> BinomialChoice.of(10, 1.5)).hasMessageStartingWith("chance:");
    assertThatThrownBy(() -> BinomialChoice.of(10, 0.5).minimum(1.5, Tail.GREATER))
        .hasMessageStartingWith("level:");
    assertThatThrownBy(() -> BinomialChoice.of(10, 0.5).minimum(0.05, Tail.LESS))
        .hasMessageStartingWith("tail:");
    assertThatThrownBy(() -> BinomialChoice.of(10, 0.5).power(0.05, 1.5))
        .hasMessageStartingWith("true_proportion:");
  }
}
