package blindlap.stats.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class PrefixRuleTest {
  private static final Assignments TWENTY_FOUR = Assignments.rule(2, 24).block(4).build();
  private static final Assignments TWELVE = Assignments.rule(2, 12).block(4).build();

  private static double[] values(int[] order, double difference, long seed) {
    Random random = new Random(seed);
    double[] y = new double[order.length];
    Arrays.setAll(y, i -> random.nextGaussian() + difference * order[i] + 0.05 * i);
    return y;
  }

  private static PrefixRule rule(Assignments set, int[] order, double[] y, Integer... upTo) {
    List<PrefixRule.Look> looks = new ArrayList<>();
    for (int stint : upTo) {
      looks.add(new PrefixRule.Look(stint, y));
    }
    boolean ended = upTo[upTo.length - 1] == set.stints();
    return PrefixRule.of(set, order, looks, ended, Drift.LINE, Sampling.PREFERRED);
  }

  private static int[] any(Assignments set, long seed) {
    return set.order(
        java.math.BigInteger.valueOf(Math.floorMod(seed * 7919, set.count().intValue())));
  }

  @Test
  void withoutALookBeforeTheEndTheLevelIsTheOrdinaryP() {
    for (long seed = 0; seed < 40; seed++) {
      int[] order = any(TWELVE, seed);
      double[] y = values(order, seed % 3, seed);
      boolean[] all = new boolean[12];
      Arrays.fill(all, true);
      TwoSetups ordinary = TwoSetups.compare(TWELVE, order, y, all, Drift.LINE, Sampling.PREFERRED);
      assertThat(rule(TWELVE, order, y, 12).p())
          .isCloseTo(ordinary.curve().p(0), within(1e-3 / TWELVE.count().doubleValue()));
    }
  }

  @Test
  void theMarksOfADayAreThoseOfTheDefinitionOrderByOrder() {
    for (long seed = 0; seed < 12; seed++) {
      int[] order = any(TWELVE, seed);
      double[] y = values(order, 1.5, 100 + seed);
      for (double level : new double[] {0.02, 0.05, 0.2, 0.5}) {
        assertThat(rule(TWELVE, order, y, 8, 12).crossedAt(level))
            .isEqualTo(byDefinition(TWELVE, order, y, level, 8, 12));
      }
    }
  }

  /** Every order for itself, by least squares anew at every look. */
  private static int byDefinition(
      Assignments set, int[] own, double[] y, double level, int... upTo) {
    List<int[]> orders = new ArrayList<>();
    set.forEach(order -> orders.add(order.clone()));
    boolean[] marked = new boolean[orders.size()];
    int already = 0;
    for (int look = 0; look < upTo.length; look++) {
      double share = (double) upTo[look] / set.stints();
      double spent = Spending.OBRIEN_FLEMING.spent(level, new double[] {share})[0];
      int room = (int) Math.floor(spent * orders.size() + 1e-9) - already;
      double[] t = new double[orders.size()];
      for (int i = 0; i < t.length; i++) {
        t[i] = absT(orders.get(i), y, upTo[look]);
      }
      while (true) {
        double top = -1;
        for (int i = 0; i < t.length; i++) {
          top = marked[i] ? top : Math.max(top, t[i]);
        }
        List<Integer> equal = new ArrayList<>();
        for (int i = 0; i < t.length; i++) {
          if (!marked[i] && t[i] > top * (1 - 1e-9) - 1e-12) {
            equal.add(i);
          }
        }
        if (equal.isEmpty() || equal.size() > room) {
          break;
        }
        equal.forEach(i -> marked[i] = true);
        room -= equal.size();
        already += equal.size();
      }
      for (int i = 0; i < t.length; i++) {
        if (Arrays.equals(orders.get(i), own) && marked[i]) {
          return look + 1;
        }
      }
    }
    return 0;
  }

  /** |t| of the setup beside a constant and a line over the first stints, by solving 3 × 3. */
  private static double absT(int[] order, double[] y, int n) {
    double[][] x = new double[n][];
    for (int i = 0; i < n; i++) {
      x[i] = new double[] {1, i, order[i] - 0.5};
    }
    org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression fit =
        new org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression();
    fit.setNoIntercept(true);
    fit.newSampleData(Arrays.copyOf(y, n), x);
    return Math.abs(
        fit.estimateRegressionParameters()[2]
            / fit.estimateRegressionParametersStandardErrors()[2]);
  }

  @Test
  void theLevelIsTheSmallestAtWhichTheRiddenOrderIsMarked() {
    for (long seed = 0; seed < 30; seed++) {
      int[] order = any(TWENTY_FOUR, seed);
      double[] y = values(order, 0.9, seed);
      PrefixRule rule = rule(TWENTY_FOUR, order, y, 16, 24);
      double p = rule.p();
      if (p < 0.25) {
        assertThat(rule.crossedAt(p + 1e-9)).isPositive();
        assertThat(rule.crossedAt(0.9 * p)).isZero();
      }
      assertThat(p <= 0.05).isEqualTo(rule.crossedAt(0.05) > 0);
    }
  }

  @Test
  void whatALaterLookFindsDoesNotUndoAnEarlierOne() {
    int[] order = Orders.parse("ABBABAABABBAABABBAABABBA");
    double[] y = values(order, 4, 3);
    for (int i = 16; i < 24; i++) {
      y[i] = -3 * order[i];
    }
    assertThat(rule(TWENTY_FOUR, order, y, 16).crossedAt(0.05)).isEqualTo(1);
    PrefixRule whole = rule(TWENTY_FOUR, order, y, 16, 24);
    assertThat(whole.crossedAt(0.05)).isEqualTo(1);
    assertThat(whole.p()).isLessThanOrEqualTo(0.05);
    assertThat(whole.left(0.05, 2)).isBetween(0.03, 0.05);
  }

  @Test
  void aStintWithoutAValueIsLeftOutOfTheLook() {
    int[] order = Orders.parse("ABBABAABABBAABABBAABABBA");
    double[] y = values(order, 3, 5);
    y[3] = Double.NaN;
    double with = rule(TWENTY_FOUR, order, y, 16, 24).p();
    y[3] = 1e6;
    assertThat(rule(TWENTY_FOUR, order, y, 16, 24).p()).isGreaterThan(with);
    double[] none = new double[24];
    Arrays.fill(none, Double.NaN);
    assertThat(rule(TWENTY_FOUR, order, none, 16, 24).p()).isEqualTo(1);
  }

  @Test
  void aLookAfterTwelveOfTwentyFourCanNeverStopADayInBlocksOfFour() {
    assertThat(new PlannedLooks(TWENTY_FOUR, List.of(12, 16, 20), Drift.LINE).never())
        .containsExactly(12);
    int[] order = any(TWENTY_FOUR, 1);
    double[] y = values(order, 100, 1);
    assertThat(rule(TWENTY_FOUR, order, y, 12).crossedAt(0.05)).isZero();
    assertThat(rule(TWENTY_FOUR, order, y, 12, 16).crossedAt(0.05)).isEqualTo(2);
  }

  @Test
  void theFiguresOfALookAfterSixteenOfTwentyFourAreThoseOfTheMethod() {
    PlannedLooks looks = new PlannedLooks(TWENTY_FOUR, List.of(16), Drift.LINE);
    PlannedLooks.Simulated found = looks.simulate(4000, 1.5, 1, () -> false);
    double error = found.error(0.93);
    assertThat(found.shown()).isBetween(0.92 - 3 * error, 0.94 + 3 * error);
    assertThat(found.without()).isBetween(0.93 - 3 * error, 0.94 + 3 * error);
    assertThat(found.meanStints())
        .isCloseTo(19.7, within(3 * 8 * found.error(found.stopped()) + 0.1));
    PlannedLooks.Simulated nothing = looks.simulate(4000, 0, 2, () -> false);
    assertThat(nothing.shown()).isBetween(0.05 - 0.011, 0.055 + 0.011);
  }

  /** By counting, not by a clock: who waits beside the helper learns nothing of what was found. */
  @Test
  void theSameWorkIsDoneWhateverIsFound() {
    java.util.Set<Long> work = new java.util.TreeSet<>();
    java.util.Set<Integer> outcomes = new java.util.TreeSet<>();
    for (long seed = 0; seed < 24; seed++) {
      int[] order = any(TWENTY_FOUR, seed);
      double[] y = values(order, seed % 2 == 0 ? 0 : 4, seed);
      if (seed % 3 == 0) {
        Arrays.setAll(y, i -> Math.rint(y[i])); // ties
      }
      PrefixRule rule = rule(TWENTY_FOUR, order, y, 12, 16, 20);
      outcomes.add(rule.crossedAt(0.05));
      rule.left(0.05, 2);
      work.add(rule.work());
    }
    assertThat(outcomes).contains(0, 2).hasSizeGreaterThan(1);
    assertThat(work).hasSize(1).allMatch(each -> each > TWENTY_FOUR.count().longValue());
  }

  @Test
  void looksThatDoNotRiseOrLieOutsideTheDayAreRefused() {
    int[] order = any(TWENTY_FOUR, 1);
    double[] y = values(order, 1, 1);
    assertThatThrownBy(() -> rule(TWENTY_FOUR, order, y, 16, 12))
        .isInstanceOf(StatsException.class);
    assertThatThrownBy(() -> new PlannedLooks(TWENTY_FOUR, List.of(24), Drift.LINE))
        .isInstanceOf(StatsException.class);
  }
}
