package blindlap.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class RidersInGeneralTest {
  private static final double[] ESTIMATES = {0.9, 1.4, 0.2, 1.1, 1.6};
  private static final double[] ERRORS = {0.3, 0.35, 0.3, 0.4, 0.32};
  private static final double[] STINTS = {12, 12, 16, 16, 12};
  private static final double[] NOISE = {0.6, 0.7, 0.6, 0.9, 0.65};

  @Test
  void ridersOfLikeNoiseArePooledByTheMeanAndItsTInterval() {
    RidersInGeneral found = RidersInGeneral.of(ESTIMATES, ERRORS, STINTS, NOISE);
    assertThat(found.method()).isEqualTo(RidersInGeneral.Method.EQUAL_WEIGHT_T);
    assertThat(found.estimate()).isCloseTo(1.04, within(1e-12));
    double se = Spread.of(ESTIMATES).sd() / Math.sqrt(5);
    double t90 = TDistribution.of(4).inverseSurvivalProbability(0.05);
    assertThat(found.interval90().low()).isCloseTo(1.04 - t90 * se, within(1e-8));
    assertThat(found.interval95()).isEqualTo(RiderPooling.mean(ESTIMATES).interval95());
  }

  @Test
  void moreThanThreefoldNoiseOrStintsTurnToTheModifiedInterval() {
    double[] uneven = {0.6, 0.7, 0.6, 1.81, 0.65};
    RidersInGeneral byNoise = RidersInGeneral.of(ESTIMATES, ERRORS, STINTS, uneven);
    assertThat(byNoise.method()).isEqualTo(RidersInGeneral.Method.MODIFIED_HARTUNG_KNAPP);
    RidersInGeneral byStints =
        RidersInGeneral.of(ESTIMATES, ERRORS, new double[] {4, 12.1, 8, 8, 8}, NOISE);
    assertThat(byStints.method()).isEqualTo(RidersInGeneral.Method.MODIFIED_HARTUNG_KNAPP);
    double[] exactlyThree = {0.6, 0.7, 0.6, 1.8, 0.65};
    assertThat(RidersInGeneral.of(ESTIMATES, ERRORS, STINTS, exactlyThree).method())
        .isEqualTo(RidersInGeneral.Method.EQUAL_WEIGHT_T);
  }

  @Test
  void verdictsFollowTheIntervals() {
    RidersInGeneral found = RidersInGeneral.of(ESTIMATES, ERRORS, STINTS, NOISE);
    assertThat(found.verdict(0.3)).isEqualTo(Verdict.REAL_AND_WORTHWHILE);
    assertThat(found.verdict(0.9)).isEqualTo(Verdict.DIRECTION_KNOWN);
    assertThat(found.verdict(5)).isEqualTo(Verdict.REAL_BUT_SMALL);
    double[] none = {0.1, -0.2, 0.05, -0.1, 0.12};
    RidersInGeneral nothing = RidersInGeneral.of(none, ERRORS, STINTS, NOISE);
    assertThat(nothing.verdict(1)).isEqualTo(Verdict.NO_WORTHWHILE_DIFFERENCE);
    assertThat(nothing.verdict(0.05)).isEqualTo(Verdict.NOT_SETTLED);
  }

  @Test
  void threeRidersGetAnIntervalButNoVerdict() {
    RidersInGeneral three =
        RidersInGeneral.of(
            new double[] {1, 2, 3},
            new double[] {1, 1, 1},
            new double[] {9, 9, 9},
            new double[] {1, 1, 1});
    assertThat(three.tooFew()).isTrue();
    assertThatThrownBy(() -> three.verdict(1)).isInstanceOf(IllegalStateException.class);
  }
}
