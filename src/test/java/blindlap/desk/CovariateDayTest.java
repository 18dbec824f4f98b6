package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.LapTable;
import blindlap.desk.day.RiderDays;
import blindlap.session.Fact;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.wording.day.Problems;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Covariates said on the day: on the page, in files, from paper, and corrected in the review. */
class CovariateDayTest {
  private static final String PLAN =
      TestDay.EIGHT
          .replaceAll(" *- \\{name: (grip|harshness|trust|feet)[^\n]*\n", "")
          .replace("laps: {warm_up: 1, settling: 0, scored: 1}", "laps: {warm_up: 0, scored: 2}")
          .replace("lap_budget: 12", "lap_budget: 20")
          .replace(
              "protocol: eight-stints",
              """
              covariates:
                - {name: wind, kind: wind, unit: m/s, per: lap, reason: read at the start}
                - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked before}
              protocol: eight-stints\
              """);

  @TempDir Path folder;

  private static CovariateAt legs(int stint) {
    return new CovariateAt("legs", stint, 0);
  }

  private static CovariateAt wind(int stint, int lap) {
    return new CovariateAt("wind", stint, lap);
  }

  private static String refused(DayResult result) {
    assertThat(result).isInstanceOf(DayResult.Refused.class);
    return String.join("\n", Problems.sentences(((DayResult.Refused) result).problems()));
  }

  private static String recorded(TestDay day, String file) {
    Sessions.Result result =
        new LapFiles(day.desk().sessions())
            .record(day.state(), file.getBytes(StandardCharsets.UTF_8));
    return result instanceof Sessions.Result.Refused refused
        ? String.join("\n", Problems.sentences(refused.problems()))
        : "";
  }

  @Test
  void whatTheRiderSaysIsTakenUntilTheHandOverAndNotAfterIt() {
    try (TestDay day = new TestDay(folder, PLAN, 3)) {
      RiderDays days = day.desk().riderDays();
      days.covariate(day.id(), legs(1), BigDecimal.valueOf(4));
      days.covariate(day.id(), legs(1), null);
      days.covariate(day.id(), legs(1), BigDecimal.valueOf(5));
      days.handedOver(day.id(), 1);

      assertThat(refused(days.covariate(day.id(), legs(1), BigDecimal.ONE)))
          .isEqualTo(
              "\"legs\" is what the rider says before the hand-over of stint 1; after the lap the"
                  + " setup may have touched it. It was not recorded; the stint stays without it.");
      assertThat(day.state().day().covariates().get(legs(1))).isEqualByComparingTo("5");
    }
  }

  @Test
  void whatTheStarterSaysOfALapIsTakenAfterIt() {
    try (TestDay day = new TestDay(folder, PLAN, 3)) {
      RiderDays days = day.desk().riderDays();
      days.handedOver(day.id(), 1);
      days.ridden(day.id(), new LapId(1, 1));
      days.covariate(day.id(), wind(1, 1), new BigDecimal("2.5"));

      assertThat(day.state().day().covariates().get(wind(1, 1))).isEqualByComparingTo("2.5");
      assertThat(refused(days.covariate(day.id(), new CovariateAt("wind", 1, 0), BigDecimal.ONE)))
          .isEqualTo(
              "\"wind\" is said for every scored lap, not for stints or settling laps. Nothing was"
                  + " recorded.");
      assertThat(refused(days.covariate(day.id(), new CovariateAt("legs", 2, 1), BigDecimal.ONE)))
          .contains("\"legs\" is said once a stint, not for a lap.");
      assertThat(refused(days.covariate(day.id(), new CovariateAt("sun", 2, 0), BigDecimal.ONE)))
          .isEqualTo(
              "The plan has no covariate \"sun\"; it has: wind, legs. Nothing was recorded.");
    }
  }

  @Test
  void aFileOfLapsHasAColumnForEachCovariate() {
    try (TestDay day = new TestDay(folder, PLAN, 3)) {
      assertThat(recorded(day, "lap;lap time;wind;Legs\n1;90;2,5;4\n2;91;3;\n3;92;;6\n")).isEmpty();
      assertThat(day.state().day().covariates())
          .containsOnlyKeys(wind(1, 1), wind(1, 2), legs(1), legs(2));
      assertThat(day.state().day().covariates().get(wind(1, 1))).isEqualByComparingTo("2.5");
    }
  }

