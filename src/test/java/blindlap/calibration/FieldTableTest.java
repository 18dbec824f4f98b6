package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A small run of the table of fields. */
class FieldTableTest {
  private static final int SEASONS = 300;

  /** With white noise and leads that keep, the model is the truth, so the level is too. */
  @ParameterizedTest
  @EnumSource(FieldTable.Season.class)
  void whereLeadsKeepAllIntervalsHoldAtOnceAndDaysAgree(FieldTable.Season season) {
    FieldTable.Found found =
        FieldTable.simulate(season, NoiseScenario.WHITE, 0, 1, SEASONS, 11 + season.ordinal());
    double most = BinomialDistribution.of(SEASONS, 0.05).inverseSurvivalProbability(1e-5);
    assertThat((1 - found.covered()) * SEASONS).isLessThanOrEqualTo(most);
    if (season == FieldTable.Season.STAR || season == FieldTable.Season.THREES) {
      assertThat(found.disagree()).isNaN();
    } else {
      BinomialDistribution flagged = BinomialDistribution.of(SEASONS, 0.10);
      assertThat(found.disagree() * SEASONS)
          .isBetween(
              (double) flagged.inverseCumulativeProbability(1e-5),
              (double) flagged.inverseSurvivalProbability(1e-5));
    }
  }

  @ParameterizedTest
  @EnumSource(FieldTable.Season.class)
  void whereLeadsChangeTheIntervalsHoldLessOftenEvenIfTheDaysAgree(FieldTable.Season season) {
    FieldTable.Found keep =
        FieldTable.simulate(season, NoiseScenario.WHITE, 0, 1, SEASONS, 21 + season.ordinal());
    FieldTable.Found change =
        FieldTable.simulate(season, NoiseScenario.WHITE, 1, 1, SEASONS, 31 + season.ordinal());
    assertThat(change.covered()).isLessThan(0.75).isLessThan(keep.covered() - 0.15);
    assertThat(change.coveredTold()).isLessThan(keep.covered() - 0.1);
  }
}
