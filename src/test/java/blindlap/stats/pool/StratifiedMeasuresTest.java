package blindlap.stats.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.compare.PValueAdjustment;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StratifiedMeasuresTest {
  private static final SmallSets.Plain PAIRS_6 = SmallSets.Plain.blocks(2, 6, 2);
  private static final String[] RIDDEN = {"ABBAAB", "ABBABAAB", "BABAAB"};

  private static Optional<PooledSession> session(int day, double[] values) {
    boolean[] valid = new boolean[values.length];
    java.util.Arrays.fill(valid, true);
    SmallSets.Plain rule = day == 1 ? SmallSets.SHORT_8 : PAIRS_6;
    return Optional.of(
        new PooledSession(
            rule.assignments(), Orders.parse(RIDDEN[day]), values, valid, Drift.LINE));
  }

  /** Three measures over three days; the second measure truly differs, and the third follows it. */
  private static List<List<Optional<PooledSession>>> measures(long seed) {
    Random random = new Random(seed);
    List<List<Optional<PooledSession>>> measures = new ArrayList<>();
    for (int m = 0; m < 3; m++) {
      measures.add(new ArrayList<>());
    }
    for (int day = 0; day < 3; day++) {
      int[] order = Orders.parse(RIDDEN[day]);
      double[][] values = new double[3][order.length];
      for (int i = 0; i < order.length; i++) {
        values[0][i] = random.nextGaussian();
        values[1][i] = 1.2 * order[i] + (1 + day) * 0.4 * random.nextGaussian();
        values[2][i] = 0.7 * values[1][i] + random.nextGaussian();
      }
      for (int m = 0; m < 3; m++) {
        measures.get(m).add(session(day, values[m]));
      }
    }
    return measures;
  }

  /** a and c of an order by the whole matrix of docs/method.md#these-days. */
  private static double[] sums(PooledSession day, int[] z) {
    double[][] w = new Residuals(day.valid(), day.nuisance()).matrix();
    double[] y = DayCheck.centred(day.values(), day.valid());
    double a = 0;
    double c = 0;
    double squares = 0;
    for (int i = 0; i < y.length; i++) {
      for (int j = 0; j < y.length; j++) {
        a += (z[i] - 0.5) * w[i][j] * y[j];
        c += (z[i] - 0.5) * w[i][j] * (z[j] - 0.5);
        squares += y[i] * w[i][j] * y[j];
      }
    }
    double s2 = squares / (y.length - day.nuisance().columns());
    return new double[] {a / s2, c / s2};
  }

  /** (Σa)²/Σc of every measure for every combination of orders, the observed one first. */
  private static List<double[]> everyCombination(List<List<Optional<PooledSession>>> measures) {
    List<List<int[]>> orders = new ArrayList<>();
    for (int day = 0; day < 3; day++) {
      List<int[]> all = new ArrayList<>();
      all.add(Orders.parse(RIDDEN[day]));
      (day == 1 ? SmallSets.SHORT_8 : PAIRS_6)
          .assignments()
          .forEach(order -> all.add(order.clone()));
      orders.add(all);
    }
    List<double[]> found = new ArrayList<>();
    for (int i = 0; i < orders.get(0).size(); i++) {
      for (int j = 0; j < orders.get(1).size(); j++) {
        for (int k = 0; k < orders.get(2).size(); k++) {
          boolean observed = i == 0 && j == 0 && k == 0;
          if (observed || i > 0 && j > 0 && k > 0) {
            found.add(statistics(measures, orders, new int[] {i, j, k}));
          }
        }
      }
    }
    return found;
  }

  private static double[] statistics(
      List<List<Optional<PooledSession>>> measures, List<List<int[]>> orders, int[] which) {
    double[] t = new double[measures.size()];
    for (int m = 0; m < t.length; m++) {
      double a = 0;
      double c = 0;
      for (int day = 0; day < 3; day++) {
        if (measures.get(m).get(day).isPresent()) {
          double[] each = sums(measures.get(m).get(day).get(), orders.get(day).get(which[day]));
          a += each[0];
          c += each[1];
        }
      }
      t[m] = a * a / c;
    }
    return t;
  }

  private static double share(List<double[]> all, double at, int... measures) {
    long reached =
        all.stream()
            .skip(1)
            .filter(
                t -> {
                  double largest = 0;
                  for (int m : measures) {
                    largest = Math.max(largest, t[m]);
                  }
                  return largest >= at * (1 - 1e-9);
                })
            .count();
    return reached / (double) (all.size() - 1);
  }

  @Test
  void pAndStepDownAreThoseOfEveryCombinationOfOrders() {
    for (long seed = 1; seed <= 4; seed++) {
      List<List<Optional<PooledSession>>> measures = measures(seed);
      StratifiedMeasures found = StratifiedMeasures.compare(measures, Sampling.OF_SERIES);
      List<double[]> all = everyCombination(measures);
      assertThat(all).hasSize(1 + 8 * 50 * 8);
      assertThat(found.count().intValueExact()).isEqualTo(8 * 50 * 8);
      double[] t = all.get(0);
      List<Integer> left = new ArrayList<>(List.of(0, 1, 2));
      double before = 0;
      while (!left.isEmpty()) {
        int top = left.stream().max(java.util.Comparator.comparingDouble(m -> t[m])).orElseThrow();
        int[] among = left.stream().mapToInt(Integer::intValue).toArray();
        before = Math.max(before, share(all, t[top], among));
        assertThat(found.p()[top]).isCloseTo(share(all, t[top], top), within(1e-12));
        assertThat(found.pAdjusted()[top]).as("measure %d", top).isCloseTo(before, within(1e-12));
        left.remove(Integer.valueOf(top));
      }
      assertThat(found.method()).isEqualTo(SeveralMeasures.Method.STEP_DOWN_MAXIMUM);
    }
  }

  @Test
  void oneSessionGivesWhatThatSessionGives() {
    List<List<Optional<PooledSession>>> measures = new ArrayList<>();
    List<SeveralMeasures.Series> alone = new ArrayList<>();
    for (List<Optional<PooledSession>> each : measures(9)) {
      measures.add(List.of(each.get(1)));
      alone.add(new SeveralMeasures.Series("m", each.get(1).orElseThrow().values(), Drift.LINE));
    }
    PooledSession day = measures.get(0).get(0).orElseThrow();
    SeveralMeasures expected =
        SeveralMeasures.compare(day.set(), day.order(), alone, day.valid(), Sampling.PREFERRED);
    StratifiedMeasures found = StratifiedMeasures.compare(measures, Sampling.OF_SERIES);
    assertThat(found.p()).containsExactly(expected.p(), within(1e-12));
    assertThat(found.pAdjusted()).containsExactly(expected.pAdjusted(), within(1e-12));
  }

  @Test
  void theTwoSidedPIsThatOfTheMeasuresOwnCurve() {
    List<List<Optional<PooledSession>>> measures = measures(3);
    double[] p = StratifiedMeasures.compare(measures, Sampling.OF_SERIES).p();
    for (int m = 0; m < 3; m++) {
      List<PooledSession> own = measures.get(m).stream().flatMap(Optional::stream).toList();
      // The curve takes twice the smaller tail; on a set closed under swapping that is the same.
      assertThat(StratifiedSessions.compare(own, Sampling.OF_SERIES).curve().p(0))
          .isCloseTo(p[m], within(1e-12));
    }
  }

  @Test
  void aSessionWithNothingToSayOfAMeasureIsLeftOutOfThatMeasureOnly() {
    List<List<Optional<PooledSession>>> measures = measures(5);
    measures.get(2).set(0, Optional.empty());
    StratifiedMeasures found = StratifiedMeasures.compare(measures, Sampling.OF_SERIES);
    List<double[]> all = everyCombination(measures);
    for (int m = 0; m < 3; m++) {
      assertThat(found.p()[m]).isCloseTo(share(all, all.get(0)[m], m), within(1e-12));
    }
    assertThat(found.method()).isEqualTo(SeveralMeasures.Method.STEP_DOWN_MAXIMUM);
  }

  @Test
  void unequalStintsAreAdjustedAfterHolm() {
    List<List<Optional<PooledSession>>> measures = measures(6);
    double[] values = measures.get(0).get(1).orElseThrow().values();
    values[3] = Double.NaN;
    measures.get(0).set(1, session(1, values));
    StratifiedMeasures found = StratifiedMeasures.compare(measures, Sampling.OF_SERIES);
    assertThat(found.method()).isEqualTo(SeveralMeasures.Method.HOLM);
    assertThat(found.pAdjusted()).containsExactly(PValueAdjustment.HOLM.adjust(found.p()));
  }

  @Test
  void beyondTheLimitASampleAgreesWithTheWhole() {
    List<List<Optional<PooledSession>>> measures = measures(2);
    StratifiedMeasures whole = StratifiedMeasures.compare(measures, Sampling.OF_SERIES);
    StratifiedMeasures sample =
        StratifiedMeasures.compare(measures, new Sampling(false, 39_999, 5, 1_000));
    assertThat(sample.sampled()).isTrue();
    for (int m = 0; m < 3; m++) {
      double p = whole.pAdjusted()[m];
      assertThat(sample.pAdjusted()[m])
          .isCloseTo(p, within(5 * Math.sqrt(p * (1 - p) / 39_999) + 1e-4));
    }
  }

  @Test
  void withoutAMeasureOrASessionThereIsARefusal() {
    assertThatThrownBy(() -> StratifiedMeasures.compare(List.of(), Sampling.OF_SERIES))
        .hasMessageContaining("measures");
    List<List<Optional<PooledSession>>> nothing =
        List.of(measures(1).get(0), List.of(Optional.empty(), Optional.empty(), Optional.empty()));
    assertThatThrownBy(() -> StratifiedMeasures.compare(nothing, Sampling.OF_SERIES))
        .hasMessageContaining("a session");
  }
}
