package blindlap.stats.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.SmallSets;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StratifiedSessionsTest {
  private static final SmallSets.Plain PAIRS_6 = SmallSets.Plain.blocks(2, 6, 2);

  private static PooledSession session(
      SmallSets.Plain rule, String order, double[] values, Drift drift) {
    boolean[] valid = new boolean[values.length];
    java.util.Arrays.fill(valid, true);
    return new PooledSession(rule.assignments(), Orders.parse(order), values, valid, drift);
  }

  private static List<PooledSession> days(long seed) {
    Random random = new Random(seed);
    List<PooledSession> days = new ArrayList<>();
    days.add(session(PAIRS_6, "ABBAAB", noise(random, 6, 0.5), Drift.LINE));
    days.add(session(SmallSets.SHORT_8, "ABBABAAB", noise(random, 8, 2), Drift.LINE));
    days.add(session(PAIRS_6, "BABAAB", noise(random, 6, 1), Drift.NONE));
    return days;
  }

  private static double[] noise(Random random, int n, double sd) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = 100 + sd * random.nextGaussian() + 0.2 * i;
    }
    return values;
  }

  /**
   * Sums of docs/method.md#these-days for one order of one day, written out with the whole matrix.
   */
  private static double[] sums(PooledSession day, int[] z, double shift) {
    boolean[] use = day.used();
    double[][] w = new Residuals(use, day.nuisance()).matrix();
    double[] y = DayCheck.centred(day.values(), use);
    int[] observed = day.order();
    double zwy = 0;
    double zwz = 0;
    double ywy = 0;
    for (int i = 0; i < y.length; i++) {
      for (int j = 0; j < y.length; j++) {
        double shifted = y[j] - shift * (observed[j] - 0.5);
        zwy += (z[i] - 0.5) * w[i][j] * shifted;
        zwz += (z[i] - 0.5) * w[i][j] * (z[j] - 0.5);
        ywy += y[i] * w[i][j] * y[j];
      }
    }
    double s2 = ywy / (DayCheck.count(use) - day.nuisance().columns());
    return new double[] {zwy / s2, zwz / s2};
  }

  private static long[] bruteForce(List<PooledSession> days, double shift) {
    List<double[]> products = new ArrayList<>(List.of(new double[2]));
    double[] own = new double[2];
    for (PooledSession day : days) {
      List<double[]> more = new ArrayList<>();
      day.set()
          .forEach(
              order -> {
                double[] each = sums(day, order.clone(), shift);
                products.forEach(p -> more.add(new double[] {p[0] + each[0], p[1] + each[1]}));
              });
      products.clear();
      products.addAll(more);
      double[] observed = sums(day, day.order(), shift);
      own[0] += observed[0];
      own[1] += observed[1];
    }
    double t = own[0] / Math.sqrt(own[1]);
    long plus = 0;
    long minus = 0;
    for (double[] p : products) {
      double each = p[0] / Math.sqrt(p[1]);
      plus += each >= t - 1e-9 ? 1 : 0;
      minus += each <= t + 1e-9 ? 1 : 0;
    }
    return new long[] {plus, minus, products.size()};
  }

  @Test
  void countsAreThoseOfEveryCombinationOfOrders() {
    for (long seed = 1; seed <= 4; seed++) {
      List<PooledSession> days = days(seed);
      StratifiedSessions found = StratifiedSessions.compare(days, Sampling.PREFERRED);
      assertThat(found.count().intValueExact()).isEqualTo(8 * 50 * 8);
      assertThat(found.curve().total()).isEqualTo(8 * 50 * 8);
      for (double shift : new double[] {-3, -1, -0.3, 0, 0.17, 0.9, 2.5}) {
        long[] brute = bruteForce(days, shift);
        assertThat(brute[2]).isEqualTo(3200);
        assertThat(found.curve().countPlus(shift)).isEqualTo(brute[0]);
        assertThat(found.curve().countMinus(shift)).isEqualTo(brute[1]);
      }
    }
  }

  private static PooledSession with(PooledSession day, double[]... covariates) {
    return new PooledSession(
        day.set(),
        day.order(),
        day.values(),
        day.valid(),
        Nuisance.of(day.nuisance().drift(), List.of(covariates)));
  }

  @Test
  void countsWithCovariatesAreThoseOfEveryCombinationOfOrdersAndRegressions() {
    for (long seed = 1; seed <= 3; seed++) {
      Random random = new Random(100 + seed);
      List<PooledSession> days = days(seed);
      double[] wind = noise(random, 8, 3);
      double[] legs = noise(random, 8, 1);
      legs[5] = Double.NaN; // a stint without it does not count
      days.set(0, with(days.get(0), noise(random, 6, 1)));
      days.set(1, with(days.get(1), wind, legs));
      StratifiedSessions found = StratifiedSessions.compare(days, Sampling.PREFERRED);
      assertThat(found.curve().total()).isEqualTo(8 * 50 * 8);
      for (double shift : new double[] {-3, -0.3, 0, 0.17, 2.5}) {
        long[] brute = bruteForce(days, shift);
        assertThat(found.curve().countPlus(shift)).isEqualTo(brute[0]);
        assertThat(found.curve().countMinus(shift)).isEqualTo(brute[1]);
      }
    }
  }

  @Test
  void aCovariateThatIsShiftedOrScaledLeavesASeriesAsItIs() {
    List<PooledSession> days = days(2);
    double[] wind = noise(new Random(7), 8, 3);
    double[] other = wind.clone();
    java.util.Arrays.setAll(other, i -> 1000 - 40 * wind[i]);
    days.set(1, with(days.get(1), wind));
    StratifiedSessions found = StratifiedSessions.compare(days, Sampling.PREFERRED);
    days.set(1, with(days.get(1), other));
    StratifiedSessions again = StratifiedSessions.compare(days, Sampling.PREFERRED);
    assertThat(again.estimate()).isCloseTo(found.estimate(), within(1e-9));
    for (double shift : new double[] {-1, 0, 0.4}) {
      assertThat(again.curve().countPlus(shift)).isEqualTo(found.curve().countPlus(shift));
    }
  }

  @Test
  void fourDaysOfEightStintsAreWalkedWholeAndCountedRight() {
    List<PooledSession> days = new ArrayList<>();
    Random random = new Random(20_261_127);
    for (String order : new String[] {"ABBABAAB", "BAABABBA", "ABBABAAB", "BAABABBA"}) {
      days.add(session(SmallSets.SHORT_8, order, noise(random, 8, 1), Drift.LINE));
    }
    StratifiedSessions found = StratifiedSessions.compare(days, Sampling.OF_SERIES);
    assertThat(found.sampled()).isFalse();
    assertThat(found.count().intValueExact()).isEqualTo(50 * 50 * 50 * 50);
    for (double shift : new double[] {0, 0.4}) {
      long[] counted = everyCombination(days, shift);
      assertThat(found.curve().countPlus(shift)).isEqualTo(counted[0]);
      assertThat(found.curve().countMinus(shift)).isEqualTo(counted[1]);
    }
    // What was sampled before is now the same for whoever asks again.
    double p = found.curve().p(0);
    assertThat(StratifiedSessions.compare(days, Sampling.PREFERRED).curve().p(0))
        .isNotEqualTo(p)
        .isCloseTo(p, within(5 * Math.sqrt(p * (1 - p) / 9_999)));
  }

  /** Four days of 50 orders each: the sums of every order once, then every combination of them. */
  private static long[] everyCombination(List<PooledSession> days, double shift) {
    List<List<double[]>> sums = new ArrayList<>();
    double[] own = new double[2];
    for (PooledSession day : days) {
      List<double[]> each = new ArrayList<>();
      day.set().forEach(order -> each.add(sums(day, order.clone(), shift)));
      sums.add(each);
      double[] observed = sums(day, day.order(), shift);
      own[0] += observed[0];
      own[1] += observed[1];
    }
    double t = own[0] / Math.sqrt(own[1]);
    long[] counted = new long[2];
    for (double[] one : sums.get(0)) {
      for (double[] two : sums.get(1)) {
        for (double[] three : sums.get(2)) {
          for (double[] four : sums.get(3)) {
            double each =
                (one[0] + two[0] + three[0] + four[0])
                    / Math.sqrt(one[1] + two[1] + three[1] + four[1]);
            counted[0] += each >= t - 1e-9 ? 1 : 0;
            counted[1] += each <= t + 1e-9 ? 1 : 0;
          }
        }
      }
    }
    return counted;
  }

  @Test
  void oneSessionGivesTheCurveOfThatSession() {
    PooledSession day =
        session(SmallSets.BLOCK4_12, "ABBABAABBBAA", noise(new Random(7), 12, 1), Drift.LINE);
    TwoSetups alone =
        TwoSetups.compare(
            day.set(), day.order(), day.values(), day.valid(), day.nuisance(), Sampling.PREFERRED);
    StratifiedSessions found = StratifiedSessions.compare(List.of(day), Sampling.PREFERRED);
    assertThat(found.estimate()).isCloseTo(alone.estimate(), within(1e-12));
    double[] expected = alone.curve().knots();
    double[] knots = found.curve().knots();
    assertThat(knots).hasSameSizeAs(expected);
    for (int i = 0; i < knots.length; i++) {
      assertThat(knots[i]).isCloseTo(expected[i], within(1e-9));
    }
  }

  @Test
  void theEstimateWeighsDaysByInformationOverNoise() {
    List<PooledSession> days = days(11);
    StratifiedSessions found = StratifiedSessions.compare(days, Sampling.PREFERRED);
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < days.size(); i++) {
      PooledSession d = days.get(i);
      TwoSetups alone =
          TwoSetups.compare(
              d.set(), d.order(), d.values(), d.valid(), d.nuisance(), Sampling.PREFERRED);
      double weight = sums(d, d.order(), 0)[1];
      sum += weight * alone.estimate();
      weights += weight;
      assertThat(found.weights().get(i)).isBetween(0.0, 1.0);
    }
    assertThat(found.estimate()).isCloseTo(sum / weights, within(1e-12));
    assertThat(found.weights().stream().mapToDouble(Double::doubleValue).sum())
        .isCloseTo(1, within(1e-12));
    // The noisy second day counts least although it is longest.
    assertThat(found.weights().get(1)).isLessThan(found.weights().get(0));
  }

  @Test
  void beyondTheLimitASampleAgreesWithTheWhole() {
    List<PooledSession> days = days(3);
    StratifiedSessions whole = StratifiedSessions.compare(days, Sampling.PREFERRED);
    StratifiedSessions sample =
        StratifiedSessions.compare(days, new Sampling(false, 19_999, 5, 1_000));
    assertThat(whole.sampled()).isFalse();
    assertThat(sample.sampled()).isTrue();
    assertThat(sample.curve().total()).isEqualTo(40_000);
    assertThat(sample.estimate()).isEqualTo(whole.estimate());
    for (double shift : new double[] {-1, 0, 0.5, 1.5}) {
      double p = whole.curve().p(shift);
      assertThat(sample.curve().p(shift)).isCloseTo(p, within(4 * sample.pError(p) + 1e-3));
    }
    assertThatThrownBy(() -> StratifiedSessions.compare(days, new Sampling(true, 999, 5, 1_000)))
        .hasMessageContaining("3200 orders");
  }

  @Test
  void refusalsNameTheSession() {
    List<PooledSession> days = new ArrayList<>(days(1));
    days.add(session(PAIRS_6, "ABABAB", new double[] {5, 5, 5, 5, 5, 5}, Drift.LINE));
    assertThatThrownBy(() -> StratifiedSessions.compare(days, Sampling.PREFERRED))
        .isInstanceOf(StatsException.class)
        .hasMessageContaining("sessions[3].values")
        .hasMessageContaining("do not vary");
    assertThatThrownBy(() -> StratifiedSessions.compare(List.of(), Sampling.PREFERRED))
        .hasMessageContaining("sessions");
  }

  @Test
  void aTrueNullIsRejectedNoMoreOftenThanTheLevelWhateverTheDaysNoises() {
    Random random = new Random(20_261_125);
    int rejected = 0;
    int runs = 400;
    String[] pairs = PAIRS_6.assignments().list().toArray(String[]::new);
    String[] shorts = SmallSets.SHORT_8.assignments().list().toArray(String[]::new);
    for (int run = 0; run < runs; run++) {
      List<PooledSession> days =
          List.of(
              session(PAIRS_6, any(random, pairs), noise(random, 6, 0.3), Drift.LINE),
              session(SmallSets.SHORT_8, any(random, shorts), noise(random, 8, 2), Drift.LINE));
      ConfidenceCurve curve = StratifiedSessions.compare(days, Sampling.PREFERRED).curve();
      rejected += curve.exceeds(0, 0.025) || curve.fallsShortOf(0, 0.025) ? 1 : 0;
    }
    // Four standard errors of 400 runs at .05.
    assertThat(rejected / (double) runs).isBetween(0.006, 0.094);
  }

  private static String any(Random random, String[] orders) {
    return orders[random.nextInt(orders.length)];
  }
}
