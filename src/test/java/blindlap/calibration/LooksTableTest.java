package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** A small run of the table of looks. */
class LooksTableTest {
  private static final int DAYS = 1500;

  @Test
  void withoutADifferenceADayShowsOneWithTheProbabilityOfTheLevelWhateverIsVoidedLater() {
    double most = BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-4);
    for (LooksTable.Late late :
        List.of(LooksTable.Late.NOTHING, LooksTable.Late.VOID, LooksTable.Late.SINCE)) {
      LooksTable.Found found =
          LooksTable.simulate(List.of(16), NoiseScenario.WHITE, 0, late, DAYS, 7);
      assertThat(found.shown() * DAYS).isLessThanOrEqualTo(most);
      assertThat(found.stopped()).isBetween(0.002, 0.035);
    }
  }

  /** A void of what a look used is not applied to it; one of a stint ridden since it is. */
  @Test
  void aVoidSinceTheLookChangesTheEndAndOneBeforeItNothing() {
    LooksTable.Found plain = found(LooksTable.Late.NOTHING);
    assertThat(found(LooksTable.Late.VOID)).isEqualTo(plain);
    LooksTable.Found since = found(LooksTable.Late.SINCE);
    assertThat(since.stopped()).isEqualTo(plain.stopped());
    assertThat(since.shown()).isNotEqualTo(plain.shown());
  }

  /** docs/method.md#looks: 5.9 % in place of 1.6 %, with the void that suits best. */
  @Test
  void aLookThatIsTakenAgainAfterAVoidWouldStopMoreDaysWithoutADifference() {
    assertThat(found(LooksTable.Late.AGAIN).stopped())
        .isGreaterThan(found(LooksTable.Late.NOTHING).stopped());
  }

  private static LooksTable.Found found(LooksTable.Late late) {
    return LooksTable.simulate(List.of(16), NoiseScenario.WHITE, 0, late, DAYS, 9);
  }

  @Test
  void aDifferenceOfOneAndAHalfNoisesIsShownInFewerStints() {
    LooksTable.Found found =
        LooksTable.simulate(
            List.of(16), NoiseScenario.WHITE, 1.5, LooksTable.Late.NOTHING, DAYS, 8);
    double error = Math.sqrt(0.93 * 0.07 / DAYS);
    assertThat(found.shown()).isBetween(0.92 - 3 * error, 0.94 + 3 * error);
    assertThat(found.stints()).isCloseTo(19.7, within(0.5));
  }
}
