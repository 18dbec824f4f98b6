package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The engine with covariates beside a regression of its own for every order. */
class CovariatesTest {
  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(8L);

  static List<SmallSets.Plain> rules() {
    return SmallSets.twoSetups();
  }

  static List<SmallSets.Plain> allRules() {
    return SmallSets.all();
  }

  /** Residual squares and, if asked, setup effects are nothing but least squares by QR. */
  private static double squares(
      String order, int setups, double[] y, boolean[] use, Nuisance nuisance, boolean withSetups) {
    List<double[]> columns = new ArrayList<>();
    for (int degree = 0; degree <= nuisance.drift().degree(); degree++) {
      int power = degree;
      columns.add(column(y.length, i -> Math.pow((i - y.length / 2.0) / y.length, power)));
    }
    for (int k = 0; k < nuisance.covariates(); k++) {
      double[] covariate = nuisance.covariate(k);
      columns.add(column(y.length, i -> covariate[i]));
    }
    for (int setup = 1; withSetups && setup < setups; setup++) {
      char letter = (char) ('A' + setup);
      columns.add(column(y.length, i -> order.charAt(i) == letter ? 1 : 0));
    }
    int n = DayCheck.count(use);
    RealMatrix x = new Array2DRowRealMatrix(n, columns.size());
    double[] response = new double[n];
    int row = 0;
    for (int i = 0; i < y.length; i++) {
      if (use[i]) {
        for (int k = 0; k < columns.size(); k++) {
          x.setEntry(row, k, columns.get(k)[i]);
        }
        response[row++] = y[i];
      }
    }
    QRDecomposition qr = new QRDecomposition(x, 1e-10);
    if (!qr.getSolver().isNonSingular()) {
      return Double.NaN;
    }
    double[] fitted =
        x.operate(qr.getSolver().solve(new Array2DRowRealMatrix(response)).getColumn(0));
    double rss = 0;
    for (int i = 0; i < n; i++) {
      rss += (response[i] - fitted[i]) * (response[i] - fitted[i]);
    }
    return rss;
  }

  private static double[] column(int n, java.util.function.IntToDoubleFunction value) {
    double[] column = new double[n];
    Arrays.setAll(column, value);
    return column;
  }

  /** Share of the squares left by the nuisance that the setups explain; rises with F and |t|. */
  private static double share(
      String order, int setups, double[] y, boolean[] use, Nuisance nuisance) {
    double with = squares(order, setups, y, use, nuisance, true);
    double without = squares(order, setups, y, use, nuisance, false);
    return Double.isNaN(with) ? 0 : (without - with) / without;
  }

  private double[] noise(int n) {
    return column(n, i -> 90 + 0.1 * i + random.nextDouble() * 3);
  }

