package blindlap.stats.tell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.ProportionInterval;
import blindlap.stats.tell.TellingVerdict.Often;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class TellingTest {
  private static final List<Discrimination> TASKS =
      List.of(Discrimination.TRIANGLE, Discrimination.DUO_TRIO, Discrimination.TWO_CHOICE);

  private static JsonNode check(String id) throws IOException {
    String name = "/blindlap/checks/outside/" + id + ".json";
    try (InputStream in = TellingTest.class.getResourceAsStream(name)) {
      return new ObjectMapper().readTree(in);
    }
  }

  /**
   * Printed: FAO manual V7180E, appendix A, for triangles; else the exact binomial (see checks).
   */
  @ParameterizedTest
  @CsvSource({
    "E05-triangle-critical-2, TRIANGLE",
    "E06-duotrio-2afc-critical-2, DUO_TRIO",
    "E06-duotrio-2afc-critical-2, TWO_CHOICE"
  })
  void theLeastNumberRightIsThatOfTheTables(String id, Discrimination task) throws IOException {
    JsonNode check = check(id);
    JsonNode trials = check.at("/given/trials");
    assertThat(trials.size()).isGreaterThan(50);
    for (int i = 0; i < trials.size(); i++) {
      int least = check.at("/expect/minimum").get(i).asInt();
      TellingTrials run = TellingTrials.of(task, trials.get(i).asInt(), 0.5);
      assertThat(run.least()).as("%s trials", trials.get(i)).hasValue(least);
      assertThat(Telling.of(run, least).verdict()).isEqualTo(TellingVerdict.CAN_TELL);
      assertThat(Telling.of(run, least - 1).verdict()).isNotEqualTo(TellingVerdict.CAN_TELL);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "K02-triangle-power-1, TRIANGLE, 0.5",
    "K02-triangle-power-2, TRIANGLE, 0.4",
    "K02-triangle-power-3, TRIANGLE, 0.3",
    "K03-duotrio-power-1, DUO_TRIO, 0.5",
    "K03-duotrio-power-1, TWO_CHOICE, 0.5",
    "K03-duotrio-power-2, TWO_CHOICE, 0.3"
  })
  void thePowerIsThatOfTheTables(String id, Discrimination task, double matters)
      throws IOException {
    JsonNode check = check(id);
    JsonNode trials = check.at("/given/trials");
    for (int i = 0; i < trials.size(); i++) {
      if (trials.get(i).asInt() > TellingTrials.MOST) {
        continue; // longer than any run
      }
      TellingTrials run = TellingTrials.of(task, trials.get(i).asInt(), matters);
      assertThat(TellingPower.of(run).power())
          .isCloseTo(check.at("/expect/power").get(i).asDouble(), within(1e-9));
      assertThat(TellingPower.of(run).rates(matters).get(TellingVerdict.CAN_TELL))
          .isCloseTo(TellingPower.of(run).power(), within(1e-12));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "E08-dprime-estimates-1, TWO_CHOICE",
    "E08-dprime-estimates-3, TRIANGLE",
    "E08-dprime-estimates-4, DUO_TRIO"
  })
  void theDistanceIsThatOfTheChecks(String id, Discrimination task) throws IOException {
    JsonNode check = check(id);
    Telling told =
        Telling.of(
            task,
            check.at("/given/trials").asInt(),
            check.at("/given/correct").asInt(),
            TellingTrials.USUAL_SHARE);
    assertThat(told.sensitivity().dPrime())
        .isCloseTo(check.at("/expect/d_prime").asDouble(), within(1e-7));
    assertThat(told.sensitivity().interval95().low())
        .isCloseTo(check.at("/expect/interval_95/0").asDouble(), within(1e-7));
    assertThat(told.sensitivity().interval95().high())
        .isCloseTo(check.at("/expect/interval_95/1").asDouble(), within(1e-7));
  }

  /** Worked with scipy 1.17: binom.sf and beta.ppf. */
  @Test
  void elevenOfFifteenTrianglesCanTellAndLeaveOpenHowOften() {
    Telling told = Telling.of(Discrimination.TRIANGLE, 15, 11, 0.5);
    assertThat(told.p()).isCloseTo(0.0018072, within(1e-7));
    assertThat(told.share()).isCloseTo(0.6, within(1e-12));
    assertThat(told.limits().low()).isCloseTo(0.233872, within(1e-6));
    assertThat(told.limits().high()).isCloseTo(0.855012, within(1e-6));
    assertThat(told.verdict()).isEqualTo(TellingVerdict.CAN_TELL);
    assertThat(told.often()).hasValue(Often.OPEN);
    assertThat(told.rightLimits(0.95).low()).isCloseTo(6.734951, within(1e-6));
    assertThat(told.rightLimits(0.95).high()).isCloseTo(13.831927, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({
    "TRIANGLE, 15, 15, 0.5, CAN_TELL, MORE",
    "TRIANGLE, 15, 11, 0.5, CAN_TELL, OPEN",
    "TRIANGLE, 15, 9, 0.9, CAN_TELL, LESS",
    "TRIANGLE, 100, 45, 0.5, CAN_TELL, LESS",
    "TRIANGLE, 15, 8, 0.5, NOT_SETTLED,",
    "TRIANGLE, 15, 5, 0.5, CANNOT_AS_OFTEN,",
    "TRIANGLE, 15, 1, 0.5, NOT_SETTLED,", // two or fewer of fifteen: .079; one or none: .019
    "TRIANGLE, 15, 2, 0.5, CANNOT_AS_OFTEN,",
    "TWO_CHOICE, 24, 12, 0.5, CANNOT_AS_OFTEN,",
    "TWO_CHOICE, 24, 7, 0.5, NOT_SETTLED,",
    "DUO_TRIO, 24, 17, 0.5, CAN_TELL, OPEN",
    "DUO_TRIO, 4, 4, 0.5, COULD_NOT_SHOW,",
    "TRIANGLE, 2, 2, 0.5, COULD_NOT_SHOW,",
    "TRIANGLE, 3, 3, 0.5, CAN_TELL, OPEN",
  })
  void verdictsFollowTheCount(
      Discrimination task,
      int trials,
      int right,
      double matters,
      TellingVerdict verdict,
      Often often) {
    Telling told = Telling.of(task, trials, right, matters);
    assertThat(told.verdict()).isEqualTo(verdict);
    assertThat(told.often().orElse(null)).isEqualTo(often);
    assertThat(told.fewer()).isEqualTo(told.pFewer() <= 0.05);
  }

  @Test
  void verdictsAreReadFromTheSameLimitsAsTheTail() {
    for (Discrimination task : TASKS) {
      for (int trials = 1; trials <= TellingTrials.MOST; trials++) {
        TellingTrials run = TellingTrials.of(task, trials, 0.5);
        for (int right = 0; right <= trials; right++) {
          Telling told = Telling.of(run, right);
          // A lower limit above nothing and a small tail are two ways to the same count.
          assertThat(told.limits().low() > 0)
              .as("%s: %d of %d", task, right, trials)
              .isEqualTo(told.verdict() == TellingVerdict.CAN_TELL);
          assertThat(told.limits().high()).isGreaterThanOrEqualTo(told.share());
          if (told.fewer()) {
            // All of the limits lie below guessing, so that both are cut to nothing.
            assertThat(told.limits().high()).isZero();
            assertThat(told.verdict()).isEqualTo(TellingVerdict.NOT_SETTLED);
          }
        }
      }
    }
  }

  @Test
  void nothingStrongerIsSaidOfFewerRightAnswers() {
    List<TellingVerdict> rising =
        List.of(
            TellingVerdict.CANNOT_AS_OFTEN, TellingVerdict.NOT_SETTLED, TellingVerdict.CAN_TELL);
    for (double matters : new double[] {0.2, 0.5, 0.9}) {
      for (Discrimination task : TASKS) {
        for (int trials = 5; trials <= 60; trials++) {
          TellingTrials run = TellingTrials.of(task, trials, matters);
          int before = 0;
          for (int right = 0; right <= trials; right++) {
            Telling told = Telling.of(run, right);
            if (!told.fewer()) {
              int now = rising.indexOf(told.verdict());
              assertThat(now).isGreaterThanOrEqualTo(before);
              before = now;
            }
          }
        }
      }
    }
  }

  /** Worked with scipy 1.17: sums of binom.pmf over beta.ppf limits. */
  @ParameterizedTest
  @CsvSource({
    "TRIANGLE, 15, 0.79696, 0.77755",
    "TRIANGLE, 12, 0.63152, 0.62381",
    "TWO_CHOICE, 24, 0.76620, 0.69741",
    "DUO_TRIO, 12, 0.39068, 0.36792"
  })
  void whatTrialsCanShowIsASumOverTheCounts(
      Discrimination task, int trials, double power, double cannot) {
    TellingTrials run = TellingTrials.of(task, trials, 0.5);
    assertThat(TellingPower.of(run).power()).isCloseTo(power, within(1e-5));
    assertThat(TellingPower.of(run).cannot()).isCloseTo(cannot, within(1e-5));
    assertThat(TellingTrials.usual(task)).isEqualTo(task == Discrimination.TRIANGLE ? 15 : 24);
  }

  private static List<TellingVerdict> verdicts(TellingTrials run) {
    return IntStream.rangeClosed(0, run.number())
        .mapToObj(right -> Telling.of(run, right).verdict())
        .toList();
  }

  /** Four standard errors of a simulated rate; one of these comparisons in 16 000 fails by luck. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.25, 0.5, 1})
  void everyVerdictComesUpAsOftenAsTheExactBinomialSays(double told) {
    int runs = 4000;
    for (Discrimination task : TASKS) {
      for (int trials : new int[] {2, 12, TellingTrials.usual(task), 60}) {
        Random random = new Random(Double.hashCode(told) + 31L * trials + task.ordinal());
        TellingTrials run = TellingTrials.of(task, trials, 0.5);
        List<TellingVerdict> verdicts = verdicts(run);
        Map<TellingVerdict, Double> seen = new EnumMap<>(TellingVerdict.class);
        for (int i = 0; i < runs; i++) {
          int right =
              TellingRiders.right(task, trials, told, TellingRiders.Habit.AT_RANDOM, random);
          seen.merge(verdicts.get(right), 1.0 / runs, Double::sum);
        }
        Map<TellingVerdict, Double> exact = TellingPower.of(run).rates(told);
        assertThat(exact.values().stream().mapToDouble(d -> d).sum()).isCloseTo(1, within(1e-12));
        for (TellingVerdict verdict : TellingVerdict.values()) {
          double rate = exact.getOrDefault(verdict, 0.0);
          double error = 4 * Math.sqrt(rate * (1 - rate) / runs) + 1e-9;
          assertThat(seen.getOrDefault(verdict, 0.0))
              .as("%s, %d trials, %s", task, trials, verdict)
              .isCloseTo(rate, within(error));
        }
      }
    }
  }

  /** Within two standard errors above .05 at most; the exact rate is below it for every habit. */
  @ParameterizedTest
  @EnumSource(TellingRiders.Habit.class)
  void whoeverCannotTellIsSaidToInAtMostOneRunOfTwentyWhateverTheHabits(TellingRiders.Habit habit) {
    int runs = 8000;
    for (Discrimination task : TASKS) {
      TellingTrials run = TellingTrials.of(task, TellingTrials.usual(task), 0.5);
      List<TellingVerdict> verdicts = verdicts(run);
      Random random = new Random(97L * habit.ordinal() + task.ordinal());
      int told = 0;
      for (int i = 0; i < runs; i++) {
        int right = TellingRiders.right(task, run.number(), 0, habit, random);
        told += verdicts.get(right) == TellingVerdict.CAN_TELL ? 1 : 0;
      }
      double exact = TellingPower.of(run).rates(0).get(TellingVerdict.CAN_TELL);
      assertThat(exact).isLessThanOrEqualTo(0.05);
      assertThat((double) told / runs)
          .as("%s, %s", task, habit)
          .isLessThanOrEqualTo(0.05)
          .isCloseTo(exact, within(4 * Math.sqrt(exact * (1 - exact) / runs)));
    }
  }

  @Test
  void impossibleRunsAreRefusedByName() {
    assertThatThrownBy(() -> Telling.of(Discrimination.TRIANGLE, 15, 16, 0.5))
        .isInstanceOf(StatsException.class)
        .hasMessage("correct: 16 is more than the 15 of \"trials\".");
    assertThatThrownBy(() -> Telling.of(Discrimination.TRIANGLE, 0, 0, 0.5))
        .hasMessageStartingWith("trials: must lie between 1 and 100");
    assertThatThrownBy(() -> Telling.of(Discrimination.TRIANGLE, 101, 0, 0.5))
        .hasMessageStartingWith("trials: must lie between 1 and 100");
    assertThatThrownBy(() -> Telling.of(Discrimination.TRIANGLE, 15, 5, 0))
        .hasMessageStartingWith("matters: must be above 0");
    assertThatThrownBy(() -> Telling.of(Discrimination.TRIANGLE, 15, 5, 1.1))
        .hasMessageStartingWith("matters: must lie between 0 and 1");
    assertThatThrownBy(() -> Telling.of(Discrimination.THREE_CHOICE, 15, 5, 0.5))
        .hasMessageStartingWith("task:");
    assertThatThrownBy(() -> ProportionInterval.exact(3, 5, 1))
        .hasMessageStartingWith("confidence:");
  }
}
