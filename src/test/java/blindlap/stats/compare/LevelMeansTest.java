package blindlap.stats.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.LeastSquares;
import blindlap.stats.SmallSets;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Means of levels beside a regression, and what may be said of the middle and of the ends. */
class LevelMeansTest {
  private static final String ORDER = "BCADCADBABDC";
  private static final double[] LEVELS = {8, 2, 11, 5};

  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(23L);

  private static Trend trend(
      double[] levels, String order, double[] y, boolean[] use, Drift drift) {
    Assignments set = SmallSets.Plain.blocks(levels.length, y.length, levels.length).assignments();
    return Trend.of(
        set, levels, Orders.parse(order), y, use, Nuisance.of(drift), Sampling.PREFERRED);
  }

  private static double sum(double[] weights, double[] beta) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * beta[i];
    }
    return sum;
  }

  @Test
  void theMiddleIsHeldAgainstTheLineFromEndToEndWithTheVarianceOfARegression() {
    for (double[] levels : new double[][] {LEVELS, {1, 2, 3, 9}}) {
      double[] y = noise(12);
      boolean[] use = all(12);
      use[3] = false;
      LevelMeans means = trend(levels, ORDER, y, use, Drift.LINE).means().orElseThrow();
      LeastSquares fit = fit(ORDER, y, use, 1);
      double[] weights = new double[4];
      List<LevelMeans.Mean> all = means.means();
      LevelMeans.Mean low = all.get(0);
      LevelMeans.Mean high = all.get(3);
      for (LevelMeans.Mean each : all.subList(1, 3)) {
        double along = (each.level() - low.level()) / (high.level() - low.level());
        weights[each.setup()] += 0.5;
        weights[low.setup()] -= 0.5 * (1 - along);
        weights[high.setup()] -= 0.5 * along;
      }

      LevelMeans.Middle middle = means.middle().orElseThrow();

      assertThat(middle.estimate()).isCloseTo(sum(weights, fit.beta()), within(1e-9));
      assertThat(middle.standardError())
          .isCloseTo(means.noiseSd() * unit(use, Drift.LINE, weights), within(1e-9));
    }
  }

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private double[] noise(int n) {
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      y[i] = 90 + 0.3 * i + 2 * random.nextDouble();
    }
    return y;
  }

  /** Indicators of all levels and centred powers of the position: effects are adjusted means. */
  private static LeastSquares fit(String order, double[] y, boolean[] use, int degree) {
    int n = y.length;
    List<double[]> columns = new ArrayList<>();
    for (char letter : new char[] {'A', 'B', 'C', 'D'}) {
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        column[i] = order.charAt(i) == letter ? 1 : 0;
      }
      columns.add(LeastSquares.rows(column, use));
    }
    for (int power = 1; power <= degree; power++) {
      double[] column = new double[n];
      double mean = 0;
      int used = 0;
      for (int i = 0; i < n; i++) {
        column[i] = Math.pow(i, power);
        mean += use[i] ? column[i] : 0;
        used += use[i] ? 1 : 0;
      }
      for (int i = 0; i < n; i++) {
        column[i] -= mean / used;
      }
      columns.add(LeastSquares.rows(column, use));
    }
    return LeastSquares.of(columns, LeastSquares.rows(y, use));
  }

  @Test
  void meansAndDifferencesAreThoseOfARegressionOnIndicators() {
    for (Drift drift : Drift.values()) {
      for (int without : new int[] {-1, 4}) {
        boolean[] use = all(12);
        int used = without < 0 ? 12 : 11;
        if (without >= 0) {
          use[without] = false;
        }
        double[] y = noise(12);
        LeastSquares fit = fit(ORDER, y, use, drift.degree());
        LevelMeans found = trend(LEVELS, ORDER, y, use, drift).means().orElseThrow();
        assertThat(found.means())
            .extracting(LevelMeans.Mean::level)
            .containsExactly(2., 5., 8., 11.);
        assertThat(found.df()).isEqualTo(used - drift.degree() - 4);
        assertThat(found.noiseSd()).isCloseTo(Math.sqrt(fit.rss() / found.df()), within(1e-9));
        for (LevelMeans.Mean mean : found.means()) {
          assertThat(mean.mean()).isCloseTo(fit.beta()[mean.setup()], within(1e-9));
          assertThat(mean.standardError())
              .isCloseTo(found.noiseSd() * unit(use, drift, mean.setup(), -1), within(1e-9));
        }
        assertThat(found.pairs()).hasSize(6);
        for (LevelMeans.Pair pair : found.pairs()) {
          assertThat(LEVELS[pair.first()]).isLessThan(LEVELS[pair.second()]);
          assertThat(pair.estimate())
              .isCloseTo(fit.beta()[pair.second()] - fit.beta()[pair.first()], within(1e-9));
          assertThat(pair.standardError())
              .isCloseTo(
                  found.noiseSd() * unit(use, drift, pair.second(), pair.first()), within(1e-9));
        }
      }
    }
  }

  /** Root of the sum of squared weights with which the values enter a mean, or a difference. */
  private static double unit(boolean[] use, Drift drift, int plus, int minus) {
    double[] weights = new double[LEVELS.length];
    weights[plus] = 1;
    if (minus >= 0) {
      weights[minus] = -1;
    }
    return unit(use, drift, weights);
  }

  /** The same for a sum of level means with these weights. */
  private static double unit(boolean[] use, Drift drift, double[] weights) {
    double sum = 0;
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        double[] one = new double[use.length];
        one[i] = 1;
        double weight = sum(weights, fit(ORDER, one, use, drift.degree()).beta());
        sum += weight * weight;
      }
    }
    return Math.sqrt(sum);
  }

  @Test
  void withAllSetupsRiddenPairsAreThoseOfTheComparisonOfManySetups() {
    double[] y = noise(12);
    LevelMeans found = trend(LEVELS, ORDER, y, all(12), Drift.LINE).means().orElseThrow();
    ManySetups many =
        ManySetups.compare(
            SmallSets.Plain.blocks(4, 12, 4).assignments(),
            Orders.parse(ORDER),
            y,
            all(12),
            Nuisance.of(Drift.LINE),
            Sampling.PREFERRED);
    for (ManySetups.Pair pair : many.pairs()) {
      boolean rises = LEVELS[pair.first()] < LEVELS[pair.second()];
      LevelMeans.Pair same =
          found.pairs().stream()
              .filter(each -> each.first() == (rises ? pair.first() : pair.second()))
              .filter(each -> each.second() == (rises ? pair.second() : pair.first()))
              .findFirst()
              .orElseThrow();
      Interval expected = many.interval(pair, 0.95).orElseThrow();
      Interval interval = found.interval(same, 0.95);
      assertThat(rises ? interval.low() : -interval.high()).isCloseTo(expected.low(), within(1e-9));
      assertThat(interval.halfWidth()).isCloseTo(expected.halfWidth(), within(1e-9));
    }
  }

  @Test
  void aLevelWithoutAStintHasNoMeanAndTheOthersKeepTheirs() {
    double[] y = noise(12);
    boolean[] use = all(12);
    for (int i = 0; i < 12; i++) {
      use[i] = ORDER.charAt(i) != 'C';
    }
    Trend found = trend(LEVELS, ORDER, y, use, Drift.NONE);
    LevelMeans means = found.means().orElseThrow();
    assertThat(means.means()).extracting(LevelMeans.Mean::setup).containsExactly(1, 3, 0);
    for (LevelMeans.Mean mean : means.means()) {
      double sum = 0;
      for (int i = 0; i < 12; i++) {
        sum += ORDER.charAt(i) - 'A' == mean.setup() ? y[i] / 3 : 0;
      }
      assertThat(mean.mean()).isCloseTo(sum, within(1e-9));
      assertThat(mean.standardError()).isCloseTo(means.noiseSd() / Math.sqrt(3), within(1e-9));
      assertThat(means.interval(mean, 0.95).halfWidth())
          .as("t on 6 degrees of freedom")
          .isCloseTo(2.446912 * mean.standardError(), within(1e-5));
    }
    assertThat(means.pairs()).hasSize(3);
    assertThat(found.middleBetter(true)).as("the highest level was not ridden").isEmpty();
  }

  /** Values of three levels with a little noise of fixed shape. */
  private static double[] shaped(String order, double... ofLevel) {
    double[] noise = {.1, -.2, .15, -.05, .2, -.1, .05, -.15, .1, -.1, .2, -.2};
    double[] y = new double[order.length()];
    for (int i = 0; i < y.length; i++) {
      y[i] = 60 + ofLevel[order.charAt(i) - 'A'] + noise[i];
    }
    return y;
  }

  @Test
  void theMiddleIsBetterOnlyWhereItBeatsBothEndsInTheDirectionThatIsBetter() {
    String order = "BCAACBCABBAC";
    double[] levels = {3, 9, 6};
    Trend dip = trend(levels, order, shaped(order, 2, 2, 0), all(12), Drift.LINE);
    assertThat(dip.bend().orElseThrow().real()).isTrue();
    assertThat(dip.middleBetter(true)).hasValue(2);
    assertThat(dip.middleBetter(false)).as("higher would be better").isEmpty();
    assertThat(dip.stillBetter(true)).isEmpty();
    Trend hook = trend(levels, order, shaped(order, 2, 0, 0.02), all(12), Drift.LINE);
    assertThat(hook.bend().orElseThrow().real()).as("it bends all the same").isTrue();
    assertThat(hook.middleBetter(true)).as("the upper end is as good").isEmpty();
    Trend straight = trend(levels, order, shaped(order, 2, 0, 1), all(12), Drift.LINE);
    assertThat(straight.bend().orElseThrow().real()).isFalse();
    assertThat(straight.middleBetter(true)).isEmpty();
  }

  @Test
  void itIsStillGettingBetterOnlyAtTheEndThatARealTrendLeadsTo() {
    String order = "BCAACBCABBAC";
    double[] levels = {3, 9, 6};
    Trend straight = trend(levels, order, shaped(order, 2, 0, 1), all(12), Drift.LINE);
    assertThat(straight.real()).isTrue();
    assertThat(straight.stillBetter(true)).hasValue(1);
    assertThat(straight.stillBetter(false)).hasValue(0);
    Trend turned = trend(levels, order, shaped(order, 2, .3, 0), all(12), Drift.LINE);
    assertThat(turned.real()).isTrue();
    assertThat(turned.stillBetter(true)).as("the middle is best").isEmpty();
    Trend flat = trend(levels, order, shaped(order, 0, 0, 0), all(12), Drift.LINE);
    assertThat(flat.real()).isFalse();
    assertThat(flat.stillBetter(true)).isEmpty();
    assertThat(flat.stillBetter(false)).isEmpty();
  }

  @Test
  void ofFourLevelsTheBestBetweenTheEndsMustBeatThemByTheIntervalsOfAllPairs() {
    double[] levels = {1, 2, 3, 4};
    Trend dip = trend(levels, ORDER, shaped(ORDER, 2, 0, 0.3, 2), all(12), Drift.LINE);
    assertThat(dip.middleBetter(true)).hasValue(1);
    Trend less = trend(levels, ORDER, shaped(ORDER, .34, 0, 0, .34), all(12), Drift.LINE);
    LevelMeans means = less.means().orElseThrow();
    int best =
        means.means().get(1).mean() < means.means().get(2).mean()
            ? means.means().get(1).setup()
            : means.means().get(2).setup();
    boolean apart = true;
    for (LevelMeans.Pair pair : means.pairs()) {
      Interval interval = means.interval(pair, 0.95);
      apart &= !(pair.first() == 0 && pair.second() == best) || interval.high() < 0;
      apart &= !(pair.first() == best && pair.second() == 3) || interval.low() > 0;
    }
    assertThat(less.middleBetter(true).isPresent())
        .isEqualTo(apart && less.bend().orElseThrow().real());
  }

  @Test
  void anAttainableLevelOfATrendCountsInTwos() {
    Assignments blockOfFive = SmallSets.Plain.blocks(5, 5, 5).assignments();
    assertThat(OrderSet.of(blockOfFive).attainableLevel())
        .as("120 renamings of one order")
        .isZero();
    OrderSet found = OrderSet.ofTrend(blockOfFive);
    assertThat(found.attainableLevel()).isCloseTo(6.0 / 120, within(1e-12));
    assertThat(found.smallestP()).isCloseTo(2.0 / 120, within(1e-12));
    OrderSet three = OrderSet.ofTrend(SmallSets.Plain.blocks(3, 6, 3).assignments());
    assertThat(three.attainableLevel()).as("36 orders").isZero();
  }

  @Test
  void aTrendHasAWordOfItsOwnWhereTwoSetupsHaveNoWorthwhileDifference() {
    String order = "BCAACBCABBAC";
    Trend flat = trend(new double[] {3, 9, 6}, order, shaped(order, 0, 0, 0), all(12), Drift.LINE);
    assertThat(flat.verdict(-1, 1).textOfTrend()).isEqualTo("no worthwhile trend");
    assertThat(flat.verdict(-.01, .01).textOfTrend()).isEqualTo("not settled");
  }
}
