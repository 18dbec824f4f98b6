package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrialsPowerTest {
  /** Power and chance of "cannot" for which the default numbers of trials were chosen. */
  @ParameterizedTest
  @CsvSource({
    "TRIANGLE, 15, 9, .80, .78",
    "DUO_TRIO, 24, 17, .77, .70",
    "TWO_CHOICE, 24, 17, .77, .70",
  })
  void theUsualNumbersOfTrialsShowWhatTheyAreChosenFor(
      Discrimination task, int trials, int least, double power, double cannot) {
    TrialsPower shown = TrialsPower.of(trials, task.chance(), 0.5);

    assertThat(shown.least()).hasValue(least);
    assertThat(shown.power()).isCloseTo(power, within(.005));
    assertThat(shown.cannot()).isCloseTo(cannot, within(.005));
  }

  @ParameterizedTest
  @CsvSource({"TRIANGLE, .624", "TWO_CHOICE, .368"})
  void twelveTrialsSeldomShowThatNothingIsFelt(Discrimination task, double cannot) {
    assertThat(TrialsPower.of(12, task.chance(), 0.5).cannot()).isCloseTo(cannot, within(.005));
  }

  /** Least numbers of right answers at .05, as printed in the tables of ISO 4120 and ISO 10399. */
  @ParameterizedTest
  @CsvSource({
    "TRIANGLE, 6, 5",
    "TRIANGLE, 12, 8",
    "TRIANGLE, 18, 10",
    "TRIANGLE, 24, 13",
    "TRIANGLE, 30, 15",
    "TRIANGLE, 36, 18",
    "DUO_TRIO, 6, 6",
    "DUO_TRIO, 12, 10",
    "DUO_TRIO, 18, 13",
    "DUO_TRIO, 24, 17",
    "DUO_TRIO, 30, 20",
    "DUO_TRIO, 36, 24"
  })
  void leastNumbersAreThoseOfThePrintedTables(Discrimination task, int trials, int least) {
    assertThat(TrialsPower.of(trials, task.chance(), 0.5).least()).hasValue(least);
  }

  /** The limit worked out by the beta distribution instead, as Clopper and Pearson put it. */
  @ParameterizedTest
  @CsvSource({"TRIANGLE, .5", "TRIANGLE, .3", "TWO_CHOICE, .5", "TWO_CHOICE, .7", "DUO_TRIO, 1"})
  void cannotIsTheSameByLimitsFromTheBetaDistribution(Discrimination task, double share) {
    double chance = task.chance();
    for (int trials = 1; trials <= 60; trials++) {
      BinomialDistribution nothing = new BinomialDistribution(trials, chance);
      double sum = 0;
      for (int x = 0; x <= trials; x++) {
        double upper =
            x == trials
                ? 1
                : new BetaDistribution(x + 1, trials - x).inverseCumulativeProbability(.95);
        boolean plain =
            1 - nothing.cumulativeProbability(x - 1) > .05
                && nothing.cumulativeProbability(x) > .05;
        sum += plain && (upper - chance) / (1 - chance) < share ? nothing.probability(x) : 0;
      }
      assertThat(TrialsPower.of(trials, chance, share).cannot())
          .as("%s of %s", trials, task)
          .isCloseTo(sum, within(1e-9));
    }
  }

  @Test
  void tooFewTrialsShowNothing() {
    TrialsPower two = TrialsPower.of(2, 1.0 / 3, 0.5);
    assertThat(two.least()).isEmpty();
    assertThat(two.power()).isZero();
    assertThat(two.smallestP()).isCloseTo(1.0 / 9, within(1e-15));
    assertThat(TrialsPower.of(3, 1.0 / 3, 0.5).least()).hasValue(3);
    assertThat(TrialsPower.of(4, 0.5, 0.5).least()).isEmpty();
    assertThat(TrialsPower.of(5, 0.5, 0.5).least()).hasValue(5);
  }

  @Test
  void impossibleValuesAreNamed() {
    assertThatThrownBy(() -> TrialsPower.of(0, 0.5, 0.5)).isInstanceOf(StatsException.class);
    assertThatThrownBy(() -> TrialsPower.of(9, 0.5, 0)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> TrialsPower.of(9, 0.5, 1.1)).isInstanceOf(StatsException.class);
  }
}
