package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** Short runs of what docs/calibration.md says of voids, watched harms and intervals of pairs. */
class SharperTablesTest {
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

  @Test
  void voidsOfSingleLapsAreFlaggedWhereTheyFollowTheSetupAndSeldomElsewhere() {
    var any = SharperTables.VoidDays.simulate(SharperTables.Voiding.ANY, DAYS, 1);
    var all = SharperTables.VoidDays.simulate(SharperTables.Voiding.ALL, DAYS, 2);
    // Two checks at .10 each.
    double most = BinomialDistribution.of(DAYS, 0.20).inverseSurvivalProbability(1e-5);
    assertThat(any.flagged() * DAYS).isLessThanOrEqualTo(most);
    assertThat(any.real() * DAYS)
        .isLessThanOrEqualTo(BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-5));
    assertThat(all.real()).as("voiding by setup makes differences").isGreaterThan(0.10);
    assertThat(all.flagged()).isEqualTo(1);
    assertThat(all.byStints()).as("no whole stint is void").isZero();
  }

  @Test
  void intervalsOfPairsHoldAllTrueDifferencesTogetherOnNineteenDaysOfTwenty() {
    double least = BinomialDistribution.of(DAYS, 0.95).inverseCumulativeProbability(1e-5);
    double most = BinomialDistribution.of(DAYS, 0.95).inverseSurvivalProbability(1e-5);
    for (int setups : new int[] {3, 4}) {
      assertThat(SharperTables.coverage(setups, 12, NoiseScenario.WHITE, DAYS, 3) * DAYS)
          .isBetween(least, most);
    }
  }
}
