package blindlap.store;

import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookId;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;

/** Whole copies of an open notebook: temporary file beside the target, synced, moved into place. */
final class Copies {
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
      try (PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
        statement.setString(1, part.toString());
        statement.execute();
      }
      finish.run(part);
      sync(part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
      Files.deleteIfExists(part.resolveSibling(part.getFileName() + "-journal"));
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

  private static void sync(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  static NotebookException failed(Path target, IOException why) {
    return new NotebookException(
        Kind.OTHER,
        "The copy "
            + target
            + " could not be written ("
            + why.getMessage()
            + "); the notebook itself is unchanged. Free some space or make the folder writable.",
        why);
  }
}