  @Test
  void aFileThatSaysACovariateInTheWrongPlaceOrFormIsRefusedWhole() {
    try (TestDay day = new TestDay(folder, PLAN, 3)) {
      assertThat(recorded(day, "lap;lap time;legs\n1;90;4\n2;91;5\n"))
          .isEqualTo(
              "Line 3, column 3: \"legs\" is what the rider says before the hand-over of stint 1,"
                  + " not after the lap, when the setup may have touched it. Write it in the row of"
                  + " lap 1, or leave it out; nothing was recorded.");
      assertThat(recorded(day, "lap;lap time;wind\n1;90;breezy\n"))
          .isEqualTo(
              "Line 2, column 3: \"breezy\" is not a number for \"wind\". Nothing was recorded.");
      assertThat(day.state().lapsRidden()).isZero();
      assertThat(day.state().day().covariates()).isEmpty();
    }
  }

  @Test
  void whatTheRiderDidNotSayInTimeIsNotSaidByALaterFileButFromPaper() {
    try (TestDay day = new TestDay(folder, PLAN, 3)) {
      assertThat(recorded(day, "lap;lap time\n1;90\n")).isEmpty();
      Sessions.Result late =
          new LapFiles(day.desk().sessions())
              .correct(
                  day.state(), "lap;lap time;legs\n1;90;4\n".getBytes(StandardCharsets.UTF_8), "x");
      assertThat(late).isInstanceOf(Sessions.Result.Refused.class);

      LapTable empty = LapTable.empty(day.state().day());
      assertThat(empty.columns()).containsSequence("lap time", "wind", "legs", "guess");
      List<List<String>> rows = new ArrayList<>(empty.rows());
      List<String> row = new ArrayList<>(rows.get(0));
      row.set(empty.columns().indexOf("legs"), "4");
      rows.set(0, row);
      DayResult keyed =
          day.desk()
              .keyingIn()
              .record(day.state().day(), new LapTable(empty.columns(), rows), List.of());
      assertThat(keyed).isInstanceOf(DayResult.Done.class);
      assertThat(day.state().day().covariates().get(legs(1))).isEqualByComparingTo("4");
    }
  }

  @Test
  void inTheReviewATypingErrorIsCorrectedWithAReasonAndStaysInSight() {
    try (TestDay day = new TestDay(folder, PLAN, 3)) {
      recorded(day, "lap;lap time;wind;legs\n1;90;25;4\n2;91;3;\n3;92;2;\n");
      LapFiles files = new LapFiles(day.desk().sessions());

      assertThat(files.correctCovariate(day.state(), "1", "wind", "2.5", ""))
          .isInstanceOf(Sessions.Result.Refused.class);
      files.correctCovariate(day.state(), "1", "wind", "2.5", "25 was 2.5");
      files.correctCovariate(day.state(), "2", "legs", "", "not asked");

      assertThat(day.state().day().covariates().get(wind(1, 1))).isEqualByComparingTo("2.5");
      assertThat(day.state().day().covariates()).doesNotContainKey(legs(1));
      assertThat(day.state().covariatesCorrected()).hasSize(2);
      assertThat(files.correctCovariate(day.state(), "3", "legs", "5", "forgotten"))
          .as("the rider had not said it in time")
          .isInstanceOf(Sessions.Result.Refused.class);
      assertThat(day.state().laps().iterator().next().values())
          .as("nothing but the covariate was changed")
          .containsKey("lap time");
      assertThat(day.state().entries())
          .noneMatch(e -> e.entry().fact() instanceof Fact.ScoreCorrected);
    }
  }

  @Test
  void theDayOfRiderAndStarterIsTheSameWhateverTheOrder() {
    try (TestDay one = new TestDay(folder, PLAN, 3);
        TestDay two = new TestDay(folder, PLAN, 8)) {
      assertThat(one.order()).isNotEqualTo(two.order());
      for (TestDay day : List.of(one, two)) {
        day.desk().riderDays().covariate(day.id(), legs(1), BigDecimal.valueOf(4));
        recorded(day, "lap;lap time;wind\n1;90;2.5\n2;91;3\n");
      }
      assertThat(one.state().day()).isEqualTo(two.state().day());
      assertThat(LapTable.empty(one.state().day())).isEqualTo(LapTable.empty(two.state().day()));
      Map<String, byte[]> sheets = one.desk().sheets().open(one.state(), Sheets.Paper.A4);
      one.desk()
          .sheets()
          .open(two.state(), Sheets.Paper.A4)
          .forEach((name, pdf) -> assertThat(pdf).as(name).isEqualTo(sheets.get(name)));
    }
  }
}
