package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.inference.TTest;
import org.junit.jupiter.api.Test;

class OneWayTest {
  private static final double[][] GROUPS = {{4, 7, 6.5}, {9, 8.5, 11, 10}, {3, 5}};

  private static double[][] mapped(java.util.function.DoubleUnaryOperator change) {
    double[][] mapped = new double[GROUPS.length][];
    for (int g = 0; g < GROUPS.length; g++) {
      mapped[g] = java.util.Arrays.stream(GROUPS[g]).map(change).toArray();
    }
    return mapped;
  }

  @Test
  void twoGroupsGiveTheSquareOfStudentsT() {
    double[] a = {4, 7, 6.5, 5};
    double[] b = {9, 8.5, 11};
    var t =
        TTest.withDefaults()
            .with(org.apache.commons.statistics.inference.DataDispersion.HOMOSCEDASTIC)
            .test(a, b);
    OneWay found = OneWay.of(new double[][] {a, b});
    assertThat(found.f()).isCloseTo(t.getStatistic() * t.getStatistic(), within(1e-12));
    assertThat(found.p()).isCloseTo(t.getPValue(), within(1e-13));
    assertThat(found.withinDf()).isEqualTo(5);
  }

  @Test
  void sumsOfSquaresAddUpToThatOfAllValues() {
    OneWay found = OneWay.of(GROUPS);
    double all = Math.pow(Spread.of(4, 7, 6.5, 9, 8.5, 11, 10, 3, 5).sd(), 2) * 8;
    assertThat(found.betweenSquares() + found.withinSquares()).isCloseTo(all, within(1e-12));
    assertThat(found.rSquared()).isCloseTo(found.betweenSquares() / all, within(1e-14));
    assertThat(found.residualSd()).isCloseTo(Repeatability.ofGroups(GROUPS).sd(), within(1e-14));
  }

  @Test
  void shiftingChangesNothingAndScalingScalesTheSquares() {
    OneWay found = OneWay.of(GROUPS);
    OneWay shifted = OneWay.of(mapped(y -> y + 1024));
    OneWay scaled = OneWay.of(mapped(y -> 8 * y));
    assertThat(shifted.f()).isCloseTo(found.f(), within(1e-12));
    assertThat(scaled.f()).isCloseTo(found.f(), within(1e-12));
    assertThat(scaled.withinSquares()).isCloseTo(64 * found.withinSquares(), within(1e-11));
  }

  @Test
  void groupsWithoutScatterAreRefused() {
    assertThatThrownBy(() -> OneWay.of(new double[][] {{1, 1}, {2, 2}}))
        .hasMessage("groups: is constant within every group; F is not defined.");
    assertThatThrownBy(() -> OneWay.of(new double[][] {{1}, {2}, {3}}))
        .hasMessageStartingWith("groups: has one value per group");
    assertThatThrownBy(() -> OneWay.of(new double[][] {{1, 2}}))
        .hasMessageStartingWith("groups: has 1 groups");
    assertThatThrownBy(() -> OneWay.of(new double[][] {{1, 2}, {}}))
        .hasMessageStartingWith("groups[1]: has 0 values");
    assertThatThrownBy(() -> OneWay.of(new double[][] {{1, 2}, {1, Double.NaN}}))
        .hasMessageStartingWith("groups[1][1]: must be a finite number");
  }
}
