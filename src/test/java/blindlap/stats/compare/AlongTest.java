package blindlap.stats.compare;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.LeastSquares;
import blindlap.stats.SmallSets;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Differences along the trail beside a regression of their own for every order. */
class AlongTest {
  private static final int PIECES = 5;

  private final UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(21L);

  static List<SmallSets.Plain> banded() {
    return List.of(SmallSets.SHORT_8, SmallSets.BLOCK4_12);
  }

  private double[][] pieces(int n) {
    double[][] pieces = new double[n][PIECES];
    for (double[] stint : pieces) {
      Arrays.setAll(stint, j -> 12 + j + random.nextDouble());
    }
    return pieces;
  }

  private static boolean[] all(int n) {
    boolean[] use = new boolean[n];
    Arrays.fill(use, true);
    return use;
  }

  private static Along along(
      SmallSets.Plain rule, String order, double[][] pieces, boolean[] valid) {
    return Along.compare(
        rule.assignments(), Orders.parse(order), pieces, valid, Drift.LINE, Sampling.PREFERRED);
  }

  private static double[] column(double[][] pieces, int piece, boolean running) {
    return Arrays.stream(pieces)
        .mapToDouble(stint -> running ? Arrays.stream(stint, 0, piece + 1).sum() : stint[piece])
        .toArray();
  }

  private static List<double[]> nuisance(int n, boolean[] use) {
    double[] one = new double[n];
    Arrays.fill(one, 1);
    double[] line = new double[n];
    Arrays.setAll(line, i -> i);
    return List.of(LeastSquares.rows(one, use), LeastSquares.rows(line, use));
  }

  private static double[] setups(String order, boolean[] use) {
    return LeastSquares.rows(
        order.chars().mapToDouble(letter -> letter == 'B' ? 0.5 : -0.5).toArray(), use);
  }

  /** Share of the squares of a piece's residuals that an order explains. */
  private static double share(List<double[]> nuisance, double[] z, double[] residual) {
    List<double[]> columns = new ArrayList<>(nuisance);
    columns.add(z);
    double before = LeastSquares.of(nuisance, residual).rss();
    return LeastSquares.of(nuisance, z).rss() < 1e-9
        ? 0
        : (before - LeastSquares.of(columns, residual).rss()) / before;
  }

  private static double[] residual(List<double[]> nuisance, double[] z, double[] y) {
    List<double[]> columns = new ArrayList<>(nuisance);
    columns.add(z);
    double[] beta = LeastSquares.of(columns, y).beta();
    double[] rest = y.clone();
    for (int k = 0; k < beta.length; k++) {
      for (int i = 0; i < rest.length; i++) {
        rest[i] -= beta[k] * columns.get(k)[i];
      }
    }
    return rest;
  }

  @ParameterizedTest
  @MethodSource("banded")
  void theBandsAreThoseOfARegressionForEveryOrder(SmallSets.Plain rule) {
    List<String> orders = SmallSets.filtered(rule);
    int n = rule.stints();
    String ridden = orders.get(random.nextInt(orders.size()));
    double[][] pieces = pieces(n);
    boolean[] use = all(n);
    if (n > 8) {
      pieces[3][2] = Double.NaN;
      use[3] = false;
    }
    Along found = along(rule, ridden, pieces, all(n));
    List<double[]> nuisance = nuisance(n, use);
    double[] z = setups(ridden, use);
    double c = LeastSquares.of(nuisance, z).rss();
    for (boolean running : new boolean[] {false, true}) {
      List<double[]> residuals = new ArrayList<>();
      for (int j = 0; j < PIECES; j++) {
        residuals.add(residual(nuisance, z, LeastSquares.rows(column(pieces, j, running), use)));
      }
      double[] largest =
          orders.stream()
              .mapToDouble(
                  order ->
                      residuals.stream()
                          .mapToDouble(e -> share(nuisance, setups(order, use), e))
                          .max()
                          .orElseThrow())
              .sorted()
              .toArray();
      double limit = largest[largest.length - 1 - (int) Math.floor(.05 * largest.length + 1e-9)];
      int df = z.length - 3;
      Along.Band band = running ? found.cumulative() : found.pieces();
      for (int j = 0; j < PIECES; j++) {
        double squares = Arrays.stream(residuals.get(j)).map(e -> e * e).sum();
        assertThat(band.halfWidths()[j])
            .isCloseTo(
                Math.sqrt(df * limit / (1 - limit)) * Math.sqrt(squares / df / c), within(1e-8));
      }
    }
  }

  @Test
  void aPieceWithoutVariationIsLeftOutAndTheOthersKeepTheirBand() {
    double[][] pieces = pieces(12);
    double[][] without = new double[12][PIECES - 1];
    for (int i = 0; i < 12; i++) {
      pieces[i][0] = 7;
      without[i] = Arrays.copyOfRange(pieces[i], 1, PIECES);
    }
    Along found = along(SmallSets.BLOCK4_12, "ABBABABAABAB", pieces, all(12));
    Along less = along(SmallSets.BLOCK4_12, "ABBABABAABAB", without, all(12));
    assertThat(found.pieces().halfWidths()[0]).isNaN();
    assertThat(found.cumulative().halfWidths()[0]).isNaN();
    assertThat(found.pieces().halfWidths()[1])
        .isCloseTo(less.pieces().halfWidths()[0], within(1e-9));
    assertThat(found.cumulative().halfWidths()[4])
        .isCloseTo(less.cumulative().halfWidths()[3], within(1e-9));
  }

  @Test
  void theWholeTrailIsTheSumOfItsPieces() {
    double[][] pieces = pieces(12);
    Along found = along(SmallSets.BLOCK4_12, "ABBABABAABAB", pieces, all(12));
    TwoSetups whole =
        TwoSetups.compare(
            SmallSets.BLOCK4_12.assignments(),
            Orders.parse("ABBABABAABAB"),
            column(pieces, PIECES - 1, true),
            all(12),
            Nuisance.of(Drift.LINE),
            Sampling.PREFERRED);
    assertThat(found.cumulative().estimates()[PIECES - 1])
        .isCloseTo(whole.estimate(), within(1e-9));
    assertThat(Arrays.stream(found.pieces().estimates()).sum())
        .isCloseTo(whole.estimate(), within(1e-9));
  }

  @Test
  void aSetOfFewOrdersHasNoBand() {
    SmallSets.Plain abba = new SmallSets.Plain(2, 12, 4, List.of("ABBA", "BAAB"), 0, 0);
    Along found = along(abba, "ABBABAABABBA", pieces(12), all(12));
    assertThat(found.pieces().halfWidths()).containsOnly(Double.NaN);
    assertThat(found.pAdjusted()).hasSize(PIECES);
  }

  @Test
  void stintsWithUnlikeNumbersOfPiecesAreRefused() {
    double[][] uneven = pieces(12);
    uneven[4] = new double[] {1, 2};
    refused("pieces[4]", () -> along(SmallSets.BLOCK4_12, "ABBABABAABAB", uneven, all(12)));
    refused("pieces", () -> along(SmallSets.BLOCK4_12, "ABBABABAABAB", pieces(9), all(12)));
  }
}
