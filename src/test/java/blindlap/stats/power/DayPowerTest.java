package blindlap.stats.power;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.SmallSets;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DayPowerTest {
  private static DayPower blocks(int stints) {
    return DayPower.of(SmallSets.Plain.blocks(2, stints, 4).assignments(), Drift.LINE);
  }

  @Test
  void simulatedDaysAgreeWithTheDesignTable() {
    // docs/method.md#figures-of-rules, simulated there with 10 000 days.
    assertThat(blocks(12).simulate(3000, 1, () -> false).difference(1, 0.8))
        .isCloseTo(1.91, within(0.06));
    assertThat(blocks(16).simulate(3000, 2, () -> false).difference(1, 0.8))
        .isCloseTo(1.54, within(0.05));
    DayPower short8 = DayPower.of(SmallSets.SHORT_8.assignments(), Drift.LINE);
    assertThat(short8.simulate(5000, 3, () -> false).difference(1, 0.8))
        .isCloseTo(2.94, within(0.12));
  }

  @Test
  void aShiftedCurveDecidesAsANewAnalysisOfShiftedDataDoes() {
    Assignments set = SmallSets.BLOCK4_12.assignments();
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(4L);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    int days = 400;
    double shift = 1.2;
    double margin = 1.5;
    double sd = 0.7;
    int rejected = 0;
    int[] verdicts = new int[Verdict.values().length];
    boolean[] all = new boolean[12];
    Arrays.fill(all, true);
    for (int day = 0; day < days; day++) {
      double[] noise = new double[12];
      for (int i = 0; i < 12; i++) {
        noise[i] = sd * normal.sample();
      }
      int[] order = set.random(source);
      source.nextLong();
      for (double sign : new double[] {1, -1}) {
        double[] y = noise.clone();
        for (int i = 0; i < 12; i++) {
          y[i] += sign * shift * order[i];
        }
        TwoSetups found = TwoSetups.compare(set, order, y, all, Drift.LINE, Sampling.PREFERRED);
        rejected += found.curve().p(0) <= 0.05 ? 1 : 0;
        verdicts[found.verdict(-margin, margin).ordinal()]++;
      }
    }
    SimulatedDays simulated = DayPower.of(set, Drift.LINE).simulate(days, 4L, () -> false);
    assertThat(simulated.power(shift, sd)).isCloseTo(rejected / (2.0 * days), within(1e-12));
    for (Verdict verdict : Verdict.values()) {
      assertThat(simulated.odds(shift, margin, sd).of(verdict))
          .as(verdict.text())
          .isCloseTo(verdicts[verdict.ordinal()] / (2.0 * days), within(1e-12));
    }
  }

  @Test
  void theSameSeedGivesTheSameDaysAndMoreDaysRefineThem() {
    SimulatedDays one = blocks(12).simulate(300, 5, () -> false);
    assertThat(blocks(12).simulate(300, 5, () -> false).difference(1, 0.8))
        .isEqualTo(one.difference(1, 0.8));
    SimulatedDays both = one.and(blocks(12).simulate(900, 6, () -> false));
    assertThat(both.days()).isEqualTo(1200);
    assertThat(both.error(0.8)).isCloseTo(one.error(0.8) / 2, within(1e-12));
    Interval error = both.differenceError95(1, 0.8);
    assertThat(both.difference(1, 0.8)).isBetween(error.low(), error.high());
  }

  @Test
  void oddsByFormulaAndSimulationAgreeFromTwoHundredOrdersOn() {
    oddsAgree(blocks(16));
    oddsAgree(DayPower.of(SmallSets.Plain.blocks(2, 16, 2).assignments(), Drift.LINE));
  }

  private static void oddsAgree(DayPower day) {
    SimulatedDays days = day.simulate(4000, 7, () -> false);
    for (double difference : new double[] {0, 0.75, 1.5, 3}) {
      VerdictOdds simulated = days.odds(difference, 1.5, 1);
      VerdictOdds approximate = day.odds(difference, 1.5, 1);
      for (Verdict verdict : Verdict.values()) {
        assertThat(simulated.of(verdict)).isCloseTo(approximate.of(verdict), within(0.025));
      }
    }
  }

  /** Every kind of rule and drift; the bound is 3 % and what simulation leaves open. */
  @ParameterizedTest
  @CsvSource({
    "16, 2, 0, 0", "20, 2, 0, 0", "12, 4, 0, 0", "16, 4, 0, 0", "24, 4, 0, 0", "18, 6, 0, 0",
    "12, 12, 2, 0", "16, 16, 2, 0", "16, 16, 3, .8", "16, 4, 3, 0", "12, 12, 0, 0", "16, 16, 0, 0",
  })
  void theFormulaIsWithinThreePercentOfSimulation(
      int stints, int block, int maxRun, double leastEfficiency) {
    Assignments set =
        Assignments.rule(2, stints)
            .block(block)
            .maxRun(maxRun)
            .minTrendEfficiency(leastEfficiency)
            .build();
    for (Drift drift : Drift.values()) {
      DayPower day = DayPower.of(set, drift);
      SimulatedDays days = day.simulate(3000, 21, () -> false);
      double formula = day.formula().difference(1, 0.8);
      Interval error = days.differenceError95(1, 0.8);
      assertThat(formula)
          .as("%s", drift)
          .isBetween(0.97 * error.low(), 1.03 * error.high())
          .isCloseTo(days.difference(1, 0.8), within(0.04 * formula));
    }
  }

  @Test
  void oddsByFormulaAreCloseToTheVerdictTable() {
    // docs/method.md#figures-of-verdicts, in per cent: worthwhile/small/none/direction/open
    odds(16, 1.5, 0, 0, 1, 74, 4, 21);
    odds(16, 1.5, 1.5, 5, 1, 4, 72, 18);
    odds(16, 1, 2, 59, 0, 0, 36, 5);
    odds(24, 2, 1, 0, 40, 36, 23, 1);
    odds(12, 2, 0, 0, 3, 82, 2, 14);
    odds(24, 1, 0.5, 0, 0, 28, 21, 50);
  }

  private static void odds(int stints, double margin, double difference, double... percent) {
    VerdictOdds found = blocks(stints).odds(difference, margin, 1);
    double[] shares = {
      found.worthwhile(), found.small(), found.none(), found.direction(), found.open()
    };
    assertThat(Arrays.stream(shares).sum()).isCloseTo(1, within(1e-9));
    for (int i = 0; i < shares.length; i++) {
      assertThat(100 * shares[i]).isCloseTo(percent[i], within(2.0));
    }
  }

  @Test
  void oddsScaleWithTheNoiseAndAreTheSameForBothDirections() {
    VerdictOdds one = blocks(16).odds(0.5, 1, 0.8);
    VerdictOdds large = blocks(16).odds(-5, 10, 8);
    assertThat(large.small()).isCloseTo(one.small(), within(1e-12));
    assertThat(large.open()).isCloseTo(one.open(), within(1e-12));
  }

  @Test
  void aPlanThatCannotReachFivePercentShowsNothing() {
    DayPower abba =
        DayPower.of(
            new SmallSets.Plain(2, 16, 4, List.of("ABBA", "BAAB"), 0, 0).assignments(), Drift.LINE);
    SimulatedDays days = abba.simulate(50, 8, () -> false);
    assertThat(days.power(5, 1)).isZero();
    assertThat(days.difference(1, 0.8)).isNaN();
    assertThat(abba.difference(1, 0.8, 50, 8, () -> false).difference()).isNaN();
    assertThat(abba.odds(3, 1, 1).open()).isCloseTo(1, within(1e-9));
  }

  @Test
  void smallSetsAreSimulatedAndLargeOnesAnsweredByFormula() {
    assertThat(blocks(16).difference(2, 0.8, 10, 1, () -> false).source())
        .isEqualTo(DayPower.Source.FORMULA);
    DayPower.Answer answer =
        DayPower.of(SmallSets.SHORT_8.assignments(), Drift.LINE)
            .difference(2, 0.8, 800, 1, () -> false);
    assertThat(answer.source()).isEqualTo(DayPower.Source.SIMULATION);
    assertThat(answer.error95().low()).isLessThan(answer.difference());
  }

  @Test
  void aNoiseThatIsItselfUncertainGivesARange() {
    Interval range = blocks(16).differenceRange(new RiderNoise(1, 9), 0.8);
    double exact = blocks(16).formula().difference(1, 0.8);
    assertThat(range.low()).isCloseTo(0.69 * exact, within(0.01));
    assertThat(range.high()).isCloseTo(1.83 * exact, within(0.01));
  }

  @Test
  void aSimulationStopsWhenItIsToldTo() {
    AtomicInteger asked = new AtomicInteger();
    assertThatThrownBy(() -> blocks(16).simulate(100_000, 1, () -> asked.incrementAndGet() > 20))
        .isInstanceOf(CancellationException.class);
    assertThat(asked.get()).isEqualTo(21);
    refused("days", () -> blocks(16).simulate(0, 1, () -> false));
  }

  @Test
  void aLargeSetIsSimulatedWithDrawnOrdersAtNearlyTheSamePower() {
    DayPower day = DayPower.of(SmallSets.Plain.blocks(2, 20, 4).assignments(), Drift.LINE);
    // docs/method.md#figures-of-rules: 1.35
    assertThat(day.simulate(2000, 9, () -> false).difference(1, 0.8)).isCloseTo(1.35, within(0.06));
    // The same for 24 stints shuffled whole, too many orders to be listed: 1.23
    DayPower whole = DayPower.of(Assignments.rule(2, 24).build(), Drift.LINE);
    assertThat(whole.simulate(1000, 9, () -> false).difference(1, 0.8))
        .isCloseTo(1.23, within(0.07));
  }

  @Test
  void lostStintsCostPower() {
    Assignments set = SmallSets.Plain.blocks(2, 16, 4).assignments();
    boolean[] left = new boolean[16];
    Arrays.fill(left, 0, 12, true);
    DayPower cut = DayPower.of(set, left, Drift.LINE);
    assertThat(cut.formula().difference(1, 0.8))
        .isGreaterThan(blocks(16).formula().difference(1, 0.8) + 0.2);
    assertThat(cut.simulate(800, 3, () -> false).difference(1, 0.8)).isCloseTo(1.9, within(0.15));
    Arrays.fill(left, 8, 12, false);
    DayPower eight = DayPower.of(set, left, Drift.LINE);
    assertThat(eight.formula().difference(1, 0.8)).isNaN();
    assertThat(eight.simulate(50, 3, () -> false).power(9, 1)).isZero();
  }
}
