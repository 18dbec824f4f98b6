package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.SafeKeeping;
import blindlap.store.SqliteFiles;
import blindlap.store.SqliteNotebook;
import blindlap.wording.day.Trouble;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups of a real notebook while a window would be open. */
class KeeperTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-11-14T08:30:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  private SafeKeeping keeping() {
    return new SafeKeeping(
        new SqliteFiles(CLOCK, () -> new byte[16]), folder.resolve("quarry.blindlap"));
  }

  private SqliteNotebook open() {
    return SqliteNotebook.open(folder.resolve("quarry.blindlap"), new byte[16], CLOCK.instant());
  }

  private static void await(BooleanSupplier done) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!done.getAsBoolean() && System.nanoTime() < end) {
      Thread.sleep(10);
    }
    assertThat(done.getAsBoolean()).isTrue();
  }

  @Test
  void aBackupIsMadeInTheBackgroundAndNoneAfterTheWindowIsClosed() throws Exception {
    List<Exception> trouble = new CopyOnWriteArrayList<>();
    SafeKeeping keeping = keeping();
    try (SqliteNotebook notebook = open()) {
      notebook.putDraft("next", "question: Which bar?");
      Keeper keeper = new Keeper(keeping, Duration.ofMillis(20));
      keeper.start(trouble::add);
      await(() -> keeping.backups().size() == 1);
      keeper.close();
      Path backup = keeping.backups().values().iterator().next();
      Files.delete(backup);
      notebook.putDraft("next", "question: Which tyre?");
      Thread.sleep(100);
      assertThat(keeping.backups()).isEmpty();
    }
    assertThat(trouble).isEmpty();
  }

  @Test
  void closingTheWindowMakesALastBackupIfSomethingHasChanged() {
    SafeKeeping keeping = keeping();
    try (SqliteNotebook notebook = open()) {
      notebook.putDraft("next", "question: Which bar?");
      Keeper keeper = new Keeper(keeping);
      keeper.start(e -> {});
      assertThat(keeping.backups()).isEmpty();
      keeper.close();
      assertThat(keeping.backups()).hasSize(1);
    }
  }

  @Test
  void troubleIsTold() throws Exception {
    List<Exception> trouble = new CopyOnWriteArrayList<>();
    SafeKeeping keeping = keeping();
    open().close();
    Files.writeString(folder.resolve("quarry.blindlap-backups"), "a file where the folder goes");
    try (Keeper keeper = new Keeper(keeping, Duration.ofMillis(20))) {
      keeper.start(trouble::add);
      await(() -> !trouble.isEmpty());
    }
    assertThat(Trouble.sentence(trouble.get(0))).contains("could not be written");
  }
}
