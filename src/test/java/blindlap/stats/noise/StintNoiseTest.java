package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.SmallSets;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class StintNoiseTest {
  private static boolean[] all(int n) {
    boolean[] valid = new boolean[n];
    java.util.Arrays.fill(valid, true);
    return valid;
  }

  @Test
  void aSessionOfTwoSetupsHasTheNoiseOfItsComparison() {
    Random random = new Random(3);
    double[] values = random.doubles(12, 90, 110).toArray();
    int[] order = Orders.parse("ABBABAABBBAA");
    for (Drift drift : Drift.values()) {
      TwoSetups compared =
          TwoSetups.compare(
              SmallSets.BLOCK4_12.assignments(), order, values, all(12), drift, Sampling.PREFERRED);
      RiderNoise noise = StintNoise.of(order, values, all(12), drift).noise().orElseThrow();
      assertThat(noise.sd()).isCloseTo(compared.noiseSd(), within(1e-10));
      assertThat(noise.df()).isEqualTo(compared.df());
    }
  }

  @Test
  void aNoiseRunIsAStraightLineThroughOneSetup() {
    double[] values = {101, 100.2, 99.9, Double.NaN, 99.1, 98.7, 98.9, 97.6};
    SimpleRegression line = new SimpleRegression();
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        line.addData(i, values[i]);
      }
    }
    StintNoise found = StintNoise.of(new int[8], values, all(8), Drift.LINE);
    RiderNoise noise = found.noise().orElseThrow();
    assertThat(noise.df()).isEqualTo(5);
    assertThat(noise.sd()).isCloseTo(Math.sqrt(line.getMeanSquareError()), within(1e-10));
    assertThat(found.change()).isCloseTo(7 * line.getSlope(), within(1e-10));
    assertThat(found.used()).isEqualTo(7);
  }

  @Test
  void threeSetupsWithoutDriftGiveTheSdWithinGroups() {
    int[] order = Orders.parse("ABCCBAACB");
    double[] values = {1, 4, 9, 8.5, 4.4, 1.3, 0.8, 9.4, 3.7};
    Repeatability groups =
        Repeatability.ofGroups(new double[][] {{1, 1.3, 0.8}, {4, 4.4, 3.7}, {9, 8.5, 9.4}});
    RiderNoise noise = StintNoise.of(order, values, all(9), Drift.NONE).noise().orElseThrow();
    assertThat(noise.sd()).isCloseTo(groups.sd(), within(1e-12));
    assertThat(noise.df()).isEqualTo(6);
  }

  @Test
  void tooFewStintsHaveNoNoiseRatherThanZero() {
    StintNoise found = StintNoise.of(new int[2], new double[] {1, 2}, all(2), Drift.LINE);
    assertThat(found.noise()).isEmpty();
    assertThatThrownBy(() -> StintNoise.of(new int[3], new double[2], all(2), Drift.LINE))
        .isInstanceOf(StatsException.class);
  }
}
