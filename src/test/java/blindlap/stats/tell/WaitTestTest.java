package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.Regression;
import blindlap.stats.SmallSets;
import blindlap.stats.SmallSets.Plain;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Waits tested over all orders, against brute force by general least squares. */
class WaitTestTest {
  private static final double TIE = 1e-9;

  /** "B" where a real swap came before the stint, "A" where a dummy swap did. */
  private static String kinds(String order) {
    StringBuilder kinds = new StringBuilder("A");
    for (int i = 1; i < order.length(); i++) {
      kinds.append(order.charAt(i) == order.charAt(i - 1) ? 'A' : 'B');
    }
    return kinds.toString();
  }

  private static boolean[] use(double[] waits) {
    boolean[] use = new boolean[waits.length];
    for (int i = 1; i < use.length; i++) {
      use[i] = !Double.isNaN(waits[i]);
    }
    return use;
  }

  private static double kind(String order, double[] waits) {
    Regression fit = new Regression(kinds(order), 2, waits, use(waits), Drift.LINE);
    double explained = Math.sqrt(Math.max(0, fit.nullRss - fit.rss));
    return Math.copySign(explained, fit.effects[1]);
  }

  private static double setup(String order, int setups, double[] waits) {
    Regression fit = new Regression(order, setups, waits, use(waits), Drift.LINE);
    return Math.sqrt(Math.max(0, fit.nullRss - fit.rss));
  }

  private static double p(List<String> orders, String ridden, ToDoubleFunction<String> statistic) {
    double observed = statistic.applyAsDouble(ridden);
    return share(orders, o -> statistic.applyAsDouble(o) >= observed - TIE);
  }

  private static double midP(
      List<String> orders, String ridden, ToDoubleFunction<String> statistic) {
    double observed = statistic.applyAsDouble(ridden);
    return (share(orders, o -> statistic.applyAsDouble(o) > observed + TIE)
            + p(orders, ridden, statistic))
        / 2;
  }

  private static double share(List<String> orders, java.util.function.Predicate<String> is) {
    return (double) orders.stream().filter(is).count() / orders.size();
  }

  private static double[] waits(int n, Random random, int masked) {
    double[] waits = new double[n];
    for (int i = 0; i < n; i++) {
      waits[i] = 420 + random.nextInt(60); // whole seconds, so that orders tie
    }
    waits[0] = Double.NaN;
    for (int i = 0; i < masked; i++) {
      waits[1 + random.nextInt(n - 1)] = Double.NaN;
    }
    return waits;
  }

  private static boolean testable(String order, double[] waits) {
    return WaitTest.untested(Orders.parse(order), waits).isEmpty();
  }

  private static WaitTest test(Plain rule, String order, double[] waits) {
    return WaitTest.of(rule.assignments(), Orders.parse(order), waits, Sampling.PREFERRED);
  }

  @Test
  void bothQuestionsAreAnsweredAsByGoingThroughAllOrders() {
    Random random = new Random(14);
    int tested = 0;
    for (Plain rule : List.of(SmallSets.BLOCK4_12, Plain.blocks(2, 10, 2), SmallSets.THREE_9)) {
      List<String> orders = SmallSets.filtered(rule);
      for (int i = 0; i < 12; i++) {
        String order = orders.get(random.nextInt(orders.size()));
        double[] waits = waits(rule.stints(), random, i % 3);
        if (!testable(order, waits)) {
          continue;
        }
        WaitTest found = test(rule, order, waits);
        assertThat(found.kind().p())
            .isCloseTo(p(orders, order, o -> kind(o, waits)), within(1e-12));
        assertThat(found.kind().midP())
            .isCloseTo(midP(orders, order, o -> kind(o, waits)), within(1e-12));
        WaitTest.BySetup setup = found.setup().orElseThrow();
        assertThat(setup.p())
            .isCloseTo(p(orders, order, o -> setup(o, rule.setups(), waits)), within(1e-12));
        assertThat(setup.midP())
            .isCloseTo(midP(orders, order, o -> setup(o, rule.setups(), waits)), within(1e-12));
        tested++;
      }
    }
    assertThat(tested).isGreaterThan(20);
  }

  @Test
  void theDifferencesAreThoseOfLeastSquaresWithALine() {
    Random random = new Random(15);
    double[] waits = waits(12, random, 2);
    String order = "ABBABAABBBAA";
    WaitTest found = test(SmallSets.BLOCK4_12, order, waits);

    Regression kinds = new Regression(kinds(order), 2, waits, use(waits), Drift.LINE);
    assertThat(found.kind().seconds()).isCloseTo(kinds.effects[1], within(1e-9));
    Regression setups = new Regression(order, 2, waits, use(waits), Drift.LINE);
    WaitTest.BySetup setup = found.setup().orElseThrow();
    double bLessA = setup.slowest() == 1 ? setup.seconds() : -setup.seconds();
    assertThat(bLessA).isCloseTo(setups.effects[1], within(1e-9));
  }

