package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.day.LapId;
import blindlap.session.day.SessionId;
import blindlap.wording.day.Trouble;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every way in which a notebook cannot be used: its name, one sentence, and nothing half-written.
 */
class NamedOutcomesTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void place() {
    file = folder.resolve("notebook.blindlap");
  }

  private void makeNotebook() {
    try (SqliteNotebook notebook = Books.open(file)) {
      Books.put(notebook, SESSION, Days.committed(PLAN, SESSION, 1));
    }
  }

  private NotebookException refused(Kind kind, ThrowingCallable call) {
    NotebookException refusal = catchThrowableOfType(NotebookException.class, call);
    assertThat(refusal).isNotNull();
    assertThat(refusal.kind()).as(refusal.getMessage()).isEqualTo(kind);
    assertThat(Trouble.sentence(refusal))
        .contains(file.getFileName().toString())
        .endsWith(".")
        .doesNotContain("\n")
        .doesNotContain("{");
    return refusal;
  }

  private void refusedUntouched(Kind kind) throws IOException {
    byte[] before = Files.readAllBytes(file);
    refused(kind, () -> Books.open(file).close());
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  private void stillHasOneEntryAndGoesOn() {
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.verify().problems()).isEmpty();
      assertThat(notebook.entries(SESSION)).hasSize(1);
      Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
      assertThat(notebook.entries(SESSION)).hasSize(2);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"x", "xy", "lap;time\n1;181.4\n", "SQLite format 3, they said"})
  void a_file_that_is_not_a_notebook_is_left_alone(String content) throws IOException {
    Files.writeString(file, content.repeat(content.length() > 10 ? 200 : 1));
    refusedUntouched(Kind.NOT_A_NOTEBOOK);
  }

  @Test
  void another_programs_database_is_left_alone() throws Exception {
    Books.sql(file, "CREATE TABLE mine (a)", "INSERT INTO mine VALUES (1)");
    refusedUntouched(Kind.NOT_A_NOTEBOOK);
  }

  @Test
  void a_folder_is_not_a_notebook() throws IOException {
    Files.createDirectory(file);
    refused(Kind.NOT_A_NOTEBOOK, () -> Books.open(file).close());
  }

  @Test
  void an_empty_file_becomes_a_new_notebook() throws IOException {
    Files.createFile(file);
    makeNotebook();
    stillHasOneEntryAndGoesOn();
  }

  @Test
  void a_newer_notebook_is_named_with_both_versions_and_left_alone() throws Exception {
    makeNotebook();
    Books.sql(file, "PRAGMA user_version = 99");
    refusedUntouched(Kind.TOO_NEW);
    assertThat(Trouble.sentence(refused(Kind.TOO_NEW, () -> Books.open(file).close())))
        .contains("version 99")
        .contains("knows " + NotebookFile.VERSION);
  }

  @Test
  void a_missing_folder_is_named_and_not_made() {
    file = folder.resolve("no").resolve("such").resolve("notebook.blindlap");
    refused(Kind.NOT_FOUND, () -> Books.open(file).close());
    assertThat(folder.resolve("no")).doesNotExist();
  }

  @Test
  void a_notebook_that_another_program_holds_can_be_used_again_when_it_lets_go() throws Exception {
    makeNotebook();
    try (SqliteNotebook notebook = Books.open(file);
        Connection other = Books.plain(file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      refused(Kind.LOCKED, () -> Books.put(notebook, SESSION, new Fact.WarmUpRidden(1)));
      assertThat(notebook.entries(SESSION)).as("reading goes on").hasSize(1);
      statement.execute("ROLLBACK");
      statement.execute("BEGIN EXCLUSIVE");
      refused(Kind.LOCKED, () -> Books.open(file).close());
      refused(Kind.LOCKED, () -> notebook.entries(SESSION));
      statement.execute("COMMIT");
    }
    stillHasOneEntryAndGoesOn();
  }

  @Test
  void a_writer_waits_for_another_to_finish() throws Exception {
    makeNotebook();
    try (SqliteNotebook notebook =
            SqliteNotebook.open(file, new SeededBytes(1).next(16), Days.MORNING);
        Connection other = Books.plain(file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      Thread letsGo =
          new Thread(
              () -> {
                try {
                  Thread.sleep(400);
                  statement.execute("COMMIT");
                } catch (InterruptedException | SQLException e) {
                  throw new IllegalStateException(e);
                }
              });
      letsGo.start();
      Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
      letsGo.join();
      assertThat(notebook.entries(SESSION)).hasSize(2);
    }
  }

  @Test
  void a_read_only_file_can_be_read_and_says_so_when_written() throws Exception {
    makeNotebook();
    try (ReadOnly made = ReadOnly.make(file)) {
      assumeTrue(made.works(), "this system cannot make a file read-only for this user");
      try (SqliteNotebook notebook = Books.open(file)) {
        assertThat(notebook.entries(SESSION)).hasSize(1);
        refused(Kind.READ_ONLY, () -> Books.put(notebook, SESSION, new Fact.WarmUpRidden(1)));
        refused(Kind.READ_ONLY, () -> notebook.putDraft("plan", "x"));
      }
    }
    stillHasOneEntryAndGoesOn();
  }

  @Test
  void a_folder_that_becomes_read_only_in_between_loses_nothing() throws Exception {
    makeNotebook();
    try (SqliteNotebook notebook = Books.open(file)) {
      Files.delete(folder.resolve("notebook.blindlap-journal"));
      try (ReadOnly made = ReadOnly.make(folder)) {
        assumeTrue(made.works(), "this system cannot make a folder read-only for this user");
        refused(Kind.READ_ONLY, () -> Books.put(notebook, SESSION, new Fact.WarmUpRidden(1)));
      }
      Books.put(notebook, SESSION, new Fact.WarmUpRidden(2));
      assertThat(notebook.entries(SESSION)).hasSize(2);
    }
  }

  @Test
  void a_file_that_becomes_read_only_in_between_is_saved_to_or_named() throws Exception {
    makeNotebook();
    int saved = 1;
    try (SqliteNotebook notebook = Books.open(file);
        ReadOnly made = ReadOnly.make(file)) {
      assumeTrue(made.works(), "this system cannot make a file read-only for this user");
      try {
        Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
        saved++; // an open file stays writable on many systems
      } catch (NotebookException refusal) {
        assertThat(refusal.kind()).isEqualTo(Kind.READ_ONLY);
      }
    }
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.verify().problems()).isEmpty();
      assertThat(notebook.entries(SESSION)).hasSize(saved);
    }
  }

  @Test
  void a_folder_without_write_access_is_named() throws Exception {
    makeNotebook();
    try (ReadOnly made = ReadOnly.make(folder)) {
      assumeTrue(made.works(), "this system cannot make a folder read-only for this user");
      Path fresh = folder.resolve("fresh-notebook.blindlap");
      NotebookException refusal =
          catchThrowableOfType(NotebookException.class, () -> Books.open(fresh).close());
      assertThat(refusal.kind()).as(refusal.getMessage()).isEqualTo(Kind.READ_ONLY);
      assertThat(fresh).doesNotExist();
    }
    stillHasOneEntryAndGoesOn();
  }

  @Test
  void a_full_disk_keeps_everything_before_and_nothing_of_the_new_entry() throws Exception {
    makeNotebook();
    Connection limited = Connections.open(file, 300);
    try (SqliteNotebook notebook =
        SqliteNotebook.on(limited, file, new SeededBytes(1).next(16), Days.MORNING)) {
      Books.ask(limited, "PRAGMA max_page_count = 1"); // SQLite reads this as: no more pages
      fillUp(notebook);
    }
    stillVerifies();
  }

  @Test
  void a_disk_that_is_truly_full_loses_nothing_either() throws Exception {
    Path small = folder.resolve("small");
    Files.createDirectory(small);
    assumeTrue(run("mount", "-t", "tmpfs", "-o", "size=200k", "tmpfs", small.toString()));
    try {
      file = small.resolve("notebook.blindlap");
      makeNotebook();
      try (SqliteNotebook notebook = Books.open(file)) {
        fillUp(notebook);
      }
      stillVerifies();
    } finally {
      run("umount", "-l", small.toString());
    }
  }

  private void fillUp(SqliteNotebook notebook) {
    int[] kept = {0};
    NotebookException refusal =
        refused(
            Kind.FULL,
            () -> {
              while (true) {
                String note = "Wind from the west, then " + kept[0] + " ".repeat(3000);
                Books.put(
                    notebook,
                    SESSION,
                    new Fact.NoteWritten(new LapId(1, 1), note),
                    new Fact.NoteWritten(new LapId(1, 2), note));
                kept[0] += 2;
              }
            });
    assertThat(Trouble.sentence(refusal)).contains("everything before it is kept");
    assertThat(notebook.entries(SESSION)).hasSize(1 + kept[0]);
  }

  private void stillVerifies() {
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.verify().problems()).isEmpty();
    }
  }

  @Test
  void a_new_notebook_on_a_full_disk_leaves_nothing_that_is_in_the_way() throws Exception {
    Connection limited = Connections.open(file, 300);
    Books.ask(limited, "PRAGMA max_page_count = 3");
    refused(
        Kind.FULL,
        () -> SqliteNotebook.on(limited, file, new SeededBytes(1).next(16), Days.MORNING));
    makeNotebook();
    stillHasOneEntryAndGoesOn();
  }

  @Test
  void a_damaged_page_is_named_at_opening_and_the_file_is_left_alone() throws Exception {
    makeNotebook();
    byte[] bytes = Files.readAllBytes(file);
    java.util.Arrays.fill(bytes, 4096, 2 * 4096, (byte) 0xA5);
    Files.write(file, bytes);
    refusedUntouched(Kind.DAMAGED);
  }

  @Test
  void a_truncated_notebook_is_named_at_opening_and_left_alone() throws Exception {
    makeNotebook();
    byte[] bytes = Files.readAllBytes(file);
    Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    refusedUntouched(Kind.DAMAGED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Quarry loop", "blindlap-sealed-key-1"})
  void a_changed_entry_is_named_when_its_session_is_read_and_nothing_more_is_written(String place)
      throws Exception {
    makeNotebook();
    byte[] bytes = Files.readAllBytes(file);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    for (int at = text.indexOf(place); at >= 0; at = text.indexOf(place, at + 1)) {
      bytes[at + 2] ^= 1;
    }
    Files.write(file, bytes);
    try (SqliteNotebook notebook = Books.open(file)) {
      refused(Kind.DAMAGED, () -> notebook.entries(SESSION));
      refused(Kind.DAMAGED, () -> Books.put(notebook, SESSION, new Fact.WarmUpRidden(1)));
    }
    assertThat(Files.readAllBytes(file)).isEqualTo(bytes);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "DROP TRIGGER entry_is_not_deleted",
        "DROP TABLE summary",
        "ALTER TABLE entry ADD COLUMN more TEXT",
        "UPDATE notebook SET id = 'x'",
        "DELETE FROM notebook"
      })
  void tables_that_another_program_changed_are_named(String sql) throws Exception {
    makeNotebook();
    Books.sql(file, sql);
    refusedUntouched(Kind.DAMAGED);
  }

  @Test
  void a_notebook_that_another_program_put_into_write_ahead_mode_is_one_file_again()
      throws Exception {
    makeNotebook();
    Books.sql(file, "PRAGMA journal_mode = WAL");
    stillHasOneEntryAndGoesOn();
    assertThat(Books.ask(file, "PRAGMA journal_mode")).isEqualTo("delete");
  }

  @Test
  void a_table_of_ones_own_beside_the_notebooks_is_no_harm() throws Exception {
    makeNotebook();
    Books.sql(file, "CREATE VIEW my_laps AS SELECT * FROM laps WHERE stint > 1");
    stillHasOneEntryAndGoesOn();
  }

  private static boolean run(String... command) throws IOException, InterruptedException {
    try {
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException notInstalled) {
      return false;
    }
  }

  /** A file or folder that this user, the superuser included, cannot write to for a while. */
  private record ReadOnly(Path path, boolean works) implements AutoCloseable {
    static ReadOnly make(Path path) throws IOException, InterruptedException {
      if (System.getProperty("user.name").equals("root")) {
        return new ReadOnly(path, run("chattr", "+i", path.toString()));
      }
      return new ReadOnly(path, path.toFile().setWritable(false) && !Files.isWritable(path));
    }

    @Override
    public void close() throws Exception {
      if (System.getProperty("user.name").equals("root")) {
        run("chattr", "-i", path.toString());
      } else {
        path.toFile().setWritable(true);
      }
    }
  }
}
