package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Looking;
import blindlap.desk.TestDay;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.SessionSummary;
import blindlap.session.day.CovariateAt;
import blindlap.session.day.LapId;
import blindlap.session.day.Source;
import blindlap.wording.NotebookWords;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What any SQLite tool, and the list of sessions, show of looks and covariates. */
class LookAndCovariateViewsTest {
  private static final String PLAN =
      TestDay.SIXTEEN
          .replace(
              "stints: 16",
              """
              stints: 24
              looks: [16, 20]\
              """)
          .replace("16:38", "19:00")
          .replace("lap_budget: 20", "lap_budget: 40");

  private static final String COVARIATES =
      TestDay.SIXTEEN.replace(
          "stints: 16",
          """
          stints: 16
          covariates:
            - {name: wind, kind: wind, unit: m/s, per: lap, reason: read at the start}
            - {name: wet, kind: wetness, unit: 0 to 10, by: rider, reason: asked before}\
          """);

  @TempDir private Path folder;

  private static void rides(TestDay day, int stint) {
    LapId lap = new LapId(stint, 1);
    day.watched(lap, "lap time", 95 + stint % 3);
    Fact ridden = new Fact.LapRidden(lap, Source.SCREEN);
    day.desk().sessions().act(day.id(), latest -> new DayCommands(latest).note(lap, ridden));
  }

  @Test
  void a_view_tells_the_looks_that_are_declared_and_what_those_that_were_taken_said()
      throws SQLException {
    Path file = folder.resolve("day.blindlap");
    try (TestDay day = new TestDay(file, PLAN, 3, Optional.empty())) {
      assertThat(Books.ask(file, "SELECT group_concat(stint) FROM looks WHERE outcome IS NULL"))
          .isEqualTo("16,20");
      for (int stint = 1; stint <= 16; stint++) {
        rides(day, stint);
      }
      assertThat(new Looking(day.helper()).look(16)).isInstanceOf(Looking.Result.Taken.class);

      assertThat(Books.ask(file, "SELECT group_concat(stint || ' ' || outcome) FROM looks"))
          .isEqualTo("16 ride on");
      assertThat(Books.ask(file, "SELECT recorded_at FROM looks WHERE stint = 16"))
          .startsWith("2026-11-14T");
      assertThat(
              Books.ask(
                  file, "SELECT count(*) FROM looks WHERE session = '" + day.id().text() + "'"))
          .isEqualTo("2");
    }
  }

  @Test
  void a_view_tells_every_covariate_that_was_said_those_taken_back_too() throws SQLException {
    Path file = folder.resolve("day.blindlap");
    try (TestDay day = new TestDay(file, COVARIATES, 3, Optional.empty())) {
      CovariateAt wet = new CovariateAt("wet", 1, 0);
      day.desk().riderDays().covariate(day.id(), wet, BigDecimal.valueOf(7));
      day.desk().riderDays().covariate(day.id(), wet, null);
      rides(day, 1);
      CovariateAt wind = new CovariateAt("wind", 1, 1);
      day.desk().riderDays().covariate(day.id(), wind, new BigDecimal("1.2"));
      assertThat(Books.ask(file, "SELECT value FROM covariates WHERE stint = 1 AND lap = 1"))
          .isEqualTo("1.2");
      assertThat(
              Books.ask(
                  file,
                  "SELECT group_concat(coalesce(value, 'taken back')) FROM covariates"
                      + " WHERE covariate = 'wet' AND lap IS NULL"))
          .isEqualTo("7.0,taken back");
    }
  }

  @Test
  void the_list_of_sessions_says_after_which_stints_a_plan_looks_made_anew_too()
      throws SQLException {
    Path file = folder.resolve("day.blindlap");
    try (TestDay day = new TestDay(file, PLAN, 3, Optional.empty())) {
      List<SessionSummary> listed = day.desk().sessionList().find("");
      assertThat(listed).extracting(SessionSummary::looks).containsExactly(List.of(16, 20));
      assertThat(NotebookWords.facts(listed.get(0)))
          .isEqualTo("R. Lind, Quarry loop; looks after stints 16 and 20");
    }
    Books.sql(file, "DELETE FROM summary_form");
    try (SqliteNotebook again = Books.open(file)) {
      assertThat(again.summaries())
          .extracting(SessionSummary::looks)
          .containsExactly(List.of(16, 20));
    }
  }

  @Test
  void a_plan_without_looks_says_nothing_of_them() throws SQLException {
    Path file = folder.resolve("day.blindlap");
    try (TestDay day = new TestDay(file, TestDay.EIGHT, 3, Optional.empty())) {
      assertThat(Books.ask(file, "SELECT count(*) FROM looks")).isEqualTo("0");
      assertThat(NotebookWords.facts(day.desk().sessionList().find("").get(0)))
          .isEqualTo("R. Lind, Quarry loop");
    }
  }
}
