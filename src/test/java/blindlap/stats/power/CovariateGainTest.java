package blindlap.stats.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CovariateGainTest {
  private static final int DAYS = Integer.getInteger("days", 250);

  @ParameterizedTest
  @CsvSource({".85, -.45", ".7, -.25", ".5, -.10", "0, .04"})
  void theFormulaGivesTheFiguresOfThePage(double r, double change) {
    // docs/method.md#covariates, printed without decimals of a per cent
    assertThat(CovariateGain.factor(16, 2, 2, List.of(r)) - 1).isCloseTo(change, within(.005));
  }

  /** Half of the upper end of the interval less the lower: what a day of this order can show. */
  @ParameterizedTest
  @CsvSource({".85", ".7", ".5", "0"})
  void daysSimulatedWithTheTestGainAsMuch(double r) {
    Assignments set = Assignments.rule(2, 16).block(4).build();
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(41);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    boolean[] all = new boolean[16];
    Arrays.fill(all, true);
    List<Double> with = new ArrayList<>();
    List<Double> without = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      double[] x = new double[16];
      double[] y = new double[16];
      for (int i = 0; i < 16; i++) {
        x[i] = normal.sample();
        y[i] = r * x[i] + Math.sqrt(1 - r * r) * normal.sample();
      }
      int[] order = set.random(source);
      with.add(reach(set, order, y, all, Nuisance.of(Drift.LINE, List.of(x))));
      without.add(reach(set, order, y, all, Nuisance.of(Drift.LINE)));
    }
    // The difference that is shown on 8 of 10 days: above it the lower limit is above nothing.
    double ratio = eightOfTen(with) / eightOfTen(without);
    double error = 3 * 1.4 / Math.sqrt(DAYS) * Math.sqrt(1 - r * r / 2);
    assertThat(ratio).isCloseTo(CovariateGain.factor(16, 2, 2, List.of(r)), within(error));
  }

  /** How far the true difference, 0 here, must be moved for the lower limit to pass 0. */
  private static double reach(
      Assignments set, int[] order, double[] y, boolean[] all, Nuisance nuisance) {
    return -TwoSetups.compare(set, order, y, all, nuisance, Sampling.PREFERRED)
        .curve()
        .interval(0.95)
        .orElseThrow()
        .low();
  }

  private static double eightOfTen(List<Double> reaches) {
    Collections.sort(reaches);
    return reaches.get((int) (0.8 * reaches.size()));
  }

  @Test
  void withoutADegreeOfFreedomThereIsNone() {
    assertThat(CovariateGain.factor(4, 2, 2, List.of(.5))).isNaN();
    assertThat(CovariateGain.factor(16, 2, 2, List.of())).isEqualTo(1);
  }

  @Test
  void anImpossibleCorrelationIsRefused() {
    for (double r : new double[] {-.1, 1, Double.NaN}) {
      assertThatThrownBy(() -> CovariateGain.factor(16, 2, 2, List.of(r)))
          .isInstanceOf(StatsException.class)
          .hasMessageContaining("correlation");
    }
  }
}
