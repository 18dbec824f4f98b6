package blindlap.stats.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.compare.Residuals;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.stat.correlation.Covariance;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** Degrees of freedom that the draw of the order gives the test. */
class OrderFreedomTest {
  private static double df(Assignments set, Drift drift) {
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return OrderFreedom.of(set, new Residuals(all, drift));
  }

  @Test
  void pairsAreThePairedTTest() {
    // n pairs leave n - 1 degrees of freedom: any textbook on the paired t test.
    for (int pairs = 6; pairs <= 12; pairs++) {
      Assignments set = Assignments.rule(2, 2 * pairs).block(2).build();
      assertThat(df(set, Drift.NONE)).isCloseTo(pairs - 1, within(1e-9));
    }
  }

  @Test
  void blocksAreTheTTestWithBlocksRemoved() {
    // N - blocks - 1, as in the analysis of variance of a randomised block design.
    assertThat(df(Assignments.rule(2, 16).block(4).build(), Drift.NONE))
        .isCloseTo(16 - 4 - 1, within(1e-9));
    assertThat(df(Assignments.rule(2, 24).block(6).build(), Drift.NONE))
        .isCloseTo(24 - 4 - 1, within(1e-9));
  }

  @Test
  void theWholeDayShuffleKeepsAllThatDriftLeaves() {
    Assignments set = Assignments.rule(2, 14).build();
    for (Drift drift : Drift.values()) {
      assertThat(df(set, drift)).isCloseTo(14 - drift.columns() - 1, within(1e-9));
    }
  }

  @Test
  void itIsThatOfGoingThroughAllOrders() {
    UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(3L);
    for (SmallSets.Plain rule : SmallSets.all()) {
      if (rule.setups() != 2) {
        continue;
      }
      List<String> orders = SmallSets.filtered(rule);
      double[][] rows =
          orders.stream()
              .map(o -> o.chars().mapToDouble(c -> c == 'B' ? 1 : 0).toArray())
              .toArray(double[][]::new);
      RealMatrix covariance = new Covariance(rows, false).getCovarianceMatrix();
      for (Drift drift : Drift.values()) {
        boolean[] use = new boolean[rule.stints()];
        Arrays.fill(use, true);
        use[random.nextInt(use.length)] = random.nextBoolean();
        Residuals residuals = new Residuals(use, drift);
        RealMatrix w = new Array2DRowRealMatrix(residuals.matrix());
        RealMatrix m = w.multiply(covariance).multiply(w);
        double trace = m.getTrace();
        double expected = trace * trace / m.multiply(m).getTrace() - 1;
        assertThat(OrderFreedom.of(rule.assignments(), residuals))
            .as("%s %s", rule, drift)
            .isCloseTo(Math.max(1, expected), within(1e-9));
      }
    }
  }

  @Test
  void itIsNeverMoreThanTheResidualsHave() {
    for (int stints = 8; stints <= 24; stints += 2) {
      for (int run = 2; run <= 4; run++) {
        Assignments set = Assignments.rule(2, stints).maxRun(run).build();
        Detectable day = Detectable.of(set, Drift.LINE, Sampling.PREFERRED);
        assertThat(day.orderDf()).isBetween(1.0, day.df() + 1e-9);
      }
    }
    // The fewer orders the run limit leaves, the less the test learns of the noise.
    assertThat(df(Assignments.rule(2, 16).maxRun(2).build(), Drift.LINE))
        .isLessThan(df(Assignments.rule(2, 16).maxRun(3).build(), Drift.LINE));
  }

  @Test
  void aSetOfOneOrderAndItsMirrorHasNone() {
    assertThat(df(Assignments.listed(List.of("ABBABA", "BAABAB")), Drift.LINE)).isEqualTo(1);
  }
}
