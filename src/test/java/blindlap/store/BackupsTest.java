package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.day.SessionId;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups of a real notebook under a clock that the test sets. */
class BackupsTest {
  private static final Plan PLAN = Days.plan("R. Lind", "Quarry loop", 8);
  private static final SessionId SESSION = Days.session(1);

  @TempDir private Path folder;
  private SqliteNotebook notebook;
  private Backups backups;
  private final SetClock clock = new SetClock();
  private final SeededBytes ids = new SeededBytes(5);

  private static final class SetClock extends Clock {
    Instant now = Days.MORNING;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      throw new UnsupportedOperationException();
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  @BeforeEach
  void open() {
    Path file = folder.resolve("notebook.blindlap");
    notebook = Books.open(file);
    Books.put(notebook, SESSION, Days.committed(PLAN, SESSION, 1));
    backups = new Backups(file, Backups.usualFolder(file), clock, () -> ids.next(16));
  }

  @AfterEach
  void close() {
    notebook.close();
  }

  @Test
  void a_backup_is_a_whole_notebook_named_by_its_time() {
    Path backup = backups.now();
    assertThat(backup.getFileName()).hasToString("notebook-2026-11-14T083000Z.blindlap");
    try (SqliteNotebook copy = Books.open(backup)) {
      assertThat(copy.entries(SESSION)).isEqualTo(notebook.entries(SESSION));
      assertThat(copy.verify().problems()).isEmpty();
    }
  }

  @Test
  void a_backup_that_is_gone_on_with_can_be_merged_with_the_original() {
    Path backup = backups.now();
    Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
    try (SqliteNotebook copy = Books.open(backup)) {
      assertThat(copy.id()).isNotEqualTo(notebook.id());
      Books.put(copy, SESSION, new Fact.WarmUpRidden(2));
      assertThat(notebook.addEntries(copy.entries(SESSION)))
          .isEqualTo(new blindlap.session.Addition.Added(1, 1));
    }
    assertThat(notebook.entries(SESSION)).hasSize(3);
  }

  @Test
  void nothing_is_copied_when_nothing_has_changed() {
    assertThat(backups.ifChanged()).isPresent();
    clock.now = clock.now.plusSeconds(600);
    assertThat(backups.ifChanged()).isEmpty();
    notebook.putDraft("next", "question: Which bar?");
    assertThat(backups.ifChanged()).isPresent();
    clock.now = clock.now.plusSeconds(600);
    Books.put(notebook, SESSION, new Fact.WarmUpRidden(1));
    assertThat(backups.ifChanged()).isPresent();
    assertThat(backups.list()).hasSize(3);
  }

  @Test
  void it_is_made_in_the_background_when_something_changed_and_while_someone_writes()
      throws Exception {
    List<NotebookException> trouble = new CopyOnWriteArrayList<>();
    ScheduledExecutorService executor = Executors.newSingleThreadScheduledExecutor();
    backups.watch(executor, Duration.ofMillis(30), trouble::add);
    for (int i = 1; i <= 100; i++) {
      clock.now = Days.MORNING.plusSeconds(i);
      Books.put(notebook, SESSION, new Fact.WarmUpRidden(i));
    }
    int written = notebook.entries(SESSION).size();
    long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
    boolean caughtUp = false;
    while (!caughtUp && System.nanoTime() < end) {
      Thread.sleep(50);
      clock.now = clock.now.plusSeconds(1);
      caughtUp =
          !backups.list().isEmpty()
              && Books.ask(backups.list().lastEntry().getValue(), "SELECT count(*) FROM entry")
                  .equals(String.valueOf(written));
    }
    executor.shutdown();
    executor.awaitTermination(10, java.util.concurrent.TimeUnit.SECONDS);
    assertThat(caughtUp).isTrue();
    assertThat(trouble).isEmpty();
    assertThat(backups.list().size()).isLessThanOrEqualTo(BackupRule.LATEST + 1);
  }

  @Test
  void old_ones_are_thinned_and_what_is_no_backup_is_never_touched() throws Exception {
    Path mine = Backups.usualFolder(notebook.file()).resolve("notebook-old.blindlap");
    Files.createDirectories(mine.getParent());
    Files.writeString(mine, "my own");
    Path odd = mine.resolveSibling("notebook-2026-11-14T99.blindlap");
    Files.writeString(odd, "my own");
    for (int i = 0; i < 10; i++) {
      clock.now = Days.MORNING.plusSeconds(60L * i);
      backups.now();
    }
    assertThat(backups.list()).hasSize(BackupRule.LATEST);
    assertThat(mine).hasContent("my own");
    assertThat(odd).hasContent("my own");
  }

  @Test
  void a_damaged_notebook_makes_no_backup_and_pushes_none_out() throws Exception {
    for (int i = 0; i < 3; i++) {
      clock.now = Days.MORNING.plusSeconds(60L * i);
      backups.now();
    }
    var before = backups.list();
    notebook.close();
    byte[] bytes = Files.readAllBytes(notebook.file());
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    for (int at = text.indexOf("Quarry"); at >= 0; at = text.indexOf("Quarry", at + 1)) {
      bytes[at] ^= 1;
    }
    Files.write(notebook.file(), bytes);
    clock.now = Days.MORNING.plusSeconds(600);
    NotebookException refusal = catchThrowableOfType(NotebookException.class, backups::now);
    assertThat(refusal.kind()).isEqualTo(Kind.DAMAGED);
    assertThat(backups.list()).isEqualTo(before);
    try (var files = Files.list(Backups.usualFolder(notebook.file()))) {
      assertThat(files.filter(file -> file.toString().contains(".part"))).isEmpty();
    }
  }

  @Test
  void a_large_notebook_is_copied_in_steps_while_someone_writes() throws Exception {
    Path copy = folder.resolve("copy.blindlap");
    try (Connection connection = Connections.open(notebook.file(), 300)) {
      Thread writer =
          new Thread(
              () -> {
                for (int i = 1; i <= 30; i++) {
                  Books.put(notebook, SESSION, new Fact.WarmUpRidden(i));
                }
              });
      writer.start();
      Copies.inSteps(connection, copy);
      writer.join();
      Files.delete(copy);
      Copies.inSteps(connection, copy);
    }
    try (SqliteNotebook copied = Books.open(copy)) {
      assertThat(copied.entries(SESSION)).isEqualTo(notebook.entries(SESSION)).hasSize(31);
    }
  }

  @Test
  void there_is_no_backup_of_what_is_not_there() {
    Backups none = new Backups(folder.resolve("no.blindlap"), folder, clock, () -> ids.next(16));
    NotebookException refusal = catchThrowableOfType(NotebookException.class, none::now);
    assertThat(refusal.kind()).isEqualTo(Kind.NOT_FOUND);
    assertThat(folder.resolve("no.blindlap")).doesNotExist();
  }
}
