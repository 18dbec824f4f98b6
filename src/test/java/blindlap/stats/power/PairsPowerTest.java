package blindlap.stats.power;

import static blindlap.stats.Refusals.refused;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.stats.compare.ManySetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Simulated days of three and four setups. */
class PairsPowerTest {
  private static PairsPower day(int setups, int stints) {
    return PairsPower.of(Assignments.rule(setups, stints).block(setups).build(), Drift.LINE);
  }

  /** docs/method.md#figures-of-pairs: a named pair told apart, and "they differ". */
  @ParameterizedTest
  @CsvSource({"3, 12, .214, .344", "3, 18, .438, .615", "4, 16, .202, .381"})
  void powerAgreesWithTheMethodsTable(int setups, int stints, double pair, double differ) {
    SimulatedPairs days = day(setups, stints).simulate(new double[] {0, 1.5}, 600, 4, () -> false);

    // Three standard errors of 600 days, and of the 10,000 of the page.
    assertThat(days.odds(1).pair()).isCloseTo(pair, within(0.065));
    assertThat(days.odds(1).differ()).isCloseTo(differ, within(0.065));
    assertThat(days.odds(0).differ()).isCloseTo(0.05, within(0.03));
    assertThat(days.odds(0).wrong()).isCloseTo(0.05, within(0.03));
    assertThat(days.odds(0).pair()).isZero();
  }

  @Test
  void everyDayIsTestedAsTheSessionWillBe() {
    // The second way: ManySetups over the whole set, for single days with the very same noise.
    Assignments set = Assignments.rule(3, 9).block(3).build();
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(9L);
    boolean[] valid = new boolean[9];
    Arrays.fill(valid, true);
    double[] differences = {0, 1, 2.5, 5};
    for (int trial = 0; trial < 40; trial++) {
      int[] order = set.random(source);
      double[] noise = source.doubles(9).toArray();
      PairsDay day = new PairsDay(set, Drift.LINE, differences);
      day.begin(order, noise);
      set.forEach(day::count);
      day.end();
      for (int step = 0; step < differences.length; step++) {
        double[] y = noise.clone();
        for (int i = 0; i < 9; i++) {
          y[i] += order[i] == 0 ? differences[step] : 0;
        }
        ManySetups whole =
            ManySetups.compare(set, order, y, valid, Nuisance.of(Drift.LINE), Sampling.PREFERRED);
        boolean moved = differences[step] > 0;
        long apart =
            whole.pairs().stream()
                .filter(p -> p.first() == 0 && moved)
                .filter(p -> p.pAdjusted() <= 0.05)
                .count();
        assertThat(day.tally()[0][step]).isEqualTo(whole.p() <= 0.05 ? 1 : 0);
        assertThat(day.tally()[1][step]).isEqualTo(apart);
      }
    }
  }

  @Test
  void theDifferenceSeenLiesNearTheApproximationAndScalesWithTheNoise() {
    PairsPower day = day(3, 18);
    double[] ladder = day.ladder(0.8);
    SimulatedPairs days = day.simulate(ladder, 500, 5, () -> false);

    double found = days.difference(1, 0.8, 0);
    assertThat(found).isCloseTo(day.approximation().difference(1, 0.8), within(0.25));
    assertThat(days.difference(0.5, 0.8, 0)).isCloseTo(found / 2, within(1e-12));
    Interval error = days.differenceError95(1, 0.8, 0);
    assertThat(error.low()).isLessThan(found);
    assertThat(error.high()).isGreaterThan(found);
    assertThat(error.halfWidth()).isLessThan(0.2);
  }

  /** Where few orders share 5 % with many that ride one setup alike, no difference helps. */
  @ParameterizedTest
  @CsvSource({"3, 9, .25", "4, 8, .1667", "4, 12, .7778", "3, 12, 1", "3, 15, 1", "4, 16, 1"})
  void thePowerOfALargeDifferenceIsThatOfTheOrdersThatRideItAlike(
      int setups, int stints, double most) {
    PairsPower day = day(setups, stints);
    double found = day.simulate(new double[] {60}, 300, 6, () -> false).odds(0).pair();

    assertThat(day.approximation().mostPower()).isCloseTo(most, within(0.0001));
    assertThat(found).isLessThan(most + 0.05);
    assertThat(found).isGreaterThan(most - 0.25);
    assertThat(Double.isNaN(day.approximation().difference(1, 0.8))).isEqualTo(most < 0.8);
  }

  @Test
  void daysOfSeveralRunsAreJoined() {
    PairsPower day = day(3, 12);
    double[] differences = {0, 2};
    SimulatedPairs first = day.simulate(differences, 100, 1, () -> false);
    SimulatedPairs second = day.simulate(differences, 300, 2, () -> false);

    SimulatedPairs both = first.and(second);
    assertThat(both.days()).isEqualTo(400);
    assertThat(both.odds(1).pair())
        .isCloseTo((first.odds(1).pair() + 3 * second.odds(1).pair()) / 4, within(1e-12));
    assertThatThrownBy(() -> first.and(day.simulate(new double[] {0, 1}, 1, 1, () -> false)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aSetThatCanNeverRejectFindsNothing() {
    // docs/method.md#figures-of-pairs: the bare Williams square of four setups, relabelled, has p
    // of
    // .167 at least.
    Assignments square =
        Assignments.rule(4, 4).block(4).patterns(List.of("ABCD", "BADC", "CDAB", "DCBA")).build();
    assertThat(square.closedUnderRenaming()).isFalse();
    refused("rule", () -> PairsPower.of(square, Drift.LINE));
    SimulatedPairs days = day(3, 6).simulate(new double[] {8}, 50, 1, () -> false);
    assertThat(days.odds(0).pair()).isZero();
    assertThat(days.difference(1, 0.8, 0)).isNaN();
  }

  @Test
  void itStopsWhenNoLongerWanted() {
    assertThatThrownBy(() -> day(3, 18).simulate(new double[] {1}, 1_000_000, 1, () -> true))
        .isInstanceOf(CancellationException.class);
    refused("days", () -> day(3, 18).simulate(new double[] {1}, 0, 1, () -> false));
    refused("differences", () -> day(3, 18).simulate(new double[] {-1}, 1, 1, () -> false));
  }
}
