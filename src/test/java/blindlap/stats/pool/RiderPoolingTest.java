package blindlap.stats.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.Spread;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class RiderPoolingTest {
  private static final double[] Y = {0.4, -1.1, 2.3, 0.9, 1.7};
  private static final double[] V = {0.1, 0.3, 0.2, 0.5, 0.15};

  /** The restricted log-likelihood written out afresh. */
  private static double likelihood(double[] y, double[] v, double tau2) {
    double weights = 0;
    double total = 0;
    for (int i = 0; i < y.length; i++) {
      weights += 1 / (v[i] + tau2);
      total += y[i] / (v[i] + tau2);
    }
    double mean = total / weights;
    double sum = Math.log(weights);
    for (int i = 0; i < y.length; i++) {
      sum += Math.log(v[i] + tau2) + Math.pow(y[i] - mean, 2) / (v[i] + tau2);
    }
    return -sum / 2;
  }

  @Test
  void remlIsTheBestOfAFineSearch() {
    double best = RiderPooling.reml(Y, V).tauSquared();
    for (double tau2 = 0; tau2 < 20; tau2 += 0.001) {
      assertThat(likelihood(Y, V, tau2)).isLessThanOrEqualTo(likelihood(Y, V, best) + 1e-14);
    }
    assertThat(best).isGreaterThan(0.5);
  }

  @Test
  void equalVariancesHaveAClosedForm() {
    double[] equal = new double[Y.length];
    Arrays.fill(equal, 0.25);
    double s2 = Math.pow(Spread.of(Y).sd(), 2);
    RiderPooling.Reml reml = RiderPooling.reml(Y, equal);
    assertThat(reml.tauSquared()).isCloseTo(s2 - 0.25, within(1e-12));
    assertThat(RiderPooling.derSimonianLaird(Y, equal).tauSquared())
        .isCloseTo(s2 - 0.25, within(1e-13));
    assertThat(reml.se()).isCloseTo(Math.sqrt(s2 / 5), within(1e-12));
    // Then Hartung-Knapp is the plain t interval.
    Interval plain = RiderPooling.mean(Y).interval95();
    assertThat(reml.hartungKnapp95().low()).isCloseTo(plain.low(), within(1e-12));
    assertThat(reml.hartungKnapp95().high()).isCloseTo(plain.high(), within(1e-12));
  }

  @Test
  void ridersWhoAgreeBetterThanTheirErrorsGiveNoVarianceBetweenAndAWidenedInterval() {
    double[] close = {1.0, 1.1, 0.9};
    double[] wide = {1, 2, 3};
    RiderPooling.Reml reml = RiderPooling.reml(close, wide);
    assertThat(reml.tauSquared()).isZero();
    assertThat(RiderPooling.derSimonianLaird(close, wide).tauSquared()).isZero();
    assertThat(reml.se()).isCloseTo(1 / Math.sqrt(1 + 1 / 2.0 + 1 / 3.0), within(1e-14));
    double half = TDistribution.of(2).inverseSurvivalProbability(0.025) * reml.se();
    assertThat(reml.modifiedHartungKnapp95().high())
        .isCloseTo(reml.estimate() + half, within(1e-8));
    assertThat(reml.hartungKnapp95().high()).isLessThan(reml.modifiedHartungKnapp95().high());
  }

  @Test
  void theMeanHasTheIntervalOfStudentsT() {
    RiderPooling.Mean mean = RiderPooling.mean(Y);
    double t = (mean.interval95().high() - mean.estimate()) / (Spread.of(Y).sd() / Math.sqrt(5));
    assertThat(mean.df()).isEqualTo(4);
    assertThat(TDistribution.of(4).survivalProbability(t)).isCloseTo(0.025, within(1e-15));
  }

  @Test
  void shiftAndScaleCarryThrough() {
    RiderPooling.Reml there = RiderPooling.reml(Y, V);
    RiderPooling.Reml moved =
        RiderPooling.reml(
            Arrays.stream(Y).map(y -> 3 * y + 100).toArray(),
            Arrays.stream(V).map(v -> 9 * v).toArray());
    assertThat(moved.estimate()).isCloseTo(3 * there.estimate() + 100, within(1e-11));
    assertThat(moved.tauSquared()).isCloseTo(9 * there.tauSquared(), within(1e-11));
  }

  @Test
  void impossibleVariancesAreRefusedByPlace() {
    assertThatThrownBy(() -> RiderPooling.reml(new double[] {1, 2}, new double[] {1, -2}))
        .hasMessage("variances[1]: must be above 0, but is -2.0.");
    assertThatThrownBy(
            () -> RiderPooling.derSimonianLaird(new double[] {1, 2}, new double[] {1, 0}))
        .hasMessageStartingWith("variances[1]:");
    assertThatThrownBy(() -> RiderPooling.reml(new double[] {1, 2}, new double[] {1}))
        .hasMessage("variances: has 1 values, but there are 2 estimates.");
    assertThatThrownBy(() -> RiderPooling.mean(new double[] {1}))
        .hasMessageStartingWith("estimates: has 1 values");
  }
}
