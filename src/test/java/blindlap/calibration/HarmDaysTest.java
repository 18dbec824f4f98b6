package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** A short run of what docs/calibration.md says of watched harms. */
class HarmDaysTest {
  private static final int DAYS = 300;

  @Test
  void eightMeasuresOfPureNoiseRaiseAFalseAlarmOnOneDayInTwentyAtMost() {
    // Binomial bound, one false alarm of the test in 100 000; unadjusted it was .46 at this size.
    double most = BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-5);
    assertThat(HarmDays.simulate(8, "0.05", DAYS, 1).shown() * DAYS).isLessThanOrEqualTo(most);
  }

  @Test
  void aHarmOfNextToNothingIsShownOfOneMeasureOfNoiseOnSomeDaysButFew() {
    double most = BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-5);
    assertThat(HarmDays.simulate(1, "0.05", DAYS, 2).shown() * DAYS).isBetween(1.0, most);
  }
}
