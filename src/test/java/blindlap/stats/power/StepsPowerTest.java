package blindlap.stats.power;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.Trend;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

/** What a day of levels can show: by formula, beside days simulated with the test itself. */
class StepsPowerTest {
  private static final double[] THREE = {4, 8, 6};

  private static Assignments blocks(int levels, int stints) {
    return Assignments.rule(levels, stints).block(levels).build();
  }

  private static double[] even(int levels) {
    double[] even = new double[levels];
    Arrays.setAll(even, i -> i);
    return even;
  }

  @Test
  void theInformationIsTheAverageVarianceOfTheEstimateOverAllOrders() {
    Assignments set = blocks(3, 9);
    boolean[] all = new boolean[9];
    Arrays.fill(all, true);
    double[] variance = new double[1];
    // The estimate is linear in the values: its variance is the sum of squared weights.
    set.forEach(
        order -> {
          for (int i = 0; i < 9; i++) {
            double[] one = new double[9];
            one[i] = 1;
            double weight =
                Trend.of(set, THREE, order, one, all, Nuisance.of(Drift.LINE), Sampling.PREFERRED)
                    .estimate();
            variance[0] += weight * weight / 216;
          }
        });
    assertThat(StepsPower.of(set, THREE, Drift.LINE).trend().formula().unitError())
        .isCloseTo(Math.sqrt(variance[0]), within(1e-9));
  }

  @Test
  void formulaAndSimulationAgreeOnTheDifferenceFromEndToEnd() {
    for (int[] day : new int[][] {{3, 12}, {4, 16}, {6, 12}}) {
      DayPower power = StepsPower.of(blocks(day[0], day[1]), even(day[0]), Drift.LINE).trend();
      SimulatedDays simulated = power.simulate(1500, 3, () -> false);
      assertThat(power.formula().difference(1, 0.8))
          .as("%d levels, %d stints", day[0], day[1])
          .isCloseTo(simulated.difference(1, 0.8), within(0.05 * simulated.difference(1, 0.8)));
    }
  }

  @Test
  void aBendOfTheHeightOfTheFormulaIsSeenAsOftenAsItSays() {
    int days = 800;
    for (int[] day : new int[][] {{3, 12}, {5, 10}}) {
      Assignments set = blocks(day[0], day[1]);
      double[] levels = even(day[0]);
      StepsPower power = StepsPower.of(set, levels, Drift.LINE);
      double height = power.bend(1, 0.8);
      assertThat(power.bendPower(height, 1)).isCloseTo(0.8, within(1e-6));
      assertThat(power.bend(2, 0.8)).isCloseTo(2 * height, within(1e-9));
      UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(4);
      ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
      boolean[] all = new boolean[day[1]];
      Arrays.fill(all, true);
      int seen = 0;
      for (int i = 0; i < days; i++) {
        int[] order = set.random(source);
        double[] y = new double[day[1]];
        for (int stint = 0; stint < y.length; stint++) {
          double along = levels[order[stint]] / (day[0] - 1) - 0.5;
          y[stint] = normal.sample() + height * (1 - 4 * along * along);
        }
        Sampling few = new Sampling(false, 499, i, 4096);
        Trend trend = Trend.of(set, levels, order, y, all, Nuisance.of(Drift.LINE), few);
        seen += trend.bend().orElseThrow().real() ? 1 : 0;
      }
      double error = Math.sqrt(0.8 * 0.2 / days);
      assertThat((double) seen / days)
          .as("%d levels", day[0])
          .isCloseTo(0.8, within(0.03 + 3 * error));
    }
  }

  @Test
  void ofTwoLevelsItIsWhatTwoSetupsShowAndThereIsNoBend() {
    Assignments set = blocks(2, 12);
    StepsPower steps = StepsPower.of(set, new double[] {5, 3}, Drift.LINE);
    Detectable two = DayPower.of(set, Drift.LINE).formula();
    assertThat(steps.trend().formula().efficiency()).isCloseTo(two.efficiency(), within(1e-9));
    assertThat(steps.trend().formula().orderDf()).isCloseTo(two.orderDf(), within(1e-9));
    assertThat(steps.trend().formula().difference(3, 0.8))
        .isCloseTo(two.difference(3, 0.8), within(1e-9));
    assertThat(steps.bendPossible()).isFalse();
    assertThat(steps.bend(1, 0.8)).isNaN();
    assertThat(steps.bendPower(9, 1)).isZero();
  }

  @Test
  void aStepIsItsShareOfTheWholeRangeAndANewUnitChangesNothingElse() {
    Assignments set = blocks(3, 12);
    StepsPower steps = StepsPower.of(set, THREE, Drift.LINE);
    StepsPower scaled = StepsPower.of(set, new double[] {40, 80, 60}, Drift.LINE);
    assertThat(steps.perUnit(6)).isEqualTo(1.5);
    assertThat(scaled.perUnit(6)).isEqualTo(0.15);
    assertThat(scaled.trend().formula()).isEqualTo(steps.trend().formula());
    assertThat(scaled.bend(1, 0.8)).isCloseTo(steps.bend(1, 0.8), within(1e-9));
  }

  @Test
  void aDayTooShortForAnyLevelShowsNothing() {
    StepsPower short6 = StepsPower.of(blocks(3, 6), THREE, Drift.LINE);
    assertThat(short6.trend().formula().attainableLevel()).as("36 orders").isZero();
    assertThat(short6.trend().formula().difference(1, 0.8)).isNaN();
    assertThat(short6.bendPossible()).isFalse();
    StepsPower five = StepsPower.of(blocks(5, 5), even(5), Drift.NONE);
    assertThat(five.trend().formula().attainableLevel()).isCloseTo(.05, within(1e-12));
  }

  @Test
  void aDayThatEndsEarlyShowsLessAndAtFirstNothing() {
    Assignments set = blocks(3, 12);
    boolean[] left = new boolean[12];
    Arrays.fill(left, 0, 9, true);
    StepsPower nine = StepsPower.of(set, THREE, left, Drift.LINE);
    // Each of the 216 starts goes on in 6 ways, so that nothing but the count of ties is new.
    assertThat(nine.trend().formula().stints()).isEqualTo(9);
    assertThat(nine.trend().formula().difference(1, 0.8))
        .isGreaterThan(StepsPower.of(set, THREE, Drift.LINE).trend().formula().difference(1, 0.8));
    left[6] = left[7] = left[8] = false;
    StepsPower six = StepsPower.of(set, THREE, left, Drift.LINE);
    assertThat(six.trend().formula().attainableLevel()).as("2 in 36").isZero();
    assertThat(six.bendPossible()).isFalse();
  }

  @Test
  void levelsThatCannotBeFollowedAndDaysWithoutStintsAreRefused() {
    refused("levels", () -> StepsPower.of(blocks(3, 9), new double[] {1, 2, 2}, Drift.LINE));
    refused("levels", () -> StepsPower.of(blocks(3, 9), new double[] {1}, Drift.LINE));
    refused("rule", () -> StepsPower.of(blocks(3, 3), THREE, Drift.LINE));
    StepsPower steps = StepsPower.of(blocks(3, 9), THREE, Drift.LINE);
    refused("power", () -> steps.bend(1, 1));
    refused("sd", () -> steps.bend(0, 0.8));
  }
}
