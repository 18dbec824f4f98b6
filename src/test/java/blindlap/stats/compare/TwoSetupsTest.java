package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TwoSetupsTest {
  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(5L);

  static List<SmallSets.Plain> rules() {
    return SmallSets.twoSetups();
  }

  /** One-sided counts from a regression of its own for every order: t of B against A. */
  private static long[] regressionCounts(
      List<String> orders, String ridden, double[] y, boolean[] use, Drift drift, double shift) {
    double[] shifted = y.clone();
    for (int i = 0; i < y.length; i++) {
      shifted[i] -= ridden.charAt(i) == 'B' ? shift : 0;
    }
    double observed = t(ridden, shifted, use, drift);
    long[] counts = new long[2];
    for (String order : orders) {
      double t = t(order, shifted, use, drift);
      double slack = 1e-7 * Math.max(1, Math.abs(observed));
      counts[0] += t >= observed - slack ? 1 : 0;
      counts[1] += t <= observed + slack ? 1 : 0;
    }
    return counts;
  }

  private static double t(String order, double[] y, boolean[] use, Drift drift) {
    int n = DayCheck.count(use);
    RealMatrix x = new Array2DRowRealMatrix(n, drift.columns() + 1);
    double[] response = new double[n];
    int row = 0;
    for (int i = 0; i < y.length; i++) {
      if (!use[i]) {
        continue;
      }
      for (int degree = 0; degree <= drift.degree(); degree++) {
        x.setEntry(row, degree, Math.pow((i - y.length / 2.0) / y.length, degree));
      }
      x.setEntry(row, drift.columns(), order.charAt(i) == 'B' ? 1 : 0);
      response[row++] = y[i];
    }
    QRDecomposition qr = new QRDecomposition(x, 1e-10);
    if (!qr.getSolver().isNonSingular()) {
      return 0;
    }
    double[] beta = qr.getSolver().solve(new Array2DRowRealMatrix(response)).getColumn(0);
    double[] fitted = x.operate(beta);
    double rss = 0;
    for (int i = 0; i < n; i++) {
      rss += (response[i] - fitted[i]) * (response[i] - fitted[i]);
    }
    RealMatrix inverse = new QRDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
    double variance = inverse.getEntry(drift.columns(), drift.columns());
    return beta[drift.columns()] / Math.sqrt(rss / (n - drift.columns() - 1) * variance);
  }

  private double[] noise(int n) {
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      y[i] = 90 + 0.1 * i + random.nextDouble() * 3;
    }
    return y;
  }

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private static TwoSetups compare(
      Assignments set, String order, double[] y, boolean[] use, Drift drift) {
    return TwoSetups.compare(set, Orders.parse(order), y, use, drift, Sampling.PREFERRED);
  }

  @ParameterizedTest
  @MethodSource("rules")
  void countsAreThoseOfARegressionForEveryOrder(SmallSets.Plain rule) {
    List<String> orders = SmallSets.filtered(rule);
    Assignments set = rule.assignments();
    for (Drift drift : Drift.values()) {
      for (int trial = 0; trial < 4; trial++) {
        String ridden = orders.get(random.nextInt(orders.size()));
        double[] y = noise(rule.stints());
        boolean[] use = all(rule.stints());
        if (trial >= 2) {
          use[random.nextInt(rule.stints())] = false;
        }
        TwoSetups found = compare(set, ridden, y, use, drift);
        for (double shift : new double[] {0, -1.3, 0.7, found.estimate()}) {
          long[] counts = regressionCounts(orders, ridden, y, use, drift, shift);
          assertThat(found.curve().countPlus(shift))
              .as("%s %s", drift, ridden)
              .isEqualTo(counts[0]);
          assertThat(found.curve().countMinus(shift)).isEqualTo(counts[1]);
        }
      }
    }
  }

  @Test
  void integerRatingsAreCountedAsInIntegerArithmetic() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    List<String> orders = set.list();
    for (int trial = 0; trial < 40; trial++) {
      long[] ratings = random.longs(12, 1, 6).toArray();
      String ridden = orders.get(random.nextInt(orders.size()));
      double[] y = Arrays.stream(ratings).asDoubleStream().toArray();
      TwoSetups found = compare(set, ridden, y, all(12), Drift.LINE);
      if (found.noVariation()) {
        continue;
      }
      long plus = 0;
      long minus = 0;
      for (String order : orders) {
        int sign = compareExactly(order, ridden, ratings);
        plus += sign >= 0 ? 1 : 0;
        minus += sign <= 0 ? 1 : 0;
      }
      assertThat(found.curve().countPlus(0)).isEqualTo(plus);
      assertThat(found.curve().countMinus(0)).isEqualTo(minus);
    }
  }

  /** Sign of t_z − t_observed at shift 0 with a straight trend, in whole numbers only. */
  private static int compareExactly(String order, String ridden, long[] y) {
    long[] a = sums(order, y);
    long[] b = sums(ridden, y);
    // a[0]/sqrt(a[1]) against b[0]/sqrt(b[1])
    if (Long.signum(a[0]) != Long.signum(b[0])) {
      return Long.compare(a[0], b[0]);
    }
    int bySquares = Long.compare(a[0] * a[0] * b[1], b[0] * b[0] * a[1]);
    return a[0] >= 0 ? bySquares : -bySquares;
  }

  /** Multiples of z'Wy and z'Wz that are whole numbers, with z = ±1 and t in odd steps. */
  private static long[] sums(String order, long[] y) {
    int n = y.length;
    long zy = 0;
    long zt = 0;
    long ty = 0;
    long tt = 0;
    for (int i = 0; i < n; i++) {
      int z = order.charAt(i) == 'B' ? 1 : -1;
      long t = 2L * i - (n - 1);
      zy += z * y[i];
      zt += z * t;
      ty += t * y[i];
      tt += t * t;
    }
    return new long[] {tt * zy - zt * ty, tt * n - zt * zt};
  }

  @ParameterizedTest
  @MethodSource("rules")
  void atTheEndsOfAnIntervalPIsAboveTheLevelAndJustBeyondThemNotAbove(SmallSets.Plain rule) {
    Assignments set = rule.assignments();
    List<String> orders = set.list();
    for (int trial = 0; trial < 20; trial++) {
      String ridden = orders.get(random.nextInt(orders.size()));
      ConfidenceCurve curve =
          compare(set, ridden, noise(rule.stints()), all(rule.stints()), Drift.LINE).curve();
      for (double level : new double[] {0.95, 0.9, 0.8, 0.5}) {
        Optional<Interval> interval = curve.interval(level);
        double alpha = 1 - level + 1e-12;
        if (interval.isEmpty()) {
          assertThat(2.0 * curve.always() / curve.total()).isGreaterThan(1 - level);
          continue;
        }
        double low = interval.get().low();
        double high = interval.get().high();
        assertThat(curve.p(low)).isGreaterThan(alpha);
        assertThat(curve.p(high)).isGreaterThan(alpha);
        assertThat(curve.p(low - 1e-6)).isLessThanOrEqualTo(alpha);
        assertThat(curve.p(high + 1e-6)).isLessThanOrEqualTo(alpha);
        assertThat(curve.estimate()).isBetween(low, high);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("rules")
  void pFallsAwayFromTheEstimateOnBothSides(SmallSets.Plain rule) {
    Assignments set = rule.assignments();
    ConfidenceCurve curve =
        compare(set, set.list().get(3), noise(rule.stints()), all(rule.stints()), Drift.LINE)
            .curve();
    double last = 1;
    double lastBelow = 1;
    for (double step = 0; step < 6; step += 0.05) {
      assertThat(curve.p(curve.estimate() + step)).isLessThanOrEqualTo(last);
      assertThat(curve.p(curve.estimate() - step)).isLessThanOrEqualTo(lastBelow);
      last = curve.p(curve.estimate() + step);
      lastBelow = curve.p(curve.estimate() - step);
    }
  }

  @ParameterizedTest
  @MethodSource("rules")
  void swappingAAndBMirrorsEverything(SmallSets.Plain rule) {
    Assignments set = rule.assignments();
    String ridden = set.list().get(set.list().size() / 3);
    double[] y = noise(rule.stints());
    TwoSetups one = compare(set, ridden, y, all(rule.stints()), Drift.LINE);
    TwoSetups other = compare(set, SmallSets.swapped(ridden), y, all(rule.stints()), Drift.LINE);
    assertThat(other.estimate()).isCloseTo(-one.estimate(), within(1e-12));
    assertThat(other.noiseSd()).isCloseTo(one.noiseSd(), within(1e-12));
    assertThat(other.curve().countPlus(0.5)).isEqualTo(one.curve().countMinus(-0.5));
    assertThat(other.curve().countMinus(0)).isEqualTo(one.curve().countPlus(0));
    double[] knots = one.curve().knots();
    double[] mirrored = other.curve().knots();
    for (int i = 0; i < knots.length; i++) {
      assertThat(mirrored[i]).isCloseTo(-knots[knots.length - 1 - i], within(1e-9));
    }
    assertThat(other.verdict(-1, 1)).isEqualTo(one.verdict(-1, 1));
  }

  @ParameterizedTest
  @MethodSource("rules")
  void theDriftThatIsRemovedChangesNothing(SmallSets.Plain rule) {
    Assignments set = rule.assignments();
    String ridden = set.list().get(1);
    double[] y = noise(rule.stints());
    for (Drift drift : Drift.values()) {
      TwoSetups plain = compare(set, ridden, y, all(rule.stints()), drift);
      double[] moved = y.clone();
      for (int i = 0; i < y.length; i++) {
        for (int degree = 0; degree <= drift.degree(); degree++) {
          moved[i] += 3 * Math.pow(i / 4.0 - 1, degree);
        }
      }
      TwoSetups shifted = compare(set, ridden, moved, all(rule.stints()), drift);
      assertThat(shifted.estimate()).isCloseTo(plain.estimate(), within(1e-10));
      assertThat(shifted.noiseSd()).isCloseTo(plain.noiseSd(), within(1e-10));
      assertThat(shifted.curve().countPlus(0)).isEqualTo(plain.curve().countPlus(0));
      assertThat(shifted.curve().interval(0.5).orElseThrow().low())
          .isCloseTo(plain.curve().interval(0.5).orElseThrow().low(), within(1e-8));
    }
  }

  @Test
  void aStraightTrendThatIsNotRemovedDoesChangeTheEstimate() {
    Assignments set = SmallSets.COMPLETE_8.assignments();
    double[] y = noise(8);
    double[] moved = y.clone();
    for (int i = 0; i < 8; i++) {
      moved[i] += i;
    }
    assertThat(compare(set, "AABABABB", moved, all(8), Drift.NONE).estimate())
        .isGreaterThan(compare(set, "AABABABB", y, all(8), Drift.NONE).estimate() + 1);
  }

  @ParameterizedTest
  @MethodSource("rules")
  void scalingTheValuesScalesTheResult(SmallSets.Plain rule) {
    Assignments set = rule.assignments();
    String ridden = set.list().get(2);
    double[] y = noise(rule.stints());
    TwoSetups plain = compare(set, ridden, y, all(rule.stints()), Drift.LINE);
    double[] large = Arrays.stream(y).map(each -> -1000 * each).toArray();
    TwoSetups scaled = compare(set, ridden, large, all(rule.stints()), Drift.LINE);
    assertThat(scaled.estimate()).isCloseTo(-1000 * plain.estimate(), within(1e-8));
    assertThat(scaled.noiseSd()).isCloseTo(1000 * plain.noiseSd(), within(1e-8));
    assertThat(scaled.curve().countMinus(-700)).isEqualTo(plain.curve().countPlus(0.7));
    assertThat(scaled.curve().p(0)).isEqualTo(plain.curve().p(0));
  }

  @Test
  void darwinsMaizePairsGiveFishersCount() {
    // Fisher (1935), The Design of Experiments, section 21: 863 of 32 768 sums at least as large;
    // data Darwin (1876) in inches, cross-fertilised less self-fertilised, eighths.
    int[] eighths = {49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48};
    double[] y = new double[30];
    for (int i = 0; i < 15; i++) {
      y[2 * i + 1] = eighths[i] / 8.0;
    }
    Assignments pairs = SmallSets.Plain.blocks(2, 30, 2).assignments();
    TwoSetups found = compare(pairs, "AB".repeat(15), y, all(30), Drift.NONE);
    assertThat(found.curve().countPlus(0)).isEqualTo(863);
    assertThat(found.curve().p(0)).isEqualTo(1726 / 32768.0);
    assertThat(found.estimate()).isCloseTo(20.9333333333 / 8, within(1e-9));
  }

  @Test
  void valuesOnALargeOffsetKeepTheirTies() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    double[] y = {3, 4, 3, 5, 4, 4, 3, 2, 5, 3, 4, 4};
    double[] far = Arrays.stream(y).map(each -> 1e5 + each / 1000).toArray();
    ConfidenceCurve near = compare(set, "ABBABABAABAB", y, all(12), Drift.LINE).curve();
    ConfidenceCurve moved = compare(set, "ABBABABAABAB", far, all(12), Drift.LINE).curve();
    assertThat(moved.countPlus(0)).isEqualTo(near.countPlus(0));
    assertThat(moved.countMinus(0)).isEqualTo(near.countMinus(0));
  }

  @Test
  void valuesThatDoNotVaryGiveNoInterval() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    double[] y = new double[12];
    Arrays.fill(y, 0.1);
    TwoSetups found = compare(set, "ABBABABAABAB", y, all(12), Drift.LINE);
    assertThat(found.noVariation()).isTrue();
    assertThat(found.curve().p(0)).isEqualTo(1);
    assertThat(found.curve().interval(0.95)).isEmpty();
    assertThat(found.verdict(-1, 1)).isEqualTo(Verdict.NO_VARIATION);
    for (int i = 0; i < 12; i++) {
      y[i] = 1e4 + 0.3 * i + ("ABBABABAABAB".charAt(i) == 'B' ? 2 : 0);
    }
    assertThat(compare(set, "ABBABABAABAB", y, all(12), Drift.LINE).noVariation()).isTrue();
  }

  @Test
  void aSampledSetGivesNearlyTheExactAnswerAndTheSameOneForTheSameSeed() {
    Assignments set = SmallSets.Plain.blocks(2, 28, 28).assignments();
    double[] y = noise(28);
    String ridden = "ABBABABAABAB" + "AABB".repeat(4);
    Sampling seeded = new Sampling(false, 20_000, 3L);
    TwoSetups sampled =
        TwoSetups.compare(set, Orders.parse(ridden), y, all(28), Drift.LINE, seeded);
    assertThat(sampled.sampled()).isTrue();
    assertThat(sampled.count()).isEqualTo(40_116_600);
    assertThat(sampled.curve().total()).isEqualTo(40_002);
    assertThat(sampled.curve().always()).isEqualTo(1);
    TwoSetups again = TwoSetups.compare(set, Orders.parse(ridden), y, all(28), Drift.LINE, seeded);
    assertThat(again.curve().knots()).isEqualTo(sampled.curve().knots());
    assertThat(sampled.pError(0.05)).isCloseTo(Math.sqrt(0.05 * 0.95 / 20_000), within(1e-15));
    // Normal theory is close for a set this large: t on 25 df.
    double t = sampled.estimate() * Math.sqrt(sampled.c()) / sampled.noiseSd();
    double normal =
        2
            * org.apache.commons.statistics.distribution.TDistribution.of(25)
                .survivalProbability(Math.abs(t));
    assertThat(sampled.curve().p(0)).isCloseTo(normal, within(0.03));
  }

  @Test
  void sampledOrdersGiveTheSumsOfTheWalk() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    double[] y = noise(12);
    boolean[] use = all(12);
    use[4] = false;
    SetupFit fit =
        new SetupFit(Orders.parse("ABBABABAABAB"), y, use, new Residuals(use, Drift.LINE));
    double[] whole = TwoSetups.curve(set, fit, 0, null).knots();
    double[] sample = TwoSetups.curve(set, fit, 300, random).knots();
    for (double knot : sample) {
      assertThat(Arrays.stream(whole).map(each -> Math.abs(each - knot)).min().orElseThrow())
          .isLessThan(1e-10);
    }
  }

  @Test
  void whatCannotBeComparedIsRefusedAtItsArgument() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    String ridden = "ABBABABAABAB";
    double[] y = noise(12);
    refused("values", () -> compare(set, ridden, new double[13], all(12), Drift.LINE));
    refused("values", () -> compare(set, ridden, new double[0], all(12), Drift.LINE));
    refused("valid", () -> compare(set, ridden, y, all(11), Drift.LINE));
    refused("values", () -> compare(set, ridden, y, new boolean[12], Drift.LINE));
    double[] nothing = new double[12];
    Arrays.fill(nothing, Double.NaN);
    refused("values", () -> compare(set, ridden, nothing, all(12), Drift.LINE));
    double[] infinite = y.clone();
    infinite[3] = Double.NEGATIVE_INFINITY;
    refused("values[3]", () -> compare(set, ridden, infinite, all(12), Drift.LINE));
    refused("order", () -> compare(set, "AAAABBBBAABB", y, all(12), Drift.LINE));
    refused("order", () -> compare(set, "ABBA", y, all(12), Drift.LINE));
    refused(
        "rule",
        () ->
            compare(
                Assignments.listed(List.of("ABAB", "ABBA")), "ABAB", noise(4), all(4), Drift.NONE));
    refused(
        "rule",
        () -> compare(SmallSets.THREE_9.assignments(), "ABCABCABC", noise(9), all(9), Drift.NONE));
    refused(
        "exact",
        () ->
            TwoSetups.compare(
                SmallSets.Plain.blocks(2, 28, 28).assignments(),
                Orders.parse("AB".repeat(14)),
                noise(28),
                all(28),
                Drift.LINE,
                new Sampling(true, 9_999, 1)));
    boolean[] onlyA = new boolean[12];
    for (int i = 0; i < 12; i++) {
      onlyA[i] = ridden.charAt(i) == 'A';
    }
    refused("values", () -> compare(set, ridden, y, onlyA, Drift.LINE));
  }
}
