package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayAnswers;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.EarlierNoise;
import blindlap.plan.Measure;
import blindlap.plan.MeasureShows;
import blindlap.plan.Plan;
import blindlap.screen.Models;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.plan.PlanModel;
import blindlap.wording.MeasureAnswers;
import blindlap.wording.PlanSummary;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a day shows beside the primary measure is said in units that people know, if known. */
class EarlierNoiseTest {
  private static final String NEXT =
      TestDay.SIXTEEN.replace(
          "name: trust, kind: category scale,",
          "name: trust, kind: category scale, role: watch for harm, worthwhile: 1,");
  private static final Plan PLAN = AskedAgain.plan(NEXT);
  private static final DayAnswer ANSWER = new DayAnswers().quick(PLAN).orElseThrow();

  @TempDir Path folder;

  private static List<List<String>> rows(EarlierNoise earlier) {
    return new MeasureAnswers(PLAN, Optional.of(ANSWER), earlier).rows();
  }

  private static String notes(EarlierNoise earlier) {
    return String.join("\n", new MeasureAnswers(PLAN, Optional.of(ANSWER), earlier).notes());
  }

  private static EarlierNoise earlier(TestDay day) {
    return day.desk().history().earlier(PLAN.rider(), PLAN.trail());
  }

  @Test
  void beforeAnyDayIsUnsealedTheOtherMeasuresAreToldInTheirOwnNoise() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      new AskedAgain(day).ride(day.id(), day.phrase(), 3);
      assertThat(rows(earlier(day))).isEqualTo(rows(EarlierNoise.NONE));
      assertThat(notes(earlier(day))).isEqualTo(notes(EarlierNoise.NONE));
    }
  }

  /** The invented ratings of grip do not scatter, which tells no noise. */
  @Test
  void onceADayIsUnsealedEveryMeasureOfItIsToldInItsUnitWithWhereTheNoiseIsFrom() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      new AskedAgain(day).unsealed(day.id(), day.phrase(), 3);
      List<List<String>> rows = rows(earlier(day));
      assertThat(rows.get(3).get(2))
          .matches("a harm that exceeds 1 point by [0-9.]+ points or more");
      assertThat(rows.get(4).get(2)).matches("[0-9.]+ a lap or more");
      assertThat(notes(earlier(day)))
          .contains(
              "Where earlier days of this rider on this trail tell that of another, it is taken;",
              "The noise of feet off the pedals is ",
              "(from 1 day, 14 Nov 2026)",
              "from 6 stints on one setup, and only if laps behave normally.")
          .contains("The noise of trust is ");
    }
  }

  @Test
  void aMeasureThatNoEarlierDayHadKeepsItsUnitsOfNoiseAndTheNoteSaysSo() {
    EarlierNoise trust =
        (measure, laps) ->
            measure.name().equals("feet off the pedals")
                ? Optional.of(new DeclaredNoise(new BigDecimal("0.5"), 12, "3 days", null))
                : Optional.empty();
    assertThat(rows(trust).toString()).contains("a lap or more", "times its own noise");
    assertThat(notes(trust)).contains("it is taken; the rest are in units of theirs");
    assertThat(notes(trust)).containsOnlyOnce("The noise of ");
  }

  @Test
  void whereAllAreKnownNothingIsSaidOfUnitsOfNoise() {
    EarlierNoise all =
        (measure, laps) ->
            Optional.of(new DeclaredNoise(new BigDecimal("0.5"), 12, "3 days", null));
    assertThat(rows(all).subList(1, 5).toString()).doesNotContain("noise");
    assertThat(notes(all))
        .contains("that of the others is what earlier days of this rider on this trail tell.")
        .doesNotContain("in units of theirs");
  }

  /** By hand: 2 % declared and 1.5 noises of 4 % beyond are 1.02·1.04^1.5 − 1.02. */
  @Test
  void onTheRatioScaleAHarmAddsUpToTheWholeRatioThatIsShown() {
    Measure time =
        AskedAgain.plan(
                TestDay.EIGHT.replace(
                    "role: primary, worthwhile: 0.5}",
                    "role: primary, scale: ratio, worthwhile: 2}"))
            .primary()
            .orElseThrow();
    MeasureShows shows = new MeasureShows(time, 1, 1.5);
    DeclaredNoise noise = new DeclaredNoise(new BigDecimal("4"), null, "a guess", null);
    assertThat(shows.at(noise, 1, 2).orElseThrow().difference())
        .isCloseTo(102 * (Math.pow(1.04, 1.5) - 1), within(1e-9));
    assertThat(shows.at(noise, 1, 0).orElseThrow().difference())
        .isCloseTo(100 * (Math.pow(1.04, 1.5) - 1), within(1e-9));
    assertThat(new MeasureShows(time, 1, Double.NaN).at(noise, 1, 2)).isEmpty();
  }

  @Test
  void thePlanPageAndThePlanToSignTellItAsSoonAsRiderAndTrailAreTyped() throws Exception {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 11)) {
      new AskedAgain(day).unsealed(day.id(), day.phrase(), 3);
      Shell shell = new Shell();
      PlanModel model = Models.plan(day.desk(), shell, Background.immediate(), 0);
      model.startFromFile(Files.writeString(folder.resolve("next.yaml"), NEXT));
      List<List<String>> told = rows(earlier(day));
      told(model, told);

      model.form().field("trail").set("Another loop");
      assertThat(model.answer().shownProperty().get().measures())
          .isEqualTo(rows(EarlierNoise.NONE));
      model.form().field("trail").set("Quarry loop");
      told(model, told);

      model.commit().begin();
      assertThat(model.commit().summary().stream().map(PlanSummary.Part::lines).toList().toString())
          .contains(told.get(3).get(2), "(from 1 day, 14 Nov 2026)");
    }
  }

  /**
   * The primary measure takes what earlier days tell into the plan itself, so that it has a unit.
   */
  private static void told(PlanModel model, List<List<String>> told) {
    List<List<String>> rows = model.answer().shownProperty().get().measures();
    assertThat(rows.get(0).get(2)).matches("[0-9.]+.s or more");
    assertThat(rows.subList(1, rows.size())).isEqualTo(told.subList(1, told.size()));
  }
}
