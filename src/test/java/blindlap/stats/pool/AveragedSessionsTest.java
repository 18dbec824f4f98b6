package blindlap.stats.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class AveragedSessionsTest {
  @Test
  void oneSessionKeepsItsErrorAndItsDegreesOfFreedom() {
    AveragedSessions one =
        AveragedSessions.of(new double[] {-1.2}, new double[] {0.3}, new int[] {13});
    assertThat(one.standardError()).isCloseTo(0.3, within(1e-15));
    assertThat(one.df()).isCloseTo(13, within(1e-12));
    double t = (one.interval(0.95).high() + 1.2) / 0.3;
    assertThat(TDistribution.of(13).survivalProbability(t)).isCloseTo(0.025, within(1e-12));
  }

  @Test
  void equalSessionsAddTheirDegreesOfFreedomAndAnUnequalOneCountsForLess() {
    AveragedSessions equal =
        AveragedSessions.of(new double[] {1, 3}, new double[] {0.4, 0.4}, new int[] {9, 9});
    assertThat(equal.estimate()).isEqualTo(2);
    assertThat(equal.df()).isCloseTo(18, within(1e-12));
    assertThat(equal.standardError()).isCloseTo(0.4 / Math.sqrt(2), within(1e-15));
    // By hand: (1 + 16)^2 / (1/9 + 256/9) = 289 / (257/9).
    AveragedSessions unequal =
        AveragedSessions.of(new double[] {1, 3}, new double[] {1, 4}, new int[] {9, 9});
    assertThat(unequal.df()).isCloseTo(289 * 9 / 257.0, within(1e-12));
  }

  @Test
  void theIntervalHoldsTheTrueMeanAsOftenAsItSays() {
    SplittableRandom random = new SplittableRandom(4);
    double[] sds = {0.5, 1.5};
    int held = 0;
    int trials = 4000;
    for (int trial = 0; trial < trials; trial++) {
      double[] estimates = new double[2];
      double[] errors = new double[2];
      for (int s = 0; s < 2; s++) {
        double sum = 0;
        double squares = 0;
        int n = 8;
        for (int i = 0; i < n; i++) {
          double value = sds[s] * random.nextGaussian();
          sum += value;
          squares += value * value;
        }
        estimates[s] = sum / n;
        errors[s] = Math.sqrt((squares - sum * sum / n) / (n - 1) / n);
      }
      Interval interval = AveragedSessions.of(estimates, errors, new int[] {7, 7}).interval(0.95);
      held += interval.low() <= 0 && interval.high() >= 0 ? 1 : 0;
    }
    assertThat(held / (double) trials).isBetween(0.935, 0.965);
  }

  @Test
  void impossibleSessionsAreRefused() {
    assertThatThrownBy(
            () -> AveragedSessions.of(new double[] {1}, new double[] {-1, 2}, new int[] {3}))
        .isInstanceOf(StatsException.class);
    assertThatThrownBy(
            () -> AveragedSessions.of(new double[] {1}, new double[] {0.1}, new int[] {0}))
        .hasMessageStartingWith("standardErrors[0]");
  }
}
