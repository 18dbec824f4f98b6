package blindlap.store;

import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookId;
import blindlap.session.NotebookTrouble;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.concurrent.locks.LockSupport;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteErrorCode;

/** Whole copies of an open notebook: temporary file beside the target, synced, moved into place. */
final class Copies {
  /** Copying this much takes well under a second; a writer waits that long without noticing. */
  private static final long LARGEST_AT_ONCE = 64L << 20;

  private static final int PAGES_A_STEP = 256;
  private static final long PAUSE_NANOS = 5_000_000;
  private static final int BUSY_PAUSE_MILLISECONDS = 100;
  private static final int MOST_BUSY_PAUSES = 100;

  private Copies() {}

  /** What may be done to a copy before it takes its place. */
  interface Finish {
    void run(Path copy) throws SQLException, IOException;
  }

  /** Writes a copy; whatever stood there before is replaced only once the copy is complete. */
  static void write(Connection connection, Path target) throws SQLException, IOException {
    write(connection, target, copy -> {});
  }

  /** Writes a copy that is finished by someone before it takes its place. */
  static void write(Connection connection, Path target, Finish finish)
      throws SQLException, IOException {
    Path folder = java.util.Objects.requireNonNull(target.toAbsolutePath().getParent());
    // A name of its own, for two programs may be at it at once; SQLite takes an empty file.
    Path part = Files.createTempFile(folder, target.getFileName() + ".", ".part");
    try {
      if (size(connection) <= LARGEST_AT_ONCE) {
        atOnce(connection, part);
      } else {
        inSteps(connection, part);
      }
      finish.run(part);
      sync(part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
      Files.deleteIfExists(part.resolveSibling(part.getFileName() + "-journal"));
    }
  }

  private static long size(Connection connection) throws SQLException {
    return (long) NotebookFile.number(connection, "page_count")
        * NotebookFile.number(connection, "page_size");
  }

  private static void atOnce(Connection connection, Path part) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
      statement.setString(1, part.toString());
      statement.execute();
    }
  }

  /**
   * Copies page by page and lets go of the notebook between steps, so that nobody who records waits
   * for a large copy. Where someone writes meanwhile, SQLite starts again by itself.
   */
  static void inSteps(Connection connection, Path part) throws SQLException {
    SQLiteConnection source = connection.unwrap(SQLiteConnection.class);
    int code =
        source
            .getDatabase()
            .backup(
                "main",
                part.toString(),
                (remaining, all) -> LockSupport.parkNanos(PAUSE_NANOS),
                BUSY_PAUSE_MILLISECONDS,
                MOST_BUSY_PAUSES,
                PAGES_A_STEP);
    if (code != SQLiteErrorCode.SQLITE_OK.code) {
      throw new SQLException("the copy stopped", "", code);
    }
  }

  /** Gives a copy an id of its own, so that it never goes on with the chains of the original. */
  static void rename(Path copy, NotebookId id) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.DELETE);
    try (Connection connection = config.createConnection("jdbc:sqlite:" + Connections.name(copy));
        PreparedStatement statement =
            connection.prepareStatement("UPDATE notebook SET id = ? WHERE only = 1")) {
      statement.setString(1, id.text());
      statement.executeUpdate();
    }
  }

  /** A copy byte by byte, with what is left to roll back rolled back in it, if that still works. */
  static void withJournal(Path from, Path copy) throws IOException {
    Files.copy(from, copy);
    Path journal = NotebookPlace.beside(from, "-journal");
    if (Files.exists(journal) && Files.size(journal) > 0) {
      Files.copy(journal, copy.resolveSibling(copy.getFileName() + "-journal"));
      try (Connection connection = Connections.connect(copy, Connections.BUSY_MILLISECONDS)) {
        NotebookFile.number(connection, "user_version");
      } catch (SQLException e) {
        // Whoever reads the copy finds out what of it can be read.
      }
    }
  }

  static void deleteFolder(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }

  private static void sync(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  static NotebookException failed(Path target, IOException why) {
    return new NotebookException(
        Kind.OTHER, NotebookTrouble.COPY_FAILED, why, target, String.valueOf(why.getMessage()));
  }
}
