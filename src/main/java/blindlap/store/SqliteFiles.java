package blindlap.store;

import blindlap.fault.Problem;
import blindlap.session.Notebook;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookFault;
import blindlap.session.NotebookFiles;
import blindlap.session.NotebookId;
import blindlap.session.NotebookReport;
import blindlap.session.NotebookTrouble;
import blindlap.session.RecoveryReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/** Notebook files of this program on disk. */
public final class SqliteFiles implements NotebookFiles {
  private final Clock clock;
  private final Supplier<byte[]> ids;

  /**
   * @param clock names backups and says when days begin
   * @param ids 16 random bytes for each new file
   */
  public SqliteFiles(Clock clock, Supplier<byte[]> ids) {
    this.clock = clock;
    this.ids = ids;
  }

  @Override
  public NotebookReport verify(Path notebook) {
    requireThere(notebook, NotebookTrouble.NOTHING_TO_CHECK);
    try (SqliteNotebook open = SqliteNotebook.open(notebook, ids.get(), clock.instant())) {
      return open.verify();
    } catch (NotebookException refusal) {
      if (refusal.kind() != Kind.DAMAGED) {
        throw refusal;
      }
      return inFolder(notebook, folder -> verifyDamaged(notebook, folder.resolve("damaged")));
    }
  }

  private static NotebookReport verifyDamaged(Path notebook, Path copy)
      throws IOException, SQLException {
    Copies.withJournal(notebook, copy);
    try (Connection connection = Connections.connect(copy, Connections.BUSY_MILLISECONDS)) {
      NotebookReport report = NotebookCheck.run(connection, new SummaryTable(connection));
      // Pages, tables and entries are whole, and yet it was refused: that leaves its first bytes.
      return report.sound()
          ? new NotebookReport(
              report.sessions(),
              report.entries(),
              List.of(Problem.of(NotebookFault.FILE_DAMAGED, "", "HEADER")))
          : report;
    }
  }

  @Override
  public RecoveryReport recover(Path damaged, Path fresh) {
    return Recovery.run(damaged, fresh, ids.get(), clock.instant());
  }

  private Backups backupsOf(Path notebook) {
    return new Backups(notebook, Backups.usualFolder(notebook), clock, ids);
  }

  @Override
  public Path backUp(Path notebook) {
    return backupsOf(notebook).now();
  }

  @Override
  public Optional<Path> backUpIfChanged(Path notebook) {
    return backupsOf(notebook).ifChanged();
  }

  @Override
  public SortedMap<Instant, Path> backups(Path notebook) {
    return backupsOf(notebook).list();
  }

  @Override
  public ScheduledFuture<?> watch(
      Path notebook,
      ScheduledExecutorService executor,
      Duration every,
      Consumer<NotebookException> trouble) {
    return backupsOf(notebook).watch(executor, every, trouble);
  }

  @Override
  public <T> T read(Path other, Function<Notebook, T> reader) {
    requireThere(other, NotebookTrouble.NOTHING_TO_READ);
    return inFolder(
        other,
        folder -> {
          Path copy = folder.resolve("other");
          copy(other, copy);
          Connection connection = Connections.open(copy, Connections.BUSY_MILLISECONDS);
          // Brought up to this version as a copy; whatever is said of it names the file itself.
          Migrations.run(connection, copy, NotebookId.of(ids.get()), clock.instant());
          try (Notebook notebook =
              SqliteNotebook.on(connection, other, ids.get(), clock.instant())) {
            return reader.apply(notebook);
          }
        });
  }

  /** A copy of one moment, though another program may be writing; the file is only read. */
  private static void copy(Path other, Path copy) throws IOException, SQLException {
    NotebookFile.checkPlace(other);
    try (Connection connection = Connections.readOnly(other)) {
      if (NotebookFile.version(connection, other) == 0) {
        throw NotebookFile.notANotebook(other, null);
      }
      Copies.write(connection, copy);
    } catch (SQLException e) {
      if (Connections.explain(e, other).kind() != Kind.READ_ONLY) {
        throw e;
      }
      // Something is to be rolled back, which only a copy can be: nobody writes to it then.
      Copies.withJournal(other, copy);
    }
  }

  private static void requireThere(Path file, NotebookTrouble trouble) {
    if (!Files.exists(file)) {
      throw new NotebookException(Kind.NOT_FOUND, trouble, null, file);
    }
  }

  /** Work in a folder that is gone afterwards. */
  private interface InFolder<T> {
    T run(Path folder) throws IOException, SQLException;
  }

  private static <T> T inFolder(Path file, InFolder<T> work) {
    try {
      Path folder = Files.createTempDirectory("blindlap");
      try {
        return work.run(folder);
      } finally {
        Copies.deleteFolder(folder);
      }
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    } catch (IOException e) {
      throw Copies.failed(file, e);
    }
  }
}
