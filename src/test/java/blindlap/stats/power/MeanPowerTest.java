package blindlap.stats.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.distribution.NormalCurve;
import blindlap.stats.power.MeanPower.Kind;
import blindlap.stats.power.MeanPower.Tail;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MeanPowerTest {
  @ParameterizedTest
  @EnumSource(Kind.class)
  void withoutADifferenceThePowerIsTheLevel(Kind kind) {
    assertThat(MeanPower.of(kind, Tail.TWO_SIDED_BOTH, 0.05).power(9, 0, 2))
        .isCloseTo(0.05, within(1e-13));
    assertThat(MeanPower.of(kind, Tail.TWO_SIDED_NEAR, 0.05).power(9, 0, 2))
        .isCloseTo(0.025, within(1e-13));
    assertThat(MeanPower.of(kind, Tail.GREATER, 0.05).power(9, 0, 2))
        .isCloseTo(0.05, within(1e-13));
  }

  @Test
  void whatIsSolvedForGivesThePowerBack() {
    for (Kind kind : Kind.values()) {
      for (Tail tail : Tail.values()) {
        for (double wanted : new double[] {0.3, 0.8, 0.99}) {
          MeanPower test = MeanPower.of(kind, tail, 0.05);
          double n = test.solveN(wanted, 0.7, 1.3);
          double difference = test.solveDifference(wanted, 12, 1.3);
          double sd = test.solveSd(wanted, 12, 0.7);
          assertThat(test.power(n, 0.7, 1.3)).isCloseTo(wanted, within(1e-11));
          assertThat(test.power(12, difference, 1.3)).isCloseTo(wanted, within(1e-11));
          assertThat(test.power(12, 0.7, sd)).isCloseTo(wanted, within(1e-11));
        }
      }
    }
  }

  @Test
  void pairedAndOneSampleAreOneAndEqualGroupsAreAPairOfGroups() {
    double paired = MeanPower.of(Kind.PAIRED, Tail.GREATER, 0.05).power(12, 1, 2);
    assertThat(MeanPower.of(Kind.ONE_SAMPLE, Tail.GREATER, 0.05).power(12, 1, 2)).isEqualTo(paired);
    MeanPower two = MeanPower.of(Kind.TWO_SAMPLE, Tail.TWO_SIDED_BOTH, 0.05);
    assertThat(two.power(12, 12, 1, 2)).isCloseTo(two.power(12, 1, 2), within(1e-14));
    assertThat(two.power(8, 16, 1, 2)).isLessThan(two.power(12, 1, 2));
    double difference = two.solveDifference(0.8, 8, 16, 2);
    assertThat(two.power(8, 16, difference, 2)).isCloseTo(0.8, within(1e-11));
    assertThat(two.solveSd(0.8, 8, 16, difference)).isCloseTo(2, within(1e-11));
  }

  @Test
  void largeGroupsApproachTheNormalFormula() {
    double n = 200_000;
    double shift = 0.01 * Math.sqrt(n / 2);
    double normal = NormalCurve.upper(1.959963984540054 - shift);
    assertThat(MeanPower.of(Kind.TWO_SAMPLE, Tail.TWO_SIDED_NEAR, 0.05).power(n, 0.01, 1))
        .isCloseTo(normal, within(1e-5));
  }

  @Test
  void impossibleDesignsAreRefusedByName() {
    MeanPower near = MeanPower.of(Kind.TWO_SAMPLE, Tail.TWO_SIDED_NEAR, 0.05);
    assertThatThrownBy(() -> near.power(1, 1, 1)).hasMessageStartingWith("n: must be at least 1.1");
    assertThatThrownBy(() -> near.power(10, -1, 1)).hasMessageStartingWith("difference: must not");
    assertThatThrownBy(() -> near.power(10, 1, 0)).hasMessageStartingWith("sd: must be above 0");
    assertThatThrownBy(() -> near.power(10, 1e9, 1))
        .hasMessageStartingWith("difference: is more than 100,000 standard errors");
    assertThatThrownBy(() -> near.power(10, Double.NaN, 1)).hasMessageStartingWith("difference:");
    assertThatThrownBy(() -> near.power(1, 1, 1, 1)).hasMessageStartingWith("n: must together");
    assertThatThrownBy(() -> near.solveN(1.2, 1, 1))
        .hasMessageStartingWith("power: must be above 0");
    assertThatThrownBy(() -> near.solveN(0.8, 0, 1))
        .hasMessageStartingWith("power: 0.8 is not reached");
    assertThatThrownBy(() -> near.solveDifference(0.01, 10, 1))
        .hasMessageStartingWith("power: 0.01 is reached already");
    assertThatThrownBy(() -> MeanPower.of(Kind.PAIRED, Tail.GREATER, 0))
        .hasMessageStartingWith("level:");
    assertThatThrownBy(() -> MeanPower.of(Kind.PAIRED, Tail.GREATER, 0.05).power(5, 5, 1, 1))
        .hasMessageStartingWith("n: may be a pair");
  }
}
