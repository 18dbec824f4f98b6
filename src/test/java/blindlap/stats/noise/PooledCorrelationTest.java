package blindlap.stats.noise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.PartialCorrelation;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PooledCorrelationTest {
  private static PooledCorrelation.Seen seen(double r, int df) {
    return new PooledCorrelation.Seen(r, df);
  }

  /** By hand from tables of artanh: .30 of 13 df and .50 of 25 df (weights 12 and 24). */
  @Test
  void daysAreWeightedByTheirDegreesOfFreedomOnFishersScale() {
    PooledCorrelation pooled =
        PooledCorrelation.of(List.of(seen(0.30, 13), seen(0.50, 25))).orElseThrow();
    double z = (12 * 0.30952 + 24 * 0.54931) / 36;
    assertThat(pooled.r()).isCloseTo(Math.tanh(z), within(1e-5));
    assertThat(pooled.interval95().low()).isCloseTo(Math.tanh(z - 1.959964 / 6), within(1e-5));
    assertThat(pooled.interval95().high()).isCloseTo(Math.tanh(z + 1.959964 / 6), within(1e-5));
    assertThat(pooled.days()).isEqualTo(2);
  }

  @Test
  void daysThatTellNothingAreLeftOut() {
    assertThat(PooledCorrelation.of(List.of(seen(0.9, 1), seen(Double.NaN, 12)))).isEmpty();
    assertThat(PooledCorrelation.of(List.of(seen(0.9, 1), seen(0.2, 12))))
        .isEqualTo(PooledCorrelation.of(List.of(seen(0.2, 12))));
    assertThat(PooledCorrelation.of(List.of(seen(1, 12))).orElseThrow().r())
        .isCloseTo(1, within(1e-8));
  }

  @Test
  void theLeastItMayBeIsNoughtWhereItMayGoEitherWay() {
    assertThat(PooledCorrelation.of(List.of(seen(0.2, 12))).orElseThrow().size().low()).isZero();
    PooledCorrelation down = PooledCorrelation.of(List.of(seen(-0.9, 12))).orElseThrow();
    PooledCorrelation up = PooledCorrelation.of(List.of(seen(0.9, 12))).orElseThrow();
    assertThat(down.size()).isEqualTo(up.size()).isEqualTo(up.interval95());
  }

  /** Two thousand pairs of days of 16 stints: three simulation errors of .95 are .0146. */
  @Test
  void theIntervalCoversTheTruthOnNinetyFiveOfAHundredDays() {
    Random random = new Random(11);
    boolean[] use = new boolean[16];
    Arrays.fill(use, true);
    double[] setups = new double[16];
    Arrays.setAll(setups, i -> "ABBABAABABABBABA".charAt(i) == 'A' ? 0 : 1);
    Nuisance removed = Nuisance.of(Drift.LINE, List.of(setups));
    int covered = 0;
    for (int i = 0; i < 2000; i++) {
      List<PooledCorrelation.Seen> days =
          List.of(seen(day(random, use, removed), 12), seen(day(random, use, removed), 12));
      Interval interval = PooledCorrelation.of(days).orElseThrow().interval95();
      covered += interval.low() <= 0.7 && 0.7 <= interval.high() ? 1 : 0;
    }
    assertThat(covered / 2000.0).isCloseTo(0.95, within(0.0146));
  }

  private static double day(Random random, boolean[] use, Nuisance removed) {
    double[] x = new double[16];
    double[] y = new double[16];
    for (int i = 0; i < 16; i++) {
      x[i] = random.nextGaussian();
      y[i] = 0.7 * x[i] + Math.sqrt(1 - 0.49) * random.nextGaussian() + 0.3 * i;
    }
    return PartialCorrelation.of(use, removed, x, y);
  }
}