  private Nuisance nuisance(Drift drift, int n, int covariates, boolean gap) {
    List<double[]> all = new ArrayList<>();
    for (int k = 0; k < covariates; k++) {
      double[] covariate = column(n, i -> 5 + random.nextDouble() * 20);
      if (gap) {
        covariate[random.nextInt(n)] = Double.NaN;
      }
      all.add(covariate);
    }
    return Nuisance.of(drift, all);
  }

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  @ParameterizedTest
  @MethodSource("rules")
  void theCurveIsThatOfARegressionForEveryOrder(SmallSets.Plain rule) {
    List<String> orders = SmallSets.filtered(rule);
    Assignments set = rule.assignments();
    int n = rule.stints();
    for (int covariates = 1; covariates <= 2; covariates++) {
      for (Drift drift : Drift.values()) {
        Nuisance nuisance = nuisance(drift, n, covariates, n >= 10);
        String ridden = orders.get(random.nextInt(orders.size()));
        double[] y = noise(n);
        TwoSetups found =
            TwoSetups.compare(set, Orders.parse(ridden), y, all(n), nuisance, Sampling.PREFERRED);
        boolean[] use = nuisance.known(all(n));
        assertThat(found.df()).isEqualTo(DayCheck.count(use) - nuisance.columns() - 1);
        for (double shift : new double[] {0, -1.3, 0.7}) {
          double[] left = column(n, i -> y[i] - (ridden.charAt(i) == 'B' ? shift : 0));
          double observed = share(ridden, 2, left, use, nuisance);
          long count =
              orders.stream()
                  .filter(order -> share(order, 2, left, use, nuisance) >= observed - 1e-9)
                  .count();
          assertThat(found.curve().p(shift))
              .as("%s, %s covariates, %s", drift, covariates, ridden)
              .isCloseTo((double) count / orders.size(), within(1e-12));
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("allRules")
  void severalSetupsAreComparedAsARegressionForEveryOrderDoes(SmallSets.Plain rule) {
    List<String> orders = SmallSets.filtered(rule);
    int n = rule.stints();
    int setups = rule.setups();
    if (n - 2 - 1 - (setups - 1) < 2) {
      return;
    }
    Nuisance nuisance = nuisance(Drift.LINE, n, 1, false);
    String ridden = orders.get(random.nextInt(orders.size()));
    double[] y = noise(n);
    ManySetups found =
        ManySetups.compare(
            rule.assignments(), Orders.parse(ridden), y, all(n), nuisance, Sampling.PREFERRED);
    double observed = share(ridden, setups, y, all(n), nuisance);
    long count =
        orders.stream()
            .filter(order -> share(order, setups, y, all(n), nuisance) >= observed - 1e-9)
            .count();
    assertThat(found.p()).isCloseTo((double) count / orders.size(), within(1e-12));
  }

  @Test
  void severalMeasuresShareTheCovariatesOfTheDay() {
    List<String> orders = SmallSets.filtered(SmallSets.BLOCK4_12);
    Nuisance nuisance = nuisance(Drift.LINE, 12, 2, true);
    String ridden = orders.get(17);
    double[][] y = {noise(12), noise(12)};
    boolean[] use = nuisance.known(all(12));
    double[] p =
        SeveralMeasures.compare(
                SmallSets.BLOCK4_12.assignments(),
                Orders.parse(ridden),
                List.of(
                    new SeveralMeasures.Series("one", y[0], nuisance),
                    new SeveralMeasures.Series("two", y[1], nuisance)),
                all(12),
                Sampling.PREFERRED)
            .p();
    for (int m = 0; m < 2; m++) {
      double[] values = y[m];
      double observed = share(ridden, 2, values, use, nuisance);
      long count =
          orders.stream()
              .filter(order -> share(order, 2, values, use, nuisance) >= observed - 1e-9)
              .count();
      assertThat(p[m]).isCloseTo((double) count / orders.size(), within(1e-12));
    }
  }

  @Test
  void theUnitAndTheOriginOfACovariateChangeNothing() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    double[] wind = column(12, i -> 3 + random.nextDouble() * 20);
    double[] y = noise(12);
    int[] order = Orders.parse("ABBABAABABBA");
    TwoSetups one = with(set, order, y, wind);
    for (double[] factor : new double[][] {{3.6, 0}, {1, 1e6}, {-0.01, 40}}) {
      TwoSetups other = with(set, order, y, column(12, i -> wind[i] * factor[0] + factor[1]));
      assertThat(other.estimate()).isCloseTo(one.estimate(), within(1e-9));
      assertThat(other.noiseSd()).isCloseTo(one.noiseSd(), within(1e-9));
      assertThat(other.curve().p(0)).isEqualTo(one.curve().p(0));
      assertThat(other.curve().knots().length).isEqualTo(one.curve().knots().length);
    }
  }

  private static TwoSetups with(Assignments set, int[] order, double[] y, double[] covariate) {
    return TwoSetups.compare(
        set,
        order,
        y,
        all(y.length),
        Nuisance.of(Drift.LINE, List.of(covariate)),
        Sampling.PREFERRED);
  }

  @Test
  void aSampledSetIsComparedWithTheSameSums() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    double[] wind = column(12, i -> random.nextDouble() * 20);
    double[] y = noise(12);
    int[] order = Orders.parse("ABBABAABABBA");
    Nuisance nuisance = Nuisance.of(Drift.CURVE, List.of(wind));
    TwoSetups whole = TwoSetups.compare(set, order, y, all(12), nuisance, Sampling.PREFERRED);
    SetupFit fit = new SetupFit(order, y, all(12), new Residuals(all(12), nuisance));
    ConfidenceCurve drawn =
        TwoSetups.curve(set, fit, 40_000, RandomSource.XO_RO_SHI_RO_128_PP.create(2L));
    assertThat(drawn.p(0)).isCloseTo(whole.curve().p(0), within(0.012));
  }

  @Test
  void aCovariateThatHoldsNothingOfItsOwnIsRefusedAndNamed() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    int[] order = Orders.parse("ABBABAABABBA");
    double[] y = noise(12);
    double[] wind = column(12, i -> random.nextDouble() * 20);
    refused("covariates[0]", () -> with(set, order, y, column(12, i -> 1e6)));
    refused("covariates[0]", () -> with(set, order, y, column(12, i -> 0.1)));
    refused("covariates[0]", () -> with(set, order, y, column(12, i -> 3 - 0.25 * i)));
    refused(
        "covariates[1]",
        () ->
            TwoSetups.compare(
                set,
                order,
                y,
                all(12),
                Nuisance.of(Drift.LINE, List.of(wind, column(12, i -> 2 * wind[i] + i))),
                Sampling.PREFERRED));
    refused("covariates", () -> Nuisance.of(Drift.LINE, List.of(wind, y, y)));
    refused("covariates[0]", () -> with(set, order, y, column(11, i -> i)));
    refused("covariates[1]", () -> Nuisance.of(Drift.LINE, List.of(wind, new double[3])));
  }
}
