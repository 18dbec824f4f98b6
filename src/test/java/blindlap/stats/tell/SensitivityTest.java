package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.distribution.ProportionInterval;
import blindlap.stats.distribution.Quantiles;
import org.junit.jupiter.api.Test;

class SensitivityTest {
  @Test
  void atOrBelowChanceTheDistanceIsZeroWithoutStandardError() {
    Sensitivity found = Sensitivity.ofChoices(Discrimination.TWO_CHOICE, 20, 9);
    assertThat(found.dPrime()).isZero();
    assertThat(found.standardError()).isNaN();
    assertThat(found.interval95().low()).isZero();
    assertThat(found.interval95().high()).isGreaterThan(0);
  }

  @Test
  void whenAllAreRightThereIsNoFiniteDistanceButALowerEnd() {
    Sensitivity found = Sensitivity.ofChoices(Discrimination.TRIANGLE, 12, 12);
    assertThat(found.dPrime()).isNaN();
    assertThat(found.standardError()).isNaN();
    assertThat(found.interval95().high()).isNaN();
    double low = ProportionInterval.CLOPPER_PEARSON.of(12, 12).low();
    assertThat(Discrimination.TRIANGLE.proportion(found.interval95().low()))
        .isCloseTo(low, within(1e-13));
  }

  @Test
  void anEmptyCellAddsAHalfToAllFourCounts() {
    Sensitivity found = Sensitivity.ofSameOrOther(10, 0, 3, 7);
    double h = 10.5 / 11;
    double f = 3.5 / 11;
    double zh = Quantiles.normal(h);
    double zf = Quantiles.normal(f);
    assertThat(found.dPrime()).isCloseTo(zh - zf, within(1e-14));
    assertThat(found.criterion()).isCloseTo(-(zh + zf) / 2, within(1e-14));
    assertThat(found.proportion()).isNaN();
  }

  @Test
  void swappingSignalAndNoiseMirrorsTheDistance() {
    Sensitivity there = Sensitivity.ofSameOrOther(14, 6, 5, 15);
    Sensitivity back = Sensitivity.ofSameOrOther(5, 15, 14, 6);
    assertThat(back.dPrime()).isEqualTo(-there.dPrime());
    assertThat(back.criterion()).isEqualTo(there.criterion());
    assertThat(back.standardError()).isCloseTo(there.standardError(), within(1e-15));
  }

  @Test
  void impossibleCountsAreRefusedByName() {
    assertThatThrownBy(() -> Sensitivity.ofChoices(Discrimination.TRIANGLE, 5, 6))
        .hasMessage("correct: 6 is more than the 5 of \"trials\".");
    assertThatThrownBy(() -> Sensitivity.ofChoices(Discrimination.TRIANGLE, 0, 0))
        .hasMessageStartingWith("trials:");
    assertThatThrownBy(() -> Sensitivity.ofSameOrOther(1, -1, 1, 1))
        .hasMessageStartingWith("misses: must not be negative");
    assertThatThrownBy(() -> Sensitivity.ofSameOrOther(0, 0, 1, 1)).hasMessageStartingWith("hits:");
    assertThatThrownBy(() -> Sensitivity.ofSameOrOther(1, 1, 0, 0))
        .hasMessageStartingWith("false_alarms:");
  }
}