  @Test
  void aLineAnOffsetAndTheUnitChangeNoP() {
    Random random = new Random(16);
    for (int i = 0; i < 40; i++) {
      double[] waits = waits(12, random, i % 4);
      String order = SmallSets.filtered(SmallSets.BLOCK4_12).get(random.nextInt(216));
      if (!testable(order, waits)) {
        continue;
      }
      double[] moved = waits.clone();
      for (int stint = 0; stint < moved.length; stint++) {
        moved[stint] = waits[stint] / 60 - 3 * stint + 1_000;
      }
      WaitTest plain = test(SmallSets.BLOCK4_12, order, waits);
      WaitTest other = test(SmallSets.BLOCK4_12, order, moved);
      assertThat(other.kind().midP()).isEqualTo(plain.kind().midP());
      assertThat(other.kind().p()).isEqualTo(plain.kind().p());
      assertThat(other.setup().orElseThrow().midP()).isEqualTo(plain.setup().orElseThrow().midP());
      assertThat(other.kind().seconds()).isCloseTo(plain.kind().seconds() / 60, within(1e-9));
    }
  }

  @Test
  void renamingTheSetupsChangesNeitherQuestion() {
    double[] waits = waits(12, new Random(17), 1);
    WaitTest one = test(SmallSets.BLOCK4_12, "ABBABAABBBAA", waits);
    WaitTest other = test(SmallSets.BLOCK4_12, "BAABABBAAABB", waits);
    assertThat(other.kind()).isEqualTo(one.kind());
    WaitTest.BySetup before = one.setup().orElseThrow();
    WaitTest.BySetup after = other.setup().orElseThrow();
    assertThat(after.midP()).isEqualTo(before.midP());
    assertThat(after.slowest()).isEqualTo(before.quickest());
  }

  @Test
  void theWaitBeforeTheFirstStintIsNeverUsed() {
    double[] waits = waits(12, new Random(18), 0);
    double[] other = waits.clone();
    other[0] = 5_000;
    assertThat(test(SmallSets.BLOCK4_12, "ABBABAABBBAA", other))
        .isEqualTo(test(SmallSets.BLOCK4_12, "ABBABAABBBAA", waits));
  }

  @Test
  void realSwapsThatOverrunAreFlaggedAndQuickOnesAreNot() {
    String order = "ABBABAABBBAA";
    double[] slow = new double[12];
    double[] quick = new double[12];
    for (int i = 0; i < 12; i++) {
      int real = kinds(order).charAt(i) == 'B' ? 1 : 0;
      slow[i] = 420 + 40 * real + i % 3;
      quick[i] = 420 - 40 * real + i % 3;
    }
    WaitTest overrun = test(SmallSets.BLOCK4_12, order, slow);
    assertThat(overrun.kind().flagged()).isTrue();
    assertThat(overrun.kind().seconds()).isBetween(38.0, 42.0);
    assertThat(test(SmallSets.BLOCK4_12, order, quick).kind().flagged()).isFalse();
  }

  @Test
  void waitsThatAreAllTheSameTellNothing() {
    double[] waits = new double[12];
    java.util.Arrays.fill(waits, 433.3);
    WaitTest found = test(SmallSets.BLOCK4_12, "ABBABAABBBAA", waits);
    assertThat(found.kind().p()).isEqualTo(1);
    assertThat(found.kind().midP()).isEqualTo(0.5);
    assertThat(found.setup().orElseThrow().midP()).isEqualTo(0.5);
    assertThat(found.kind().seconds()).isZero();
  }

