package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class CountRatioTest {
  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(13L);

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  /** The definition itself: the two-sided test on y·θ^(−z), nothing but a constant removed. */
  private static boolean kept(
      Assignments set, String order, double[] y, boolean[] use, double theta) {
    double[] scaled = y.clone();
    for (int i = 0; i < y.length; i++) {
      scaled[i] /= order.charAt(i) == 'B' ? theta : 1;
    }
    TwoSetups test =
        TwoSetups.compare(set, Orders.parse(order), scaled, use, Drift.NONE, Sampling.PREFERRED);
    long limit = (long) Math.floor(0.025 * set.count().doubleValue() + 1e-9);
    ConfidenceCurve curve = test.curve();
    return Math.min(curve.countPlus(0), curve.countMinus(0)) > limit;
  }

  private void agrees(Assignments set, String order, double[] y, boolean[] use) {
    CountRatio found = CountRatio.of(set, Orders.parse(order), y, use, Sampling.PREFERRED);
    double low = found.interval95().low();
    double high = found.interval95().high();
    if (Double.isNaN(low)) {
      assertThat(kept(set, order, y, use, 1e-5)).isTrue();
    } else {
      assertThat(kept(set, order, y, use, low * (1 + 1e-7))).isTrue();
      assertThat(kept(set, order, y, use, low * (1 - 1e-7))).isFalse();
    }
    if (Double.isNaN(high)) {
      assertThat(kept(set, order, y, use, 1e5)).isTrue();
    } else {
      assertThat(kept(set, order, y, use, high * (1 - 1e-7))).isTrue();
      assertThat(kept(set, order, y, use, high * (1 + 1e-7))).isFalse();
    }
    for (double theta = Double.isNaN(low) ? found.ratio() / 20 : low * 1.0001;
        theta < (Double.isNaN(high) ? found.ratio() * 20 : high * 0.9999);
        theta *= 1.1) {
      assertThat(kept(set, order, y, use, theta)).isTrue();
    }
  }

  @Test
  void theEndsAreWhereTheTestOnScaledCountsTurns() {
    for (SmallSets.Plain rule :
        List.of(SmallSets.BLOCK4_12, SmallSets.COMPLETE_8, SmallSets.SHORT_8)) {
      Assignments set = rule.assignments();
      for (int trial = 0; trial < 12; trial++) {
        String order = set.list().get(random.nextInt(set.list().size()));
        double[] y = counts(rule.stints(), order);
        agrees(set, order, y, all(rule.stints()));
      }
    }
  }

  @Test
  void theSameHoldsWhereVoidsLeaveTheSetupsUnequal() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    for (int trial = 0; trial < 12; trial++) {
      String order = set.list().get(random.nextInt(set.list().size()));
      boolean[] use = all(12);
      use[random.nextInt(12)] = false;
      use[random.nextInt(12)] = false;
      agrees(set, order, counts(12, order), use);
    }
  }

  private double[] counts(int n, String order) {
    double[] y = random.ints(n, 1, 8).asDoubleStream().toArray();
    for (int i = 0; i < n; i++) {
      y[i] *= order.charAt(i) == 'B' ? 2 : 1;
    }
    return y;
  }

  @Test
  void swappingTheSetupsInvertsTheRatio() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    String order = "ABBABABAABAB";
    double[] y = counts(12, order);
    CountRatio one = CountRatio.of(set, Orders.parse(order), y, all(12), Sampling.PREFERRED);
    CountRatio other =
        CountRatio.of(set, Orders.parse(SmallSets.swapped(order)), y, all(12), Sampling.PREFERRED);
    assertThat(other.ratio()).isCloseTo(1 / one.ratio(), within(1e-12));
    assertThat(other.interval95().low()).isCloseTo(1 / one.interval95().high(), within(1e-9));
  }

  @Test
  void aSetupWithoutAnyCountLeavesItsEndOpen() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    String order = "ABBABABAABAB";
    double[] y = new double[12];
    for (int i = 0; i < 12; i++) {
      y[i] = order.charAt(i) == 'A' ? 3 : 0;
    }
    CountRatio none = CountRatio.of(set, Orders.parse(order), y, all(12), Sampling.PREFERRED);
    assertThat(none.ratio()).isZero();
    assertThat(none.interval95().low()).isNaN();
    CountRatio nothing =
        CountRatio.of(set, Orders.parse(order), new double[12], all(12), Sampling.PREFERRED);
    assertThat(nothing.ratio()).isNaN();
    assertThat(nothing.interval95()).isEqualTo(Interval.UNDEFINED);
  }

  @Test
  void negativeCountsAndEmptySetupsAreRefused() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    int[] order = Orders.parse("ABBABABAABAB");
    double[] y = new double[12];
    y[4] = -1;
    refused("values[4]", () -> CountRatio.of(set, order, y, all(12), Sampling.PREFERRED));
    boolean[] onlyA = new boolean[12];
    onlyA[0] = true;
    onlyA[3] = true;
    refused("values", () -> CountRatio.of(set, order, new double[12], onlyA, Sampling.PREFERRED));
  }
}
