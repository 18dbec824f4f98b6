package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Plan;
import blindlap.seal.Opening;
import blindlap.seal.Sealed;
import blindlap.seal.Sealing;
import blindlap.session.Fact;
import blindlap.session.LifeCommands;
import blindlap.session.NotebookFault;
import blindlap.session.OpenedWith;
import blindlap.session.Outcome;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lists of sessions: quick, derived, and silent about keys. */
class SummariesTest {
  private static final SessionId FIRST = Days.session(1);
  private static final SessionId SECOND = Days.session(2);

  @TempDir private Path folder;
  private Path file;
  private SqliteNotebook notebook;

  @BeforeEach
  void twoSessions() {
    file = folder.resolve("notebook.blindlap");
    notebook = Books.open(file);
    commit(FIRST, "R. Lind", "Quarry loop", 1);
    commit(SECOND, "Åse Müller", "Forêt d'en haut", 2);
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  private void commit(SessionId session, String rider, String trail, long seed) {
    Plan plan = Days.plan(rider, trail, 8);
    Books.put(notebook, session, Days.committed(plan, session, seed));
  }

  private SessionSummary first() {
    return notebook.summaries().get(1);
  }

  private void closeReview() {
    Plan plan = Days.plan("R. Lind", "Quarry loop", 8);
    Books.put(notebook, FIRST, Days.lap(plan, 1, new Random(1)));
    Books.put(notebook, FIRST, new Fact.DayClosed());
    LifeCommands life = new LifeCommands(Books.state(notebook, FIRST));
    Books.put(notebook, FIRST, ((Outcome.Accepted) life.closeReview()).facts());
  }

  private void unseal() {
    Sealing sealing = SeededBytes.sealing(1);
    Sealed sealed = Days.seal(Days.plan("R. Lind", "Quarry loop", 8), FIRST, sealing);
    Opening.Opened opened = (Opening.Opened) sealing.open(sealed.key(), sealed.phrase());
    Books.put(notebook, FIRST, new Fact.SealOpened(opened.key(), OpenedWith.PHRASE, Map.of()));
  }

  @Test
  void a_session_is_listed_with_what_people_know_it_by_latest_first() {
    assertThat(notebook.summaries()).extracting(SessionSummary::id).containsExactly(SECOND, FIRST);
    assertThat(notebook.sessions()).containsExactly(SECOND, FIRST);
    assertThat(first().title()).isEqualTo("Shock K against Shock L");
    assertThat(first().setups()).containsExactly("Shock K", "Shock L");
    assertThat(first().rider()).isEqualTo("R. Lind");
    assertThat(first().trail()).isEqualTo("Quarry loop");
    assertThat(first().day()).isEqualTo(LocalDate.of(2026, 11, 14));
    assertThat(first().question()).isEqualTo("Is Shock L quicker than Shock K on Quarry loop?");
    assertThat(first().committedAt()).isEqualTo(Days.MORNING);
    assertThat(first().kind()).isEqualTo(Plan.Kind.COMPARISON);
  }

  @Test
  void the_list_follows_a_session_through_its_life() {
    assertThat(first().step()).isEqualTo(Step.COMMITTED);
    Books.put(notebook, FIRST, new Fact.WarmUpRidden(1));
    assertThat(first().step()).isEqualTo(Step.RIDING);
    Books.put(notebook, FIRST, new Fact.DayCutShort(3, "rain", "the helper", true));
    assertThat(first().step()).isEqualTo(Step.CUT_SHORT);
    closeReview();
    assertThat(first().step()).isEqualTo(Step.REVIEW_CLOSED);
    Books.put(notebook, FIRST, new Fact.SessionAbandoned("enough", ""));
    assertThat(first().step()).isEqualTo(Step.ABANDONED);
    assertThat(notebook.verify().problems()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "lind, 1",
    "LIND quarry, 1",
    "shock, 2",
    "muller, 1",
    "ase foret, 1",
    "2026-11, 2",
    "2026-12, 0",
    "committed, 2",
    "quicker d'en, 1",
    "'', 2",
    "'  ', 2",
    "lind forêt, 0",
    "%, 0",
    "_, 0"
  })
  void words_find_sessions_whatever_their_capitals_and_accents(String words, int found) {
    assertThat(notebook.search(words)).hasSize(found);
  }

  @Test
  void a_verdict_can_be_kept_and_found_once_the_seal_is_open_and_not_before() {
    closeReview();
    assertThat(notebook.putVerdict(FIRST, "Real and worthwhile")).isFalse();
    assertThat(first().verdict()).isEmpty();
    unseal();
    assertThat(notebook.putVerdict(FIRST, "Real and worthwhile")).isTrue();
    assertThat(first().verdict()).isEqualTo("Real and worthwhile");
    assertThat(notebook.search("worthwhile real"))
        .extracting(SessionSummary::id)
        .containsExactly(FIRST);
    Books.put(notebook, FIRST, new Fact.ReportWritten("report.html"));
    assertThat(first().verdict()).as("kept over later entries").isEqualTo("Real and worthwhile");
    assertThat(notebook.putVerdict(Days.session(9), "x")).isFalse();
  }

  @Test
  void until_the_seal_is_open_the_list_is_the_same_whatever_was_drawn() throws SQLException {
    String dump =
        "SELECT group_concat(committed_at || kind || question || rider || trail || day"
            + " || setups || step || verdict || words) FROM summary WHERE session = '"
            + FIRST
            + "'";
    String here = Books.ask(file, dump);
    Path elsewhere = folder.resolve("elsewhere.blindlap");
    try (SqliteNotebook other = Books.open(elsewhere)) {
      Plan plan = Days.plan("R. Lind", "Quarry loop", 8);
      Books.put(other, FIRST, Days.committed(plan, FIRST, 4711));
    }
    assertThat(Books.ask(elsewhere, dump)).isEqualTo(here);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "DELETE FROM summary",
        "DELETE FROM summary_form",
        "UPDATE summary_form SET form = 'older'",
        "DELETE FROM summary WHERE rider = 'R. Lind'",
        "INSERT INTO summary SELECT '00000000-0000-4000-8000-000000000000', first, committed_at,"
            + " kind, question, rider, trail, day, setups, series, looks, step, verdict, words FROM"
            + " summary LIMIT 1"
      })
  void a_list_that_is_missing_or_stale_is_made_again_at_opening(String sql) throws SQLException {
    List<SessionSummary> before = notebook.summaries();
    notebook.close();
    Books.sql(file, sql);
    notebook = Books.open(file);
    assertThat(notebook.summaries()).isEqualTo(before);
    assertThat(notebook.verify().problems()).isEmpty();
  }

  @Test
  void a_list_that_tells_something_else_than_the_entries_is_named_by_the_full_check()
      throws SQLException {
    Books.sql(file, "UPDATE summary SET rider = 'J. Brand' WHERE rider = 'R. Lind'");
    assertThat(notebook.verify().problems())
        .extracting(problem -> problem.fault())
        .containsExactly(NotebookFault.LIST_DIFFERS);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "SELECT text, hash FROM entry WHERE session = ? ORDER BY notebook, number",
        "SELECT max(number) FROM entry WHERE session = ? AND notebook = ?",
        "SELECT text, hash FROM entry WHERE session = ? AND notebook = ? AND number = ?",
        "SELECT min(arrived) FROM entry WHERE session = ? AND kind = 'PlanCommitted'",
        "SELECT step FROM summary WHERE session = ?"
      })
  void one_session_is_found_by_index_however_many_there_are(String sql) throws SQLException {
    try (Connection connection = Books.plain(file);
        PreparedStatement statement = connection.prepareStatement("EXPLAIN QUERY PLAN " + sql);
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        assertThat(rows.getString("detail")).startsWith("SEARCH").contains("USING", "INDEX");
      }
    }
  }
}
