package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.LeastSquares;
import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.LevelScale;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The trend beside a regression of its own for every order. */
class TrendTest {
  private static final double[] EVEN = {1.5, 1.6, 1.7};

  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(18L);

  /** A rule with levels, stints that count, and whether values are whole numbers, which tie. */
  record Steps(SmallSets.Plain rule, double[] levels, int without, boolean whole) {}

  static List<Steps> steps() {
    List<Steps> steps = new ArrayList<>();
    int at = 0;
    for (SmallSets.Plain rule : SmallSets.all()) {
      double[] even = new double[rule.setups()];
      Arrays.setAll(even, i -> 1.5 + 0.1 * i);
      double[] uneven = Arrays.copyOf(new double[] {4, 1, 13, 6.5}, rule.setups());
      int without = 1 + at++ % (rule.stints() - 2);
      steps.add(new Steps(rule, even, -1, false));
      steps.add(new Steps(rule, even, without, true));
      steps.add(new Steps(rule, uneven, without, false));
      steps.add(new Steps(rule, uneven, -1, true));
    }
    return steps;
  }

  private double[] values(int n, boolean whole) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = whole ? random.nextInt(5) : 90 + 0.2 * i + random.nextDouble() * 3;
    }
    return values;
  }

  private static boolean[] all(int n, int without) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    if (without >= 0) {
      use[without] = false;
    }
    return use;
  }

  private static Trend trend(
      SmallSets.Plain rule, double[] levels, String order, double[] y, boolean[] use, Drift drift) {
    return Trend.of(
        rule.assignments(),
        levels,
        Orders.parse(order),
        y,
        use,
        Nuisance.of(drift),
        Sampling.PREFERRED);
  }

  private static List<double[]> nuisance(int n, Drift drift, boolean[] use) {
    List<double[]> columns = new ArrayList<>();
    for (int degree = 0; degree <= drift.degree(); degree++) {
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        column[i] = Math.pow((i - n / 2.0) / n, degree);
      }
      columns.add(LeastSquares.rows(column, use));
    }
    return columns;
  }

  private static double[] levels(String order, double[] levels, boolean[] use, int power) {
    double[] column = new double[order.length()];
    for (int i = 0; i < column.length; i++) {
      column[i] = Math.pow(levels[order.charAt(i) - 'A'], power);
    }
    return LeastSquares.rows(column, use);
  }

  /** The trend times the root of its information: rises with the signed t. */
  private static double statistic(List<double[]> nuisance, double[] x, double[] y) {
    double information = LeastSquares.of(nuisance, x).rss();
    if (information < 1e-9) {
      return 0;
    }
    List<double[]> all = new ArrayList<>(nuisance);
    all.add(x);
    return LeastSquares.of(all, y).beta()[nuisance.size()] * Math.sqrt(information);
  }

  @ParameterizedTest
  @MethodSource("steps")
  void theCurveIsThatOfARegressionForEveryOrder(Steps steps) {
    List<String> orders = SmallSets.filtered(steps.rule());
    int n = steps.rule().stints();
    boolean[] use = all(n, steps.without());
    for (Drift drift : Drift.values()) {
      String ridden = orders.get(random.nextInt(orders.size()));
      double[] y = values(n, steps.whole());
      List<double[]> nuisance = nuisance(n, drift, use);
      double[] x = levels(ridden, steps.levels(), use, 1);
      double range = LevelScale.range(steps.levels());
      Trend found = trend(steps.rule(), steps.levels(), ridden, y, use, drift);
      double perUnit =
          statistic(nuisance, x, LeastSquares.rows(y, use))
              / Math.sqrt(LeastSquares.of(nuisance, x).rss());
      assertThat(found.perUnit(steps.levels())).isCloseTo(perUnit, within(1e-9));
      assertThat(found.count()).isEqualTo(orders.size());
      for (double shift : new double[] {0, -1.3, 0.7}) {
        double[] left = new double[n];
        for (int i = 0; i < n; i++) {
          left[i] = y[i] - shift / range * steps.levels()[ridden.charAt(i) - 'A'];
        }
        double[] response = LeastSquares.rows(left, use);
        double observed = statistic(nuisance, x, response);
        long plus = 0;
        long minus = 0;
        for (String order : orders) {
          double each = statistic(nuisance, levels(order, steps.levels(), use, 1), response);
          plus += each >= observed - 1e-9 ? 1 : 0;
          minus += each <= observed + 1e-9 ? 1 : 0;
        }
        assertThat(found.curve().countPlus(shift)).as("%s %s", drift, ridden).isEqualTo(plus);
        assertThat(found.curve().countMinus(shift)).as("%s %s", drift, ridden).isEqualTo(minus);
      }
    }
  }

  /** Partial t of the squared level; 0 where drift and level explain it. */
  private static double bend(List<double[]> nuisance, double[] x, double[] squared, double[] y) {
    List<double[]> columns = new ArrayList<>(nuisance);
    columns.add(x);
    double own = LeastSquares.of(columns, squared).rss();
    if (own < 1e-9) {
      return 0;
    }
    columns.add(squared);
    LeastSquares fit = LeastSquares.of(columns, y);
    int df = y.length - columns.size();
    return fit.beta()[columns.size() - 1] * Math.sqrt(own) / Math.sqrt(fit.rss() / df);
  }

  @ParameterizedTest
  @MethodSource("steps")
  void theBendIsThePartialTOfTheSquaredLevelOverAllOrders(Steps steps) {
    List<String> orders = SmallSets.filtered(steps.rule());
    int n = steps.rule().stints();
    boolean[] use = all(n, steps.without());
    String ridden = orders.get(random.nextInt(orders.size()));
    double[] y = values(n, false);
    Trend found = trend(steps.rule(), steps.levels(), ridden, y, use, Drift.LINE);
    if (steps.levels().length == 2) {
      assertThat(found.bend()).isEmpty();
      return;
    }
    List<double[]> nuisance = nuisance(n, Drift.LINE, use);
    double[] response = LeastSquares.rows(y, use);
    double observed =
        bend(
            nuisance,
            levels(ridden, steps.levels(), use, 1),
            levels(ridden, steps.levels(), use, 2),
            response);
    long count =
        orders.stream()
            .filter(
                order ->
                    Math.abs(
                            bend(
                                nuisance,
                                levels(order, steps.levels(), use, 1),
                                levels(order, steps.levels(), use, 2),
                                response))
                        >= Math.abs(observed) * (1 - 1e-7))
            .count();
    assertThat(found.bend().orElseThrow().t()).isCloseTo(observed, within(1e-6));
    assertThat(found.bend().orElseThrow().p())
        .isCloseTo((double) count / orders.size(), within(1e-12));
  }

  @ParameterizedTest
  @MethodSource("steps")
  void turningTheLevelsRoundMirrorsEverything(Steps steps) {
    List<String> orders = SmallSets.filtered(steps.rule());
    int n = steps.rule().stints();
    boolean[] use = all(n, steps.without());
    String ridden = orders.get(random.nextInt(orders.size()));
    double[] y = values(n, steps.whole());
    Trend one = trend(steps.rule(), steps.levels(), ridden, y, use, Drift.LINE);
    double[] turned = Arrays.stream(steps.levels()).map(level -> 3 - 2 * level).toArray();
    Trend other = trend(steps.rule(), turned, ridden, y, use, Drift.LINE);
    assertThat(other.estimate()).isCloseTo(-one.estimate(), within(1e-9));
    assertThat(other.perUnit(turned)).isCloseTo(-one.perUnit(steps.levels()) / 2, within(1e-9));
    for (double shift : new double[] {0, 0.4, -2}) {
      assertThat(other.curve().countPlus(shift)).isEqualTo(one.curve().countMinus(-shift));
      assertThat(other.curve().countMinus(shift)).isEqualTo(one.curve().countPlus(-shift));
    }
    assertThat(other.verdict(-1, 1)).isEqualTo(one.verdict(-1, 1));
    assertThat(other.bend().map(Bend::p)).isEqualTo(one.bend().map(Bend::p));
    assertThat(other.stillBetter(true)).isEqualTo(one.stillBetter(true));
    assertThat(other.middleBetter(false)).isEqualTo(one.middleBetter(false));
    if (one.means().isPresent()) {
      List<LevelMeans.Mean> means = one.means().orElseThrow().means();
      List<LevelMeans.Mean> round = other.means().orElseThrow().means();
      for (int i = 0; i < means.size(); i++) {
        LevelMeans.Mean same = round.get(means.size() - 1 - i);
        assertThat(same.setup()).isEqualTo(means.get(i).setup());
        assertThat(same.mean()).isCloseTo(means.get(i).mean(), within(1e-9));
      }
    }
  }

  /** Far from 0 the values themselves are rounded, which must not part orders that tie. */
  @Test
  void aLargeConstantPartsNoTies() {
    double[] y = values(9, true);
    double[] far = Arrays.stream(y).map(each -> each + 1e9).toArray();
    Trend near = trend(SmallSets.THREE_9, EVEN, "BCAACBCAB", y, all(9, -1), Drift.LINE);
    Trend moved = trend(SmallSets.THREE_9, EVEN, "BCAACBCAB", far, all(9, -1), Drift.LINE);
    assertThat(moved.curve().countPlus(0)).isEqualTo(near.curve().countPlus(0));
    assertThat(moved.curve().countMinus(0)).isEqualTo(near.curve().countMinus(0));
    assertThat(moved.bend().orElseThrow().p()).isEqualTo(near.bend().orElseThrow().p());
  }

  @Test
  void aNewUnitOfTheLevelsScalesTheStepAndAConstantOrALineChangesNothing() {
    double[] y = values(9, false);
    Trend one = trend(SmallSets.THREE_9, EVEN, "BCAACBCAB", y, all(9, 4), Drift.LINE);
    double[] unit = Arrays.stream(EVEN).map(level -> 14.5 * level + 3).toArray();
    double[] moved = y.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] += 50 - 3 * i;
    }
    Trend other = trend(SmallSets.THREE_9, unit, "BCAACBCAB", moved, all(9, 4), Drift.LINE);
    assertThat(other.estimate()).isCloseTo(one.estimate(), within(1e-9));
    assertThat(other.perUnit(unit)).isCloseTo(one.perUnit(EVEN) / 14.5, within(1e-9));
    assertThat(other.curve().p(0)).isEqualTo(one.curve().p(0));
    assertThat(other.bend().orElseThrow().p()).isEqualTo(one.bend().orElseThrow().p());
  }

  @Test
  void aSampleOfALargeSetHoldsTheOrderRiddenAndComesNearTheWholeSet() {
    Assignments set = SmallSets.Plain.blocks(3, 18, 3).assignments();
    int[] order = set.random(random);
    double[] y = values(18, false);
    Sampling few = new Sampling(false, 9_999, 7L, 1_000);
    Trend whole =
        Trend.of(set, EVEN, order, y, all(18, -1), Nuisance.of(Drift.LINE), Sampling.PREFERRED);
    Trend sampled = Trend.of(set, EVEN, order, y, all(18, -1), Nuisance.of(Drift.LINE), few);
    assertThat(sampled.sampled()).isTrue();
    assertThat(sampled.curve().total()).isEqualTo(10_000);
    assertThat(sampled.curve().always()).isGreaterThanOrEqualTo(1);
    assertThat(sampled.curve().pGreater(0)).isCloseTo(whole.curve().pGreater(0), within(0.02));
    assertThat(sampled.pError(0.5)).isCloseTo(0.005, within(1e-4));
    assertThat(whole.pError(0.5)).isZero();
  }

  @Test
  void valuesThatDoNotVaryHaveNoBendAndNoInterval() {
    double[] same = new double[9];
    Arrays.fill(same, 4);
    Trend found = trend(SmallSets.THREE_9, EVEN, "BCAACBCAB", same, all(9, -1), Drift.LINE);
    assertThat(found.noVariation()).isTrue();
    assertThat(found.verdict(-1, 1)).isEqualTo(Verdict.NO_VARIATION);
    assertThat(found.bend()).isEmpty();
    assertThat(found.curve().p(0)).isEqualTo(1);
  }

  @Test
  void levelsThatCannotBeFollowedAreRefused() {
    double[] y = values(9, false);
    refused(
        "levels",
        () ->
            trend(SmallSets.THREE_9, new double[] {1, 2}, "BCAACBCAB", y, all(9, -1), Drift.LINE));
    refused(
        "levels",
        () ->
            trend(
                SmallSets.THREE_9, new double[] {1, 2, 1}, "BCAACBCAB", y, all(9, -1), Drift.LINE));
    boolean[] onlyA = new boolean[9];
    onlyA[2] = true;
    onlyA[3] = true;
    onlyA[7] = true;
    refused("values", () -> trend(SmallSets.THREE_9, EVEN, "BCAACBCAB", y, onlyA, Drift.NONE));
  }
}
