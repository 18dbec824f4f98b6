package blindlap.workshop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitsTest {
  private static double convert(double value, String from, String to) {
    return Units.convert(value, Unit.ofSymbol("from", from), Unit.ofSymbol("to", to));
  }

  @ParameterizedTest
  @EnumSource(Unit.class)
  void thereAndBackAgainGivesTheSameNumber(Unit from) {
    for (Unit to : Unit.values()) {
      if (to.kind() == from.kind()) {
        for (double value : new double[] {0, 1, 37.25, 0.1}) {
          double back = Units.convert(Units.convert(value, from, to), to, from);
          assertThat(back).as("%s to %s", from, to).isCloseTo(value, within(1e-13));
        }
        assertThat(Units.convert(0.1, from, from)).isEqualTo(0.1);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Unit.class)
  void unlikeKindsAreRefused(Unit from) {
    for (Unit to : Unit.values()) {
      if (to.kind() != from.kind()) {
        assertThatThrownBy(() -> Units.convert(1, from, to))
            .isInstanceOf(StatsException.class)
            .hasMessageStartingWith("to: \"" + from.symbol() + "\" and \"" + to.symbol() + "\"");
      }
    }
  }

  /** Exact by definition: yard and pound agreement 1959, standard gravity 9.80665 m/s². */
  @ParameterizedTest
  @CsvSource({
    "1, lb, kg, 0.45359237",
    "1, in, mm, 25.4",
    "1, mi, km, 1.609344",
    "1, kgf, N, 9.80665",
    "1, lbf, N, 4.4482216152605",
    "1, bar, kPa, 100",
    "36, km/h, m/s, 10",
    "212, degF, degC, 100",
    "-40, degF, degC, -40",
    "0, degC, degF, 32",
    "1, N.m, lbf.ft, 0.7375621492772654",
    "12, in, ft, 1",
    "1, mph, km/h, 1.609344",
  })
  void definitionsComeOutToTheLastDigit(double value, String from, String to, double expected) {
    assertThat(convert(value, from, to)).isEqualTo(expected);
  }

  @Test
  void impossibleValuesAreRefusedByName() {
    assertThatThrownBy(() -> convert(Double.NaN, "in", "mm")).hasMessageStartingWith("value: must");
    assertThatThrownBy(() -> convert(-300, "degC", "degF"))
        .hasMessageContaining("below absolute zero");
    assertThatThrownBy(() -> convert(1, "stone", "kg"))
        .hasMessageStartingWith("from: \"stone\" is none of the units");
    assertThat(convert(-459.67, "degF", "degC")).isEqualTo(-273.15);
  }
}
