package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.session.Fact;
import blindlap.session.NotebookException;
import blindlap.session.SessionState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import blindlap.wording.day.Trouble;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A notebook of each earlier version. The file of version 1 was written by the program of that
 * version: three sessions (reported, review closed, riding) and a draft. That of version 2 was,
 * too: one question asked three times (reported, unsealed, riding), before findings were recorded.
 * That of version 3 holds the demo's three unsealed sessions, each with its recorded finding, and
 * one under way. That of version 4 holds the same three, and an open session under way whose order
 * was sealed under a phrase, as they were before orders were covered. That of version 5 holds the
 * same three, and two covered days (drawn as you go, its warm-up shown; masked labels) just
 * committed. That of version 6 holds a closed day with a recording, its trail and what it left of
 * the way. That of version 7 holds a day under way, some of it said by a phone with and without
 * signal. That of version 8 holds a steps day, unsealed, and one committed. That of version 9 holds
 * a telling run, unsealed, and one committed.
 */
class EarlierVersionsTest {
  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void copyOld() throws IOException {
    file = folder.resolve("notebook.blindlap");
    try (InputStream in = EarlierVersionsTest.class.getResourceAsStream("notebook-1.blindlap")) {
      Files.copy(in, file);
    }
  }

  @Test
  void version_1_opens_with_every_entry_and_draft_and_gets_a_list() throws Exception {
    String texts = "SELECT group_concat(text || hash) FROM entry";
    String before = Books.ask(file, texts);
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.id().text()).isEqualTo(NotebookIdOfOld.ID);
      assertThat(notebook.sessions())
          .containsExactly(Days.session(2), Days.session(1), Days.session(0));
      assertThat(notebook.summaries())
          .extracting(summary -> summary.step())
          .containsExactly(Step.RIDING, Step.REVIEW_CLOSED, Step.REPORTED);
      assertThat(notebook.drafts()).containsOnlyKeys("next day");
      SessionState reported = Books.state(notebook, Days.session(0));
      assertThat(reported.openKey()).isPresent();
      assertThat(reported.lapsRidden()).isEqualTo(8);
      assertThat(notebook.verify().problems()).isEmpty();
      Books.put(notebook, Days.session(2), new Fact.WarmUpRidden(1));
    }
    assertThat(Books.ask(file, texts)).startsWith(before);
    assertThat(Books.ask(file, "PRAGMA user_version")).isEqualTo("10");
  }

  @Test
  void version_2_opens_with_every_entry_and_shows_that_nothing_was_recorded_at_unsealing()
      throws Exception {
    opens(
        2,
        notebook -> {
          assertThat(notebook.summaries())
              .extracting(summary -> summary.step())
              .containsExactly(Step.RIDING, Step.UNSEALED, Step.REPORTED);
          SessionId reported = notebook.sessions().get(2);
          assertThat(Books.state(notebook, reported).openKey()).isPresent();
          assertThat(Books.state(notebook, reported).recordedFinding()).isEmpty();
        });
    assertThat(Books.ask(file, "SELECT count(*) FROM findings")).isEqualTo("0");
  }

  @Test
  void version_3_opens_with_every_entry_and_its_recorded_findings() throws Exception {
    opens(
        3,
        notebook -> {
          assertThat(notebook.summaries())
              .extracting(summary -> summary.step())
              .containsExactly(Step.RIDING, Step.REPORTED, Step.UNSEALED, Step.UNSEALED);
          assertThat(notebook.sessions())
              .filteredOn(id -> Books.state(notebook, id).recordedFinding().isPresent())
              .hasSize(3);
        });
  }

  @Test
  void version_4_opens_with_every_entry_and_its_open_session_keeps_its_sealed_key()
      throws Exception {
    opens(
        4,
        notebook -> {
          assertThat(notebook.summaries())
              .extracting(summary -> summary.step())
              .startsWith(Step.RIDING)
              .hasSize(4);
          SessionState open = Books.state(notebook, notebook.sessions().get(0));
          assertThat(open.plan().blinding().level()).isEqualTo(blindlap.plan.BlindLevel.OPEN);
          assertThat(open.covered()).isFalse();
          assertThat(open.sealedKey().sessionId()).isEqualTo(open.id().text());
          assertThat(notebook.cover(open.id())).isEmpty();
        });
    assertThat(Books.ask(file, "SELECT count(*) FROM cover")).isEqualTo("0");
  }

  @Test
  void version_5_opens_with_every_entry_and_its_covered_orders_and_an_empty_trail_book()
      throws Exception {
    opens(
        5,
        notebook -> {
          assertThat(notebook.summaries())
              .extracting(summary -> summary.step())
              .containsExactlyInAnyOrder(
                  Step.REPORTED, Step.UNSEALED, Step.UNSEALED, Step.COMMITTED, Step.COMMITTED);
          assertThat(notebook.sessions())
              .filteredOn(id -> Books.state(notebook, id).covered())
              .hasSize(2)
              .allSatisfy(id -> assertThat(notebook.cover(id)).isPresent());
        });
    assertThat(Books.ask(file, "SELECT count(*) FROM trail")).isEqualTo("0");
  }

  @Test
  void version_6_opens_with_its_recording_and_no_entry_by_phone() throws Exception {
    opens(
        6,
        notebook -> {
          SessionState day = Books.state(notebook, notebook.sessions().get(0));
          assertThat(day.step()).isEqualTo(Step.DAY_CLOSED);
          assertThat(day.recorded().files()).hasSize(1);
          assertThat(day.phones().last()).isEmpty();
        });
    assertThat(Books.ask(file, "SELECT count(*) FROM content")).isEqualTo("16");
    assertThat(Books.ask(file, "SELECT count(*) FROM phones")).isEqualTo("0");
  }

  @Test
  void version_7_opens_with_what_a_phone_said() throws Exception {
    opens(
        7,
        notebook -> {
          SessionState day = Books.state(notebook, notebook.sessions().get(0));
          assertThat(day.phones().last()).containsValue(3L);
          assertThat(day.lapsRidden()).isEqualTo(2);
        });
    assertThat(Books.ask(file, "SELECT count(*) FROM phones WHERE late")).isEqualTo("3");
  }

  @Test
  void version_8_opens_with_a_steps_day() throws Exception {
    opens(
        8,
        notebook -> {
          assertThat(notebook.summaries())
              .extracting(summary -> summary.step())
              .containsExactly(Step.COMMITTED, Step.UNSEALED);
          SessionState day = Books.state(notebook, notebook.sessions().get(1));
          assertThat(day.plan().levels()).isPresent();
          assertThat(day.recordedFinding()).isPresent();
        });
  }

  @Test
  void version_9_opens_with_a_telling_run_and_without_profiles() throws Exception {
    opens(
        9,
        notebook -> {
          assertThat(notebook.summaries())
              .extracting(summary -> summary.step())
              .containsExactly(Step.COMMITTED, Step.UNSEALED);
          SessionState day = Books.state(notebook, notebook.sessions().get(1));
          assertThat(day.plan().telling()).isNotNull();
          assertThat(day.recordedFinding()).isPresent();
          assertThat(notebook.profiles().all()).isEmpty();
        });
    assertThat(Books.ask(file, "SELECT count(*) FROM profiles")).isEqualTo("0");
  }

  /** An older notebook opens as it was written, with no problem, and a copy of it is kept. */
  private void opens(int version, Consumer<SqliteNotebook> holds) throws Exception {
    String name = "notebook-" + version + ".blindlap";
    try (InputStream in = EarlierVersionsTest.class.getResourceAsStream(name)) {
      Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
    }
    String texts = "SELECT group_concat(text || hash) FROM entry";
    String before = Books.ask(file, texts);
    try (SqliteNotebook notebook = Books.open(file)) {
      holds.accept(notebook);
      assertThat(notebook.verify().problems()).isEmpty();
    }
    assertThat(Books.ask(file, texts)).isEqualTo(before);
    assertThat(Books.ask(file, "PRAGMA user_version")).isEqualTo("10");
    assertThat(folder.resolve("notebook.blindlap.version-" + version)).exists();
  }

  /** Known from the seed the old file was made with. */
  private static final class NotebookIdOfOld {
    static final String ID = blindlap.session.NotebookId.of(new SeededBytes(100).next(16)).text();
  }

  @Test
  void a_copy_of_the_old_version_is_kept_beside_it() throws Exception {
    String before = Books.ask(file, "SELECT group_concat(text || hash) FROM entry");
    Books.open(file).close();
    Path kept = folder.resolve("notebook.blindlap.version-1");
    assertThat(Books.ask(kept, "PRAGMA user_version")).isEqualTo("1");
    assertThat(Books.ask(kept, "SELECT group_concat(text || hash) FROM entry")).isEqualTo(before);
    assertThat(folder).isDirectoryNotContaining("glob:**.part");
  }

  @Test
  void a_migration_that_cannot_finish_leaves_the_old_version_as_it_was() throws Exception {
    byte[] before = Files.readAllBytes(file);
    Connection limited = Connections.open(file, 300);
    Books.ask(limited, "PRAGMA max_page_count = 1");
    assertThatThrownBy(
            () -> SqliteNotebook.on(limited, file, new SeededBytes(1).next(16), Days.MORNING))
        .isInstanceOf(NotebookException.class)
        .satisfies(e -> assertThat(Trouble.sentence(e)).contains("full"));
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
    Books.open(file).close();
  }

  @Test
  void of_two_programs_that_migrate_at_once_one_does_and_the_other_waits() throws Exception {
    List<SessionId> sessions;
    try (Connection other = Books.plain(file);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      ExecutorService two = Executors.newFixedThreadPool(2);
      List<Future<?>> opened =
          List.of(
              two.submit(() -> openPatiently().close()), two.submit(() -> openPatiently().close()));
      Thread.sleep(200);
      statement.execute("COMMIT");
      for (Future<?> one : opened) {
        one.get();
      }
      two.shutdown();
    }
    try (SqliteNotebook notebook = Books.open(file)) {
      sessions = notebook.sessions();
      assertThat(notebook.verify().problems()).isEmpty();
    }
    assertThat(sessions).hasSize(3);
  }

  private SqliteNotebook openPatiently() {
    return SqliteNotebook.open(file, new SeededBytes(1).next(16), Days.MORNING);
  }
}
