package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.DayAnswers;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Plan;
import blindlap.plan.Plans;
import blindlap.plan.StepsDays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a steps day can show, in sentences. */
class StepsAnswerTest {
  private static final DayAnswers ANSWERS =
      new DayAnswers(() -> List.copyOf(Plans.protocols().all()));

  private static Plan plan(String stepsDay, int stints, String more) {
    return Plans.with(StepsDays.text(stepsDay, stints) + "timetable: null\n" + more);
  }

  private static AnswerWords words(Plan plan) {
    return new AnswerWords(plan, ANSWERS.quick(plan));
  }

  private static List<String> plain(Plan plan) {
    return new PlainAnswer(plan, ANSWERS.quick(plan)).lead();
  }

  @Test
  void theAnswerIsFromTheLowestToTheHighestLevelAndAClick() {
    Plan plan = plan("levels: [4, 7, 10, 13]", 16, "noise: {sd: 0.5}\n");

    assertThat(words(plan).sentence().text())
        .isEqualTo(
            "16 stints can show 1.0\u202fs or more from the lowest to the highest level in lap time"
                + " on 8 of 10 such days.");
    assertThat(words(plan).lead())
        .contains(
            "Spread evenly from 4 to 13 clicks from closed, that is 0.12\u202fs a click.",
            "A bend, such as a middle that is better than both ends, could be seen on 8 of 10 such"
                + " days from about 0.88\u202fs on: so far must the middle of the range lie off the"
                + " straight line between its ends.");
    assertThat(String.join(" ", plain(plan)))
        .startsWith(
            "Spread evenly from 4 to 13 clicks from closed, that is 0.12\u202fs a click. You said"
                + " 0.5\u202fs from the lowest to the highest level would change your mind. If")
        .contains("A bend, such as")
        .doesNotContain("setups");
    assertThat(String.join(" ", words(plan).lead()))
        .doesNotContain("pair")
        .doesNotContain("setups");
  }

  /** Clicks are clicks; another unit stands as it was typed, and a plain number has none. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "levels: [20, 24, 28], way: pressure, low: 15, high: 30 | unit: psi |"
            + " from 20 to 28 psi, that is .* for each psi\\.",
        "levels: [4, 7, 10], way: refit | unit: '' | from 4 to 10, that is .* for each 1 of"
            + " rebound\\.",
      })
  void theDifferenceIsPerUnitOfTheSetting(String stepsDay, String unit, String said) {
    Plan plan =
        Plans.with(
            StepsDays.text(stepsDay, 12).replace("unit: clicks from closed", unit)
                + "timetable: null\nnoise: {sd: 0.5}\n");
    assertThat(String.join("\n", words(plan).lead())).containsPattern(said);
  }

  @Test
  void whyABendCannotOrCanHardlyBeSeen() {
    Plan few = plan("levels: [4, 7, 10, 13]", 8, "noise: {sd: 0.5}\n");
    assertThat(words(few).lead())
        .anyMatch(
            line -> line.matches("A bend.*could hardly be seen on so few stints.*more than.*"));
    String curve =
        "measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5,"
            + " drift: curve}]\nnoise: {sd: 0.5}\n";
    Plan none = plan("levels: [3, 5, 8, 9, 12]", 5, curve);
    assertThat(ANSWERS.quick(none).orElseThrow().steps().orElseThrow().bendSeen()).isFalse();
  }

  @Test
  void theRestOfThePlanSpeaksOfLevelsToo() {
    String measures =
        """
        measures:
          - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.5}
          - {name: hits, kind: count, unit: hits, role: watch for harm, better: lower, worthwhile: 2}
        """;
    Plan plan = plan("levels: [4, 7, 10]", 12, "noise: {sd: 0.5}\n" + measures);
    AnswerWords words = words(plan);
    MeasureAnswers shown = new MeasureAnswers(plan, ANSWERS.quick(plan), EarlierNoise.NONE);

    assertThat(words.orders())
        .contains("20 clicks at each of 13 handlings, 260 on the day, which wear the dial.");
    assertThat(words.odds(ANSWERS.quick(plan).orElseThrow().odds()))
        .allMatch(line -> line.contains("no worthwhile trend"));
    assertThat(shown.lines().get(1)).contains("a harm that exceeds 2");
    assertThat(shown.notes())
        .contains("Each is the difference from the lowest to the highest level.")
        .noneMatch(line -> line.contains("setups"));
    List<String> cuts = words.cuts(ANSWERS.left(plan, () -> false).orElseThrow());
    assertThat(cuts.get(0)).isEqualTo("Through stint 6 nothing can be shown yet.");
    assertThat(cuts.get(1))
        .isEqualTo("If the day ends after stint 7, the smallest possible p is .019.");
    assertThat(cuts.get(2)).contains("after stint 9", "it can show");
    assertThat(cuts).endsWith("Stop no earlier than after stint 8.");
    assertThat(new PlainAnswer(plan, ANSWERS.quick(plan)).swaps())
        .singleElement()
        .asString()
        .contains("A real swap changes the level");
  }
}