  @Test
  void aSampledSetGivesNearlyTheSameAndNeverZero() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    int[] order = Orders.parse("ABBABAABBBAA");
    double[] waits = waits(12, new Random(19), 0);
    WaitTest whole = WaitTest.of(set, order, waits, Sampling.PREFERRED);
    WaitTest sampled = WaitTest.of(set, order, waits, new Sampling(false, 9_999, 7, 0));
    assertThat(whole.sampled()).isFalse();
    assertThat(sampled.sampled()).isTrue();
    assertThat(sampled.kind().midP()).isCloseTo(whole.kind().midP(), within(0.02));
    assertThat(sampled.setup().orElseThrow().midP())
        .isCloseTo(whole.setup().orElseThrow().midP(), within(0.02));
    double[] plain = waits.clone();
    for (int i = 1; i < 12; i++) {
      plain[i] = 400 + 100 * (kinds("ABBABAABBBAA").charAt(i) - 'A');
    }
    assertThat(WaitTest.of(set, order, plain, new Sampling(false, 99, 7, 0)).kind().midP())
        .isPositive();
  }

  @Test
  void fewerThanEightWaitsAndOneKindOfHandlingAreNotTested() {
    int[] order = Orders.parse("ABBABAABBBAA");
    double[] waits = waits(12, new Random(20), 0);
    assertThat(WaitTest.untested(order, waits)).isEmpty();
    for (int i = 1; i < 5; i++) {
      waits[i] = Double.NaN;
    }
    assertThat(WaitTest.untested(order, waits)).contains(WaitTest.Untested.TOO_FEW);
    assertThatThrownBy(() -> test(SmallSets.BLOCK4_12, "ABBABAABBBAA", waits))
        .isInstanceOf(StatsException.class)
        .hasMessageContaining("hold 7 after the first stint, but at least 8 are needed.");

    double[] all = waits(12, new Random(21), 0);
    assertThat(WaitTest.untested(Orders.parse("ABABABABABAB"), all))
        .contains(WaitTest.Untested.ONE_KIND);
    assertThatThrownBy(() -> test(SmallSets.BLOCK4_12, "ABABABABABAB", all))
        .isInstanceOf(StatsException.class)
        .hasMessageContaining("one kind of handling");
  }

  @Test
  void waitsLeftOnOneSetupAloneGiveNoAnswerBySetup() {
    Assignments set = Assignments.listed(List.of("ABBBBBBBBBBA", "BAAAAAAAAAAB"));
    double[] waits = waits(12, new Random(22), 0);
    waits[11] = Double.NaN;
    WaitTest found = WaitTest.of(set, Orders.parse("ABBBBBBBBBBA"), waits, Sampling.PREFERRED);
    assertThat(found.setup()).isEmpty();
    assertThat(found.kind().reals()).isEqualTo(1);
  }

  /** Three triangles: 216 draws of nine laps, each trial on its own. */
  @Test
  void theWaitsOfATellingRunAreTestedOverTheDrawsOfItsTrials() {
    Assignments draws = TellingTrials.of(Discrimination.TRIANGLE, 3, 0.5).draws();
    List<String> orders = draws.list();
    assertThat(orders).hasSize(216).doesNotHaveDuplicates();
    assertThat(orders).allMatch(o -> !o.contains("AAAAA") && !o.startsWith("AAA"));
    Random random = new Random(19);
    for (int run = 0; run < 12; run++) {
      String ridden = orders.get(random.nextInt(orders.size()));
      double[] waits = waits(9, random, 0);
      if (!testable(ridden, waits)) {
        continue;
      }
      WaitTest test = WaitTest.of(draws, Orders.parse(ridden), waits, Sampling.PREFERRED);
      assertThat(test.count().intValueExact()).isEqualTo(216);
      assertThat(test.kind().p()).isCloseTo(p(orders, ridden, o -> kind(o, waits)), within(1e-12));
      assertThat(test.kind().midP())
          .isCloseTo(midP(orders, ridden, o -> kind(o, waits)), within(1e-12));
      assertThat(test.setup().orElseThrow().midP())
          .isCloseTo(midP(orders, ridden, o -> setup(o, 2, waits)), within(1e-12));
    }
  }

  @Test
  void slowRealSwapsOfATellingRunAreFoundAndEqualOnesSeldomFlagged() {
    TellingTrials run = TellingTrials.of(Discrimination.TRIANGLE, 15, 0.5);
    Assignments draws = run.draws();
    Sampling sampling = new Sampling(false, 499, 7);
    Random random = new Random(23);
    int[] flagged = new int[2];
    int runs = 200;
    for (int i = 0; i < runs; i++) {
      StringBuilder ridden = new StringBuilder();
      for (int trial = 0; trial < run.number(); trial++) {
        ridden.append(TellingRiders.draw(run.task(), random));
      }
      int[] order = Orders.parse(ridden.toString());
      for (int slow = 0; slow < 2; slow++) {
        double[] waits = new double[order.length];
        for (int lap = 1; lap < order.length; lap++) {
          boolean real = order[lap] != order[lap - 1];
          waits[lap] = 120 - lap + 10 * random.nextGaussian() + (real ? 12 * slow : 0);
        }
        flagged[slow] += WaitTest.of(draws, order, waits, sampling).kind().flagged() ? 1 : 0;
      }
    }
    // .10 and four standard errors; power is far above one half at 1.2 standard deviations.
    assertThat(flagged[0]).isLessThanOrEqualTo(20 + 17);
    assertThat(flagged[1]).isGreaterThan(180);
  }
}
