package blindlap.store;

import blindlap.session.Damage;
import blindlap.session.NotebookException;
import blindlap.session.NotebookId;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;

/**
 * What is checked before anything is read: tables and triggers as this program makes them, the id,
 * and, for a file of ordinary size, every page. Entries are hashed again whenever they are read.
 */
final class OpeningCheck {
  /** Larger files are checked by the backup and by {@code notebook --verify}: it takes a while. */
  static final long LARGEST_CHECKED = 32L << 20;

  private OpeningCheck() {}

  /**
   * Checks an opened file of the current version.
   *
   * @throws blindlap.session.NotebookException if it is damaged
   */
  static void run(Connection connection, Path file) throws SQLException {
    run(connection, file, NotebookFile.VERSION);
  }

  /** The same for a file of an earlier version, before it is brought to this one. */
  static void run(Connection connection, Path file, int version) throws SQLException {
    List<String> differences = Schema.differences(connection, version);
    if (!differences.isEmpty()) {
      throw NotebookException.damaged(file, null, Damage.TABLES, String.join(", ", differences));
    }
    long size =
        (long) NotebookFile.number(connection, "page_count")
            * NotebookFile.number(connection, "page_size");
    if (size <= LARGEST_CHECKED) {
      String found = integrity(connection);
      if (!found.isEmpty()) {
        throw NotebookException.damaged(file, null, Damage.DATABASE, found);
      }
    }
  }

  /** The first thing the database finds wrong with its file; empty if nothing. */
  static String integrity(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA integrity_check(1)")) {
      String found = row.next() ? row.getString(1) : "no answer";
      return found.equals("ok") ? "" : found.lines().findFirst().orElse("damaged");
    }
  }

  static NotebookId id(Connection connection, Path file) throws SQLException {
    return id(connection).orElseThrow(() -> NotebookException.damaged(file, null, Damage.NO_ID));
  }

  static boolean hasId(Connection connection) throws SQLException {
    return id(connection).isPresent();
  }

  private static Optional<NotebookId> id(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT id FROM notebook WHERE only = 1")) {
      return row.next() ? Optional.of(new NotebookId(row.getString(1))) : Optional.empty();
    } catch (IllegalArgumentException notAnId) {
      return Optional.empty();
    }
  }
}
