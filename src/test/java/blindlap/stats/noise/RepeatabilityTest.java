package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.distribution.Interval;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.junit.jupiter.api.Test;

class RepeatabilityTest {
  @Test
  void duplicatesGiveTheRootOfHalfTheMeanSquaredDifference() {
    double[][] pairs = {{10, 12}, {11, 11.5}, {9, 8}};
    Repeatability found = Repeatability.ofGroups(pairs);
    assertThat(found.sd()).isCloseTo(Math.sqrt((4 + 0.25 + 1) / 6), within(1e-15));
    assertThat(found.df()).isEqualTo(3);
    assertThat(found.coefficient())
        .isCloseTo(1.959963984540054 * Math.sqrt(2) * found.sd(), within(1e-14));
    assertThat(found.groupSd())
        .containsExactly(
            new double[] {Math.sqrt(2), Math.sqrt(0.125), Math.sqrt(0.5)}, within(1e-15));
  }

  @Test
  void theIntervalEndsAreWhereChiSquaredLeavesTwoAndAHalfPerCent() {
    Repeatability found = Repeatability.pooled(new double[] {2}, new int[] {13});
    ChiSquaredDistribution chi = ChiSquaredDistribution.of(13);
    double low = 13 * 4 / Math.pow(found.sdInterval95().low(), 2);
    double high = 13 * 4 / Math.pow(found.sdInterval95().high(), 2);
    assertThat(chi.survivalProbability(low)).isCloseTo(0.025, within(1e-14));
    assertThat(chi.cumulativeProbability(high)).isCloseTo(0.025, within(1e-14));
  }

  @Test
  void theMultipliersOfTheMethodTextComeOut() {
    // docs/method.md#figures-of-the-noise: stints 8, 12, 16, 24, three degrees of freedom fewer.
    double[][] printed = {{5, 0.62, 2.45}, {9, 0.69, 1.83}, {13, 0.72, 1.61}, {21, 0.77, 1.43}};
    for (double[] row : printed) {
      Interval interval =
          Repeatability.pooled(new double[] {1}, new int[] {(int) row[0]}).sdInterval95();
      assertThat(interval.low()).isCloseTo(row[1], within(0.005));
      assertThat(interval.high()).isCloseTo(row[2], within(0.005));
    }
  }

  @Test
  void poolingKnownDeviationsEqualsPoolingTheirGroups() {
    double[][] groups = {{1, 2, 4}, {7, 7.5}, {3, 1, 2, 2}};
    Repeatability whole = Repeatability.ofGroups(groups);
    Repeatability pooled = Repeatability.pooled(whole.groupSd(), new int[] {2, 1, 3});
    assertThat(pooled.sd()).isCloseTo(whole.sd(), within(1e-15));
    assertThat(pooled.df()).isEqualTo(6);
  }

  @Test
  void groupsOfOneAreRefusedByPlace() {
    assertThatThrownBy(() -> Repeatability.ofGroups(new double[][] {{1, 2}, {3}}))
        .hasMessage("groups[1]: has 1 values, but at least 2 are needed.");
    assertThatThrownBy(() -> Repeatability.ofGroups(new double[0][]))
        .hasMessageStartingWith("groups: is empty");
    assertThatThrownBy(() -> Repeatability.pooled(new double[] {-1}, new int[] {3}))
        .hasMessageStartingWith("sds[0]: must not be negative");
    assertThatThrownBy(() -> Repeatability.pooled(new double[] {1}, new int[] {0}))
        .hasMessageStartingWith("dfs[0]:");
    assertThatThrownBy(() -> Repeatability.pooled(new double[] {1}, new int[] {1, 2}))
        .hasMessageStartingWith("dfs: must have as many");
  }
}
