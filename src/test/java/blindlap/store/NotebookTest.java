package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The notebook in a real file. */
class NotebookTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);

  @TempDir private Path folder;
  private Path file;
  private SqliteNotebook notebook;

  @BeforeEach
  void open() {
    file = folder.resolve("notebook.blindlap");
    notebook = Books.open(file);
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  private Fact.PlanCommitted committed() {
    return Days.committed(PLAN, SESSION, 1);
  }

  @Test
  void entries_come_back_as_they_were_written_from_a_second_program_too() {
    List<StoredEntry> first = Books.put(notebook, SESSION, committed());
    List<StoredEntry> lap = Books.put(notebook, SESSION, Days.lap(PLAN, 1, new Random(1)));
    try (SqliteNotebook other = Books.open(file)) {
      assertThat(other.id()).isEqualTo(notebook.id());
      assertThat(other.entries(SESSION)).startsWith(first.get(0)).endsWith(lap.get(6)).hasSize(8);
    }
  }

  @Test
  void each_entry_names_the_hash_of_the_one_before_it() {
    Books.put(notebook, SESSION, committed());
    Books.put(notebook, SESSION, Days.lap(PLAN, 1, new Random(1)));
    Hash previous = Hash.NONE;
    long number = 0;
    for (StoredEntry stored : notebook.entries(SESSION)) {
      assertThat(stored.entry().previous()).isEqualTo(previous);
      assertThat(stored.entry().number()).isEqualTo(++number);
      assertThat(stored.hash()).isEqualTo(Hash.of(stored.text()));
      previous = stored.hash();
    }
    assertThat(notebook.heads(SESSION)).containsExactly(new Head(notebook.id(), number, previous));
  }

  @Test
  void nothing_is_written_when_the_session_has_moved_on_since() {
    Books.put(notebook, SESSION, committed());
    List<Head> stale = notebook.heads(SESSION);
    Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
    assertThat(
            notebook.append(
                SESSION, stale, List.of(new Fact.WarmUpRidden(2)), Days.MORNING, Days.ZONE))
        .isEmpty();
    assertThat(notebook.entries(SESSION)).hasSize(2);
  }

  @Test
  void one_append_is_written_whole_or_not_at_all() {
    Books.put(notebook, SESSION, committed());
    Fact bad = new Fact.NoteWritten(new LapId(1, 1), "cut \uD83D off");
    assertThatThrownBy(() -> Books.put(notebook, SESSION, new Fact.WarmUpRidden(1), bad))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(notebook.entries(SESSION)).hasSize(1);
    Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
    assertThat(notebook.entries(SESSION)).hasSize(2);
  }

  @Test
  void a_session_begins_with_its_plan_and_with_nothing_else() {
    assertThatThrownBy(() -> Books.put(notebook, SESSION, new Fact.WarmUpRidden(1)))
        .hasMessageContaining("committed plan");
    assertThat(notebook.sessions()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "UPDATE entry SET text = 'x'",
        "UPDATE entry SET number = number + 1",
        "DELETE FROM entry",
        "INSERT OR REPLACE INTO entry SELECT 1, session, notebook, number, previous, hash, kind,"
            + " at, 'x' FROM entry",
        "INSERT OR REPLACE INTO entry SELECT 9, session, notebook, number, previous, hash, kind,"
            + " at, 'x' FROM entry"
      })
  void entries_can_neither_be_changed_nor_deleted(String sql) throws SQLException {
    Books.put(notebook, SESSION, committed());
    List<StoredEntry> before = notebook.entries(SESSION);
    assertThatThrownBy(() -> Books.sql(file, sql))
        .isInstanceOf(SQLException.class)
        .hasMessageContaining("entries are never");
    assertThat(notebook.entries(SESSION)).isEqualTo(before);
  }

  @Test
  void the_settings_that_keep_entries_safe_are_in_force() throws SQLException {
    try (Connection connection = Connections.open(file, 300)) {
      assertThat(Books.ask(connection, "PRAGMA journal_mode")).isEqualTo("truncate");
      assertThat(Books.ask(connection, "PRAGMA synchronous")).isEqualTo("3");
      assertThat(Books.ask(connection, "PRAGMA secure_delete")).isEqualTo("1");
      assertThat(Books.ask(connection, "PRAGMA trusted_schema")).isEqualTo("0");
      assertThat(Books.ask(connection, "PRAGMA busy_timeout")).isEqualTo("300");
      assertThat(Books.ask(connection, "PRAGMA application_id")).isEqualTo("1114399088");
      assertThat(Books.ask(connection, "PRAGMA user_version")).isEqualTo("10");
    }
  }

  @Test
  void after_every_append_the_notebook_is_one_file_to_copy() throws Exception {
    Books.put(notebook, SESSION, committed());
    Path copy = folder.resolve("copy.blindlap");
    Files.copy(file, copy);
    assertThat(Files.size(folder.resolve("notebook.blindlap-journal"))).isZero();
    try (SqliteNotebook other = Books.open(copy)) {
      assertThat(other.entries(SESSION)).isEqualTo(notebook.entries(SESSION));
    }
  }

  @Test
  void drafts_are_kept_replaced_and_forgotten_and_are_no_entries() {
    notebook.putDraft("next day", "question: Which bar?\n");
    notebook.putDraft("next day", "question: Which tyre?\n\u0000 odd, but typed");
    notebook.putDraft("another", "");
    assertThat(notebook.drafts())
        .containsEntry("next day", "question: Which tyre?\n\u0000 odd, but typed")
        .containsEntry("another", "");
    notebook.deleteDraft("next day");
    assertThat(notebook.drafts()).containsOnlyKeys("another");
    assertThat(notebook.sessions()).isEmpty();
  }

  @Test
  void a_forgotten_draft_is_not_left_readable_in_the_file() throws Exception {
    String secret = "The rider must not read this";
    notebook.putDraft("plan", secret);
    assertThat(Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1))
        .contains(secret);
    notebook.deleteDraft("plan");
    assertThat(Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1))
        .doesNotContain(secret);
  }

  @Test
  void every_window_learns_that_another_or_itself_has_written() {
    try (SqliteNotebook other = Books.open(file)) {
      long seenHere = notebook.dataVersion();
      long seenThere = other.dataVersion();
      assertThat(notebook.dataVersion()).isEqualTo(seenHere);
      Books.put(notebook, SESSION, committed());
      assertThat(notebook.dataVersion()).isNotEqualTo(seenHere);
      assertThat(other.dataVersion()).isNotEqualTo(seenThere);
      long after = notebook.dataVersion();
      Books.put(other, SESSION, new Fact.WarmUpRidden(1));
      assertThat(notebook.dataVersion()).isNotEqualTo(after);
    }
  }

  @Test
  void a_clock_that_is_set_back_neither_loses_nor_reorders_anything() {
    Books.put(notebook, SESSION, committed());
    for (int i = 1; i <= 3; i++) {
      assertThat(
              notebook.append(
                  SESSION,
                  notebook.heads(SESSION),
                  List.of(new Fact.WarmUpRidden(i)),
                  Days.MORNING.minusSeconds(3600L * i),
                  Days.ZONE))
          .isPresent();
    }
    assertThat(notebook.entries(SESSION))
        .extracting(stored -> stored.entry().number())
        .containsExactly(1L, 2L, 3L, 4L);
    assertThat(notebook.verify().sound()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"what now?.blindlap", "100 % #1.blindlap", "Tåget; 'x'.blindlap"})
  void any_file_name_will_do(String name) throws Exception {
    Path odd = folder.resolve(name);
    try (SqliteNotebook other = Books.open(odd)) {
      Books.put(other, SESSION, committed());
    }
    assertThat(odd).isRegularFile();
    try (SqliteNotebook other = Books.open(odd)) {
      assertThat(other.entries(SESSION)).hasSize(1);
    }
  }

  @Test
  void the_views_tell_any_sqlite_tool_what_was_ridden() throws SQLException {
    Books.put(notebook, SESSION, committed());
    Books.put(notebook, SESSION, Days.lap(PLAN, 1, new Random(1)));
    Books.put(
        notebook,
        SESSION,
        new Fact.LapVoided(
            new LapId(1, 1), blindlap.session.day.VoidEvent.CRASH, "fell, unhurt", false));
    assertThat(Books.ask(file, "SELECT rider || ' / ' || trail FROM sessions"))
        .isEqualTo("R. Lind / Quarry loop");
    assertThat(Books.ask(file, "SELECT count(*) FROM laps WHERE stint = 1 AND lap = 1"))
        .isEqualTo("1");
    assertThat(Books.ask(file, "SELECT count(DISTINCT measure) FROM scores WHERE value >= 0"))
        .isEqualTo("6");
    assertThat(Books.ask(file, "SELECT event FROM voids")).isEqualTo("crash");
  }
}
