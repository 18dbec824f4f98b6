package blindlap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanReader;
import blindlap.fault.Problem;
import blindlap.stats.tell.TrialsPower;
import blindlap.wording.day.DayWords;
import blindlap.wording.day.Problems;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TellingCheckTest {
  @Test
  void fifteenTrianglesAreFortyFiveStintsOfTrialsEachDrawnForItself() {
    Plan plan = TellingRuns.triangles();

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(PlanCheck.atOnce(plan, RuleBook.ofProgram()).whole()).isTrue();
    assertThat(plan.stints()).isEqualTo(45);
    assertThat(plan.rule()).isEqualTo(Rule.trials(TellingTask.TRIANGLE, 15));
    assertThat(plan.rule().assignments().count()).isEqualTo(BigInteger.valueOf(6).pow(15));
    assertThat(plan.title()).isEqualTo("Telling 9 clicks from 11 clicks");
    assertThat(Handlings.of(plan).perSetup()).isEqualTo(30);
    assertThat(new DayAnswers().quick(plan)).isEmpty();
    TrialsPower shows = java.util.Objects.requireNonNull(plan.telling()).shows();
    assertThat(shows.least()).hasValue(9);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "task: triangle",
        "task: Duo-Trio, trials: 30, matters: '0,4'",
        "task: two-choice, trials: 100, attribute: grip in corners, more: 11 clicks, matters: 1",
        "{}",
      })
  void theStoredFormReadsBackAndRuleAndStintsFollowFromTheTrials(String run) {
    Plan plan = Plans.with(TellingRuns.text(run.equals("{}") ? "" : run));
    TellingRun telling = java.util.Objects.requireNonNull(plan.telling());

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(plan.stints()).isEqualTo(telling.trials() * telling.task().laps());
    String stored = new String(PlanJson.bytes(plan), StandardCharsets.UTF_8);
    assertThat(PlanReader.stored(stored)).isEqualTo(plan);
  }

  @Test
  void thereAreAHundredTrialsAtMostWithACodeForEveryLap() {
    Plan plan = Plans.with(TellingRuns.text("trials: 100"));

    assertThat(PlanCheck.problems(plan)).isEmpty();
    assertThat(plan.stints()).isEqualTo(300);
  }

  /** Each is one problem, so one sentence. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "trials: 101 | TRIALS_RANGE",
        "trials: 0 | TRIALS_RANGE",
        "trials: 999999999 | TRIALS_RANGE",
        "trials: 2 | TRIALS_SHOW_NOTHING",
        "'task: duo trio, trials: 4' | TRIALS_SHOW_NOTHING",
        "matters: 0 | MATTERS_RANGE",
        "matters: 50 | MATTERS_RANGE",
        "'task: two choice, more: 9 clicks' | ATTRIBUTE_MISSING",
        "'task: two choice, attribute: grip' | MORE_UNKNOWN",
        "'task: two choice, attribute: grip, more: 12 clicks' | MORE_UNKNOWN",
        "attribute: grip | ATTRIBUTE_UNASKED",
        "more: 9 clicks | ATTRIBUTE_UNASKED",
      })
  void whatIsWrongWithTheTrialsIsSaidOnce(String run, PlanFault fault) {
    assertThat(Plans.faults(TellingRuns.text(run))).containsExactly(fault);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "change: two bikes;; bikes: {first: grey, second: green} | TELLING_TWO_BIKES",
        "series: s-1 | TELLING_IN_SERIES",
        "looks: [15] | TELLING_WITH_LOOKS",
        "covariates: [{name: wind, kind: free, unit: m/s, reason: no setup}] |"
            + " TELLING_WITH_COVARIATES",
        "measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1}] |"
            + " TELLING_MEASURE",
        "blinding: {level: masked} | TELLING_NEEDS_HELPER",
        "blinding: {level: open} | TELLING_NEEDS_HELPER",
        "blinding: {guesses: no} | TELLING_ANSWERS",
        "laps: {settling: 1} | TELLING_LAPS",
        "laps: {scored: 2} | TELLING_LAPS",
        "protocol: blocks-of-four;; stints: 45 | TELLING_RULE",
        "stints: 44 | TELLING_STINTS",
        "setups: [{name: A}, {name: B}, {name: C}] | TELLING_TWO_SETUPS",
        "setups: [{name: A}] | TOO_FEW_SETUPS",
        "telling_run: null | TELLING_MISSING",
        "kind: noise run | TELLING_UNASKED",
      })
  void whatHasNoPlaceInATellingRunIsSaidOnce(String fields, PlanFault fault) {
    String typed = TellingRuns.text("task: triangle");
    String yaml =
        typed.lines().filter(line -> !given(line, fields)).reduce("", (a, b) -> a + b + "\n");

    assertThat(Plans.faults(yaml + fields.replace(";; ", "\n")))
        .contains(fault)
        .allMatch(each -> each == fault || fault == PlanFault.TELLING_UNASKED);
  }

  private static boolean given(String line, String fields) {
    String[] names = fields.replace(";; ", "\n").split("\n", -1);
    for (String name : names) {
      String field = name.substring(0, name.indexOf(':'));
      if (line.startsWith(field + ":") || field.equals("setups") && line.startsWith("  {name")) {
        return true;
      }
    }
    return false;
  }

  private static final String DAY =
      "timetable: {start: '09:00', daylight_end: '%s', lap: 2, climb: 3, swap: 4, scoring: 1%s}\n";

  private static Plan day(String end, String more) {
    String typed = TellingRuns.text("trials: 15");
    return Plans.with(typed.replace("timetable: null\n", DAY.formatted(end, more)));
  }

  /** Warm-up 14 min; 45 laps of 9 min; an answer of 1 min after every third of them. */
  @Test
  void onlyTheLastLapOfATrialIsAnsweredAndADayTooLongHasFewerTrials() {
    Schedule schedule = Schedule.of(day("20:00", "")).orElseThrow();
    assertThat(Duration.between(schedule.start(), schedule.end()).toMinutes())
        .isEqualTo(14 + 45 * 9 + 15);

    Plan late = day("15:00", "");
    assertThat(Schedule.waysToFit(late))
        .extracting(Schedule.Way::drop, Schedule.Way::left)
        .containsExactly(Tuple.tuple(Schedule.Drop.TRIALS, 12));
    assertThat(Problems.sentence(PlanCheck.problems(late).get(0))).contains("ride 12 trials");
    assertThat(DayWords.dark(late, Schedule.of(late).orElseThrow()))
        .get()
        .asString()
        .startsWith("Trials 13 to 15 fall into the dark");
    assertThat(DayWords.stints(late, schedule).get(1))
        .isEqualTo("Trial 2: first handling at 09:42, riding from 09:46, answered by 10:10.");
    assertThat(Schedule.mostStints(day("23:59", ""))).isEqualTo(93);
  }

  @Test
  void measuresBesideTheAnswersAreAskedForLapByLap() {
    String typed =
        TellingRuns.text("trials: 15").replace("timetable: null\n", DAY.formatted("20:00", ""));
    Plan plan =
        Plans.with(
            typed.replace(
                "measures: null", "measures: [{name: lap time, kind: lap time, unit: s}]"));
    Schedule schedule = Schedule.of(plan).orElseThrow();

    assertThat(Duration.between(schedule.start(), schedule.end()).toMinutes())
        .isEqualTo(14 + 45 * 10);
  }

  @Test
  void aRestStandsBetweenTrialsAndLapsAreCapped() {
    assertThat(PlanCheck.problems(day("20:00", ", rest_every: 15, rest: 20"))).isEmpty();
    Problem problem = PlanCheck.problems(day("20:00", ", rest_every: 10, rest: 20")).get(0);
    assertThat(problem.fault()).isEqualTo(PlanFault.TELLING_REST);
    assertThat(Problems.sentence(problem)).contains("every 12 or 15");

    Problem budget = PlanCheck.problems(day("20:00", ", lap_budget: 40")).get(0);
    assertThat(Problems.sentence(budget)).contains("47 laps", "Plan 12 trials at most");
  }

  @Test
  void whatTheRiderClaimsIsAskedForBeforeTheCommit() {
    String typed = TellingRuns.text("task: triangle") + "expectations: null\n";
    assertThat(PlanHints.of(Plans.with(typed)))
        .extracting(Problem::fault)
        .contains(PlanHint.NOTHING_CLAIMED);
    String claimed = typed.replace("expectations: null", "expectations: {rider: two clicks}");
    assertThat(PlanHints.of(Plans.with(claimed)))
        .extracting(Problem::fault)
        .doesNotContain(PlanHint.NOTHING_CLAIMED);
  }

  @Test
  void whatDiffersInTwoThingsIsToldApartAsAPackage() {
    String typed =
        TellingRuns.text("task: triangle")
            .replace("value: 9, unit: clicks}", "value: 9, unit: clicks}, {name: sag, value: 30}")
            .replace("value: 11, unit: clicks}", "value: 11, unit: clicks}, {name: sag, value: 28}")
            .replace("differences_reason: null", "differences_reason: one dial moves both");
    assertThat(PlanHints.of(Plans.with(typed)))
        .extracting(Problem::fault)
        .contains(PlanHint.TELLS_PACKAGES)
        .doesNotContain(PlanHint.COMPARES_PACKAGES);
  }

  @Test
  void trialsThatCannotShowAnythingNeedAReason() {
    String few = TellingRuns.text("trials: 2");

    assertThat(Plans.faults(few + "override: to try the sheets")).isEmpty();
    Problem problem = PlanCheck.problems(Plans.with(few)).get(0);
    assertThat(problem.details()).startsWith("2");
  }

  @Test
  void theTableHoldsThePlansOwnTrialsOnceAndRises() {
    TellingRun run = new TellingRun(TellingTask.TRIANGLE, 13, new BigDecimal("0.5"), "", "");

    assertThat(run.table()).extracting(TrialsPower::trials).isSorted().doesNotHaveDuplicates();
    assertThat(run.table()).contains(run.shows());
  }
}
