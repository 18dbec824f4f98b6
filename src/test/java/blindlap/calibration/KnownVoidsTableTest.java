package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** A short run of what docs/calibration.md says of voids by someone who knows what is on. */
class KnownVoidsTableTest {
  private static final int DAYS = 500;

  @Test
  void voidingTheWorstLapsOfOneSetupMakesDifferencesUnlessAllRiddenLapsCount() {
    double most = BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-5);
    KnownVoidsTable.Found three = KnownVoidsTable.simulate(Design.BLOCK4_16, 3, DAYS, 1);
    assertThat(three.left()).as("three laps left out").isGreaterThan(0.10);
    assertThat(three.counted() * DAYS).as("all ridden laps").isLessThanOrEqualTo(most);
    KnownVoidsTable.Found one = KnownVoidsTable.simulate(Design.BLOCK4_16, 1, DAYS, 2);
    assertThat(one.left()).isLessThan(three.left());
    assertThat(one.counted() * DAYS).isLessThanOrEqualTo(most);
  }
}
