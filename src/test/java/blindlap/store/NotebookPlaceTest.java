package blindlap.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import blindlap.session.Fact;
import blindlap.session.day.SessionId;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where a notebook and what belongs to it lie, and who may read them. */
class NotebookPlaceTest {
  private static final SessionId SESSION = Days.session(1);

  @TempDir Path folder;
  private Path file;
  private final SeededBytes ids = new SeededBytes(5);
  private final SqliteFiles files =
      new SqliteFiles(Clock.fixed(Days.MORNING, ZoneOffset.UTC), () -> ids.next(16));

  @BeforeEach
  void linksAndModes() throws IOException {
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
    file = folder.resolve("notebook.blindlap");
  }

  private void make() {
    try (SqliteNotebook notebook = Books.open(file)) {
      Books.put(
          notebook,
          SESSION,
          Days.committed(Days.plan("R. Lind", "Quarry loop", 8), SESSION, 1),
          new Fact.WarmUpRidden(1));
    }
  }

  private static String mode(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  /** Modes of everything in the folder, by name. */
  private Map<String, String> modes() throws IOException {
    Map<String, String> modes = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.filter(path -> !path.equals(folder)).toList()) {
        modes.put(folder.relativize(each).toString(), mode(each));
      }
    }
    return modes;
  }

  @Test
  void notebookJournalBackupsAndWhatIsRecoveredAreTheOwnersAlone() throws Exception {
    make();
    files.backUp(file);
    files.recover(file, folder.resolve("rescued.blindlap"));
    try (Connection connection = Books.plain(file);
        Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      statement.execute("INSERT INTO draft (name, text) VALUES ('a', 'b')");

      assertThat(modes())
          .containsKeys("notebook.blindlap-journal", "notebook.blindlap-backups")
          .hasSizeGreaterThanOrEqualTo(5)
          .allSatisfy((name, mode) -> assertThat(mode).as(name).endsWith("------"));
      statement.execute("ROLLBACK");
    }
  }

  @Test
  void aNotebookOfAnEarlierVersionBecomesTheOwnersAloneWhenItIsBroughtUp() throws IOException {
    try (var earlier = getClass().getResourceAsStream("/blindlap/store/notebook-3.blindlap")) {
      Files.copy(earlier, file);
    }
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));

    Books.open(file).close();

    assertThat(modes())
        .containsKey("notebook.blindlap.version-3")
        .allSatisfy((name, mode) -> assertThat(mode).as(name).isEqualTo("rw-------"));
  }

  @Test
  void whoeverOpensUpANotebookOfThisVersionHasReasonsAndKeepsThem() throws IOException {
    make();
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));

    Books.open(file).close();

    assertThat(mode(file)).isEqualTo("rw-rw----");
  }

  @Test
  void aNotebookThatIsOpenedThroughALinkHasTheBackupsOfTheFileItself() throws IOException {
    make();
    Path elsewhere = Files.createDirectory(folder.resolve("elsewhere"));
    Path link = Files.createSymbolicLink(elsewhere.resolve("mine.blindlap"), file);
    Path backup = files.backUp(file);

    assertThat(files.backups(link).values()).containsExactly(backup);
    assertThat(files.backUpIfChanged(link)).isEmpty();
    assertThat(files.backUp(link).getParent()).isEqualTo(backup.getParent());
    try (Stream<Path> all = Files.list(elsewhere)) {
      assertThat(all).containsExactly(link);
    }
  }

  @Test
  void anEmptiedFileBehindALinkIsNotTakenForANewNotebook() throws IOException {
    make();
    files.backUp(file);
    Path link =
        Files.createSymbolicLink(folder.resolve("link.blindlap"), Path.of("notebook.blindlap"));
    Files.write(file, new byte[0]);

    assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> Books.open(link)))
        .isInstanceOf(blindlap.session.NotebookException.class);
    assertThat(file).isEmptyFile();
  }

  @Test
  void aLinkToNothingYetBecomesANotebookThere() throws IOException {
    Path link = Files.createSymbolicLink(folder.resolve("link.blindlap"), file);

    Books.open(link).close();

    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(mode(file)).isEqualTo("rw-------");
  }
}
