package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import blindlap.plan.Trail;
import blindlap.session.Hash;
import blindlap.session.KeptTrail;
import blindlap.session.NotebookException;
import blindlap.session.NotebookFault;
import blindlap.session.TrailTitle;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The trail book and positions in a real notebook. */
class TrailsTest {
  private static final Trail QUARRY = QuarryTrail.trail();
  private static final Trail MOVED = QuarryTrail.trail("Quarry loop", 12, 200, 420, 690);
  private static final byte[] POSITIONS =
      "0 11 -38\n1 11.00001 -38\n".repeat(500).getBytes(StandardCharsets.UTF_8);

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("days.blindlap");
  }

  @Test
  void aChangedTrailIsANewVersionAndTheSameTextTheVersionThatItWas() {
    try (SqliteNotebook notebook = Books.open(file)) {
      KeptTrail first = notebook.trails().keep(QUARRY, Days.MORNING);
      KeptTrail second = notebook.trails().keep(MOVED, Days.MORNING.plusSeconds(60));
      KeptTrail again = notebook.trails().keep(QUARRY, Days.MORNING.plusSeconds(120));
      KeptTrail other = notebook.trails().keep(QuarryTrail.trail("Ridge", 10, 600), Days.MORNING);
      assertThat(first.title().number()).isEqualTo(1);
      assertThat(second.title().number()).isEqualTo(2);
      assertThat(again).isEqualTo(first);
      assertThat(other.title().number()).isEqualTo(1);
    }
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.trails().titles())
          .extracting(TrailTitle::name, TrailTitle::number)
          .containsExactly(
              org.assertj.core.groups.Tuple.tuple("Quarry loop", 1),
              org.assertj.core.groups.Tuple.tuple("Quarry loop", 2),
              org.assertj.core.groups.Tuple.tuple("Ridge", 1));
      KeptTrail latest = notebook.trails().latest("Quarry loop").orElseThrow();
      assertThat(latest.trail()).isEqualTo(MOVED);
      assertThat(latest.version().gates()).isEqualTo(MOVED.gates());
      assertThat(latest.version().sha256()).isEqualTo(Hash.of(TrailFile.text(MOVED)).hex());
      assertThat(notebook.trails().find("Quarry loop", 1).orElseThrow().trail()).isEqualTo(QUARRY);
      assertThat(notebook.trails().find(latest.title().sha256())).contains(latest);
      assertThat(notebook.trails().find("Quarry loop", 3)).isEmpty();
      assertThat(notebook.trails().latest("Nowhere")).isEmpty();
      assertThat(notebook.verify().sound()).isTrue();
    }
  }

  @Test
  void positionsAreKeptCompressedOncePerContent() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      String name = notebook.contents().put(POSITIONS);
      assertThat(notebook.contents().put(POSITIONS.clone())).isEqualTo(name);
      assertThat(name).isEqualTo(Hash.of(POSITIONS).hex());
      assertThat(notebook.contents().find(name).orElseThrow()).isEqualTo(POSITIONS);
      assertThat(notebook.contents().names()).containsExactly(name);
      assertThat(notebook.contents().find("0".repeat(64))).isEmpty();
    }
    assertThat(Integer.parseInt(Books.ask(file, "SELECT length(bytes) FROM content")))
        .isLessThan(POSITIONS.length / 10);
  }

  @Test
  void whatWasChangedIsNamedAndADayGoesOn() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.trails().keep(QUARRY, Days.MORNING);
      notebook.contents().put(POSITIONS);
    }
    Books.sql(
        file,
        "UPDATE trail SET text = replace(text, 'Ford', 'Fort')",
        "UPDATE content SET bytes = x'00'");
    try (SqliteNotebook notebook = Books.open(file)) {
      assertThat(notebook.verify().problems())
          .extracting(problem -> (Object) problem.fault())
          .containsExactly(NotebookFault.TRAIL_DIFFERS, NotebookFault.CONTENT_DIFFERS);
      assertThatThrownBy(() -> notebook.trails().find("Quarry loop", 1))
          .isInstanceOf(NotebookException.class);
      assertThat(notebook.contents().find(Hash.of(POSITIONS).hex())).isEmpty();
      notebook.putDraft("next", "question: Which bar?");
      assertThat(notebook.trails().keep(MOVED, Days.MORNING).title().number()).isEqualTo(2);
      // What is brought in again is whole again.
      notebook.contents().put(POSITIONS);
      assertThat(notebook.contents().find(Hash.of(POSITIONS).hex())).isPresent();
    }
  }

  @Test
  void backupsAndRecoveryCarryBoth() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.trails().keep(QUARRY, Days.MORNING);
      notebook.trails().keep(MOVED, Days.MORNING.plusSeconds(60));
      notebook.contents().put(POSITIONS);
    }
    SqliteFiles files =
        new SqliteFiles(Clock.fixed(Days.MORNING, Days.ZONE), () -> new SeededBytes(3).next(16));
    Path backup = files.backUp(file);
    holdsBoth(backup);
    assertThat(files.backUpIfChanged(file)).isEmpty();
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.contents().put(new byte[] {1, 2, 3});
    }
    assertThat(files.backUpIfChanged(file)).isPresent();
    Path fresh = folder.resolve("fresh.blindlap");
    files.recover(backup, fresh);
    holdsBoth(fresh);
  }

  @Test
  void recoverySavesWhatStillVerifiesWithoutTheDatabasesHelp() throws Exception {
    byte[] noise = new byte[60_000];
    new Random(4).nextBytes(noise);
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.trails().keep(QUARRY, Days.MORNING);
      notebook.trails().keep(MOVED, Days.MORNING.plusSeconds(60));
      notebook.contents().put(POSITIONS);
      notebook.contents().put(noise);
    }
    byte[] bytes = Files.readAllBytes(file);
    // The first page leads to every table: without it only page by page is left.
    Arrays.fill(bytes, 100, 4096, (byte) 0);
    Files.write(file, bytes);
    Path fresh = folder.resolve("fresh.blindlap");
    Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    holdsBoth(fresh);
    try (SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.contents().find(Hash.of(noise).hex()).orElseThrow()).isEqualTo(noise);
    }
  }

  @Test
  void aTrailThatCannotBeSavedIsListed() throws Exception {
    try (SqliteNotebook notebook = Books.open(file)) {
      notebook.trails().keep(QUARRY, Days.MORNING);
      notebook.trails().keep(MOVED, Days.MORNING.plusSeconds(60));
    }
    Books.sql(file, "UPDATE trail SET text = replace(text, 'Ford', 'Fort') WHERE version = 1");
    Path fresh = folder.resolve("fresh.blindlap");
    var report = Recovery.run(file, fresh, new SeededBytes(9).next(16), Days.MORNING);
    assertThat(report.losses())
        .extracting(problem -> (Object) problem.fault())
        .containsExactly(NotebookFault.TRAIL_LOST);
    assertThat(report.losses().get(0).details()).containsExactly("Quarry loop");
    try (SqliteNotebook notebook = Books.open(fresh)) {
      assertThat(notebook.trails().latest("Quarry loop").orElseThrow().trail()).isEqualTo(MOVED);
    }
  }

  private static void holdsBoth(Path notebook) {
    try (SqliteNotebook open = Books.open(notebook)) {
      assertThat(open.trails().find("Quarry loop", 1).orElseThrow().trail()).isEqualTo(QUARRY);
      assertThat(open.trails().find("Quarry loop", 2).orElseThrow().trail()).isEqualTo(MOVED);
      assertThat(open.contents().find(Hash.of(POSITIONS).hex())).map(Optional::of).isPresent();
      assertThat(open.verify().sound()).isTrue();
    }
  }
}
