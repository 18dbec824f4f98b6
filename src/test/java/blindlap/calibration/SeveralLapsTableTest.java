package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** Short runs of what docs/calibration.md says of several scored laps a stint. */
class SeveralLapsTableTest {
  private static final int DAYS = 400;

  /** Three standard errors of a quotient of two simulated quantiles of so many days, about. */
  private static final double ERROR = 0.08;

  @Test
  void intervalsOfTheRatioAndOfStintNoiseHoldTheTruthOnNineteenDaysOfTwenty() {
    double least = BinomialDistribution.of(DAYS, 0.95).inverseCumulativeProbability(1e-5);
    for (double share : new double[] {0, 0.3, 0.6}) {
      var found = SeveralLapsTable.Coverage.simulate(share, DAYS, 7);
      assertThat(found.ratio() * DAYS).isGreaterThanOrEqualTo(least);
      assertThat(found.stint() * DAYS).isGreaterThanOrEqualTo(least);
    }
  }

  @Test
  void threeLapsInsteadOfOneGainWhatTheFormulaSays() {
    assertThat(SeveralLapsTable.gain(0, DAYS, 1)).isCloseTo(1 - .42, within(ERROR));
    assertThat(SeveralLapsTable.gain(0.3, DAYS, 2)).isCloseTo(1 - .27, within(ERROR));
    assertThat(SeveralLapsTable.gain(0.6, DAYS, 3)).isCloseTo(1 - .14, within(ERROR));
  }

  @Test
  void mediansGainWhereLapsAreWildAndCostWhereTheyAreNot() {
    assertThat(SeveralLapsTable.medianGain(NoiseScenario.OUTLIERS, DAYS, 4))
        .isCloseTo(1 - .23, within(ERROR));
    assertThat(SeveralLapsTable.medianGain(NoiseScenario.T3, DAYS, 5))
        .isCloseTo(1 - .10, within(ERROR));
    assertThat(SeveralLapsTable.medianGain(NoiseScenario.WHITE, DAYS, 6))
        .isCloseTo(1 + .16, within(ERROR));
  }

  @Test
  void voidsThatFollowASetupButNotTheTimesLeaveTheMedianItsLevel() {
    double most = BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-5);
    for (SeveralLapsTable.Voiding voiding : SeveralLapsTable.Voiding.values()) {
      assertThat(SeveralLapsTable.real(voiding, NoiseScenario.OUTLIERS, DAYS, 8) * DAYS)
          .isLessThanOrEqualTo(most);
    }
  }
}
