package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** A small run of the table of waits. */
class WaitsTableTest {
  private static final int DAYS = 250;

  private static WaitsTable.Flagged days(WaitsTable.Slower slower) {
    return WaitsTable.simulate(Design.BLOCK4_16, slower, NoiseScenario.WHITE, DAYS, 4);
  }

  @Test
  void waitsThatTellNothingAreFlaggedOnOneDayInTenWhateverTheHelpersPace() {
    double most = BinomialDistribution.of(DAYS, 0.10).inverseSurvivalProbability(1e-5);
    for (WaitsTable.Slower none :
        new WaitsTable.Slower[] {WaitsTable.Slower.NOTHING, WaitsTable.Slower.TREND}) {
      assertThat(days(none).kind() * DAYS).isLessThanOrEqualTo(most);
      assertThat(days(none).setup() * DAYS).isLessThanOrEqualTo(most);
    }
  }

  @Test
  void aSwapThatIsSlowOneWayAndQuickBackIsSeenByTheSetupAndHardlyByTheKindOfSwap() {
    WaitsTable.Flagged slow = days(WaitsTable.Slower.TURNED);
    assertThat(slow.setup()).isGreaterThan(2 * slow.kind());
    assertThat(days(WaitsTable.Slower.REAL).kind()).isGreaterThan(0.6);
  }
}
