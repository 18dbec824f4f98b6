package blindlap.stats.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.Verdict;
import blindlap.stats.noise.Spread;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

/**
 * docs/method.md#riders-in-general: equal weights, and the modified interval beyond a threefold
 * difference.
 */
class RidersInGeneralTest {
  private static final double[] ESTIMATES = {-1.2, -0.7, -1.9, 0.1, -0.8};
  private static final double[] ERRORS = {0.3, 0.35, 0.3, 0.32, 0.31};
  private static final double[] STINTS = {16, 16, 12, 16, 16};
  private static final double[] NOISES = {0.6, 0.7, 0.6, 0.65, 0.62};

  private static RidersInGeneral of(double[] stints, double[] noises) {
    return RidersInGeneral.of(ESTIMATES, ERRORS, stints, noises);
  }

  @Test
  void ridersAreCountedOnceEachWithAStudentIntervalOnOneDegreeLess() {
    RidersInGeneral general = of(STINTS, NOISES);
    assertThat(general.method()).isEqualTo(RidersInGeneral.Method.EQUAL_WEIGHT_T);
    assertThat(general.estimate()).isCloseTo(-0.9, within(1e-12));
    double error = Spread.of(ESTIMATES).sd() / Math.sqrt(5);
    TDistribution t = TDistribution.of(4);
    assertThat(general.interval95().halfWidth())
        .isCloseTo(t.inverseSurvivalProbability(0.025) * error, within(1e-10));
    assertThat(general.interval90().halfWidth())
        .isCloseTo(t.inverseSurvivalProbability(0.05) * error, within(1e-10));
  }

  @Test
  void exactlyThreefoldIsStillEvenAndAnythingBeyondIsNot() {
    assertThat(of(new double[] {16, 16, 16, 16, 48}, NOISES).method())
        .isEqualTo(RidersInGeneral.Method.EQUAL_WEIGHT_T);
    assertThat(of(new double[] {16, 16, 16, 16, 49}, NOISES).method())
        .isEqualTo(RidersInGeneral.Method.MODIFIED_HARTUNG_KNAPP);
    assertThat(of(STINTS, new double[] {0.5, 0.5, 0.5, 0.5, 1.5}).method())
        .isEqualTo(RidersInGeneral.Method.EQUAL_WEIGHT_T);
    assertThat(of(STINTS, new double[] {0.5, 0.5, 0.5, 0.5, 1.6}).method())
        .isEqualTo(RidersInGeneral.Method.MODIFIED_HARTUNG_KNAPP);
  }

  @Test
  void theModifiedIntervalIsThatOfTheOutsideCheckedPooling() {
    RidersInGeneral general = of(new double[] {12, 12, 12, 12, 48}, NOISES);
    double[] variances = new double[ERRORS.length];
    for (int i = 0; i < variances.length; i++) {
      variances[i] = ERRORS[i] * ERRORS[i];
    }
    RiderPooling.Reml reml = RiderPooling.reml(ESTIMATES, variances);
    assertThat(general.estimate()).isEqualTo(reml.estimate());
    assertThat(general.interval95()).isEqualTo(reml.modifiedHartungKnapp95());
  }

  @Test
  void verdictsFollowTheTwoIntervalsAndThreeRidersHaveNone() {
    RidersInGeneral general = of(STINTS, NOISES);
    // 95 % interval -1.84 to 0.04, 90 % -1.62 to -0.18.
    assertThat(general.verdict(0.1)).isEqualTo(Verdict.NOT_SETTLED);
    assertThat(general.verdict(2)).isEqualTo(Verdict.NO_WORTHWHILE_DIFFERENCE);
    RidersInGeneral clear =
        RidersInGeneral.of(new double[] {-1.2, -1, -1.1, -0.9}, quarter(), fours(), quarter());
    assertThat(clear.verdict(0.5)).isEqualTo(Verdict.REAL_AND_WORTHWHILE);
    assertThat(clear.verdict(3)).isEqualTo(Verdict.REAL_BUT_SMALL);
    assertThat(clear.verdict(1)).isEqualTo(Verdict.DIRECTION_KNOWN);
    RidersInGeneral three =
        RidersInGeneral.of(new double[] {-1, -1.1, -1.2}, three(0.3), three(16), three(0.6));
    assertThat(three.tooFew()).isTrue();
    assertThatThrownBy(() -> three.verdict(0.5)).hasMessageContaining("too few riders");
  }

  private static double[] three(double value) {
    return new double[] {value, value, value};
  }

  private static double[] quarter() {
    return new double[] {0.25, 0.25, 0.25, 0.25};
  }

  private static double[] fours() {
    return new double[] {16, 16, 16, 16};
  }
}
