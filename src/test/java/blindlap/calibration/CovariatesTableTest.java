package blindlap.calibration;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A small run of the table of covariates. */
class CovariatesTableTest {
  private static final int DAYS = 250;

  @ParameterizedTest
  @EnumSource(
      value = CovariatesTable.Goes.class,
      names = {"NOT", "WELL"})
  void aCovariateThatNoSetupTouchesKeepsErrorRateAndCoverage(CovariatesTable.Goes goes) {
    double most = BinomialDistribution.of(DAYS, 0.05).inverseSurvivalProbability(1e-5);
    double mostFlagged = BinomialDistribution.of(DAYS, 0.10).inverseSurvivalProbability(1e-5);
    for (NoiseScenario noise :
        new NoiseScenario[] {NoiseScenario.WHITE, NoiseScenario.AR_6, NoiseScenario.OUTLIERS}) {
      CovariatesTable.Found found =
          CovariatesTable.simulate(Design.BLOCK4_16, goes, noise, DAYS, 7 + noise.ordinal());
      assertThat(found.real() * DAYS).as(noise.text()).isLessThanOrEqualTo(most);
      assertThat((1 - found.covered()) * DAYS).as(noise.text()).isLessThanOrEqualTo(most);
      assertThat(found.flagged() * DAYS).as(noise.text()).isLessThanOrEqualTo(mostFlagged);
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = CovariatesTable.Goes.class,
      names = {"TOUCHED"})
  void aCovariateThatTheSetupMovesIsFlaggedOnMostDaysAndErrs(CovariatesTable.Goes goes) {
    CovariatesTable.Found found =
        CovariatesTable.simulate(Design.BLOCK4_16, goes, NoiseScenario.WHITE, DAYS, 7);
    assertThat(found.flagged()).isGreaterThan(0.4);
    assertThat(found.real()).isGreaterThan(0.1);
  }
}
