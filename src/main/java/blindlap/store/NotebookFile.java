package blindlap.store;

import blindlap.session.Damage;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookTrouble;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * What a file says of itself before anything else is asked of it: application id and version, which
 * SQLite keeps at bytes 68 and 60 of the file. They are asked through the connection; a second
 * handle on the file would, when closed, drop the locks that this process holds on it.
 */
final class NotebookFile {
  /** "Blap" as four bytes. */
  static final int APPLICATION_ID = 0x426C6170;

  /** The version this program writes. */
  static final int VERSION = 10;

  private NotebookFile() {}

  /**
   * Checks that a file can lie there, before anything is opened or made.
   *
   * @throws NotebookException if its folder is missing or it is a folder itself
   */
  static void checkPlace(Path file) {
    Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new NotebookException(Kind.NOT_FOUND, NotebookTrouble.NO_FOLDER, null, file);
    }
    if (Files.isDirectory(file) || isOneByte(file)) {
      throw notANotebook(file, null);
    }
  }

  /** SQLite takes a file of one byte for an empty one and would write over it. */
  private static boolean isOneByte(Path file) {
    try {
      return Files.exists(file) && Files.size(file) == 1;
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Reads the version of a notebook.
   *
   * @return 0 for a file that was not there or holds nothing at all
   * @throws NotebookException if it is not a notebook or too new
   */
  static int version(Connection connection, Path file) throws SQLException {
    int application = number(connection, "application_id");
    if (application == 0 && isEmpty(connection)) {
      return 0;
    }
    if (application != APPLICATION_ID) {
      throw notANotebook(file, null);
    }
    int version = number(connection, "user_version");
    if (version > VERSION) {
      throw new NotebookException(
          Kind.TOO_NEW, NotebookTrouble.TOO_NEW, null, file, version, VERSION);
    }
    if (version < 1) {
      throw NotebookException.damaged(file, null, Damage.VERSION, version);
    }
    return version;
  }

  /**
   * Another program may have put the notebook into write-ahead mode, which is undone. Where the two
   * bytes that say so (18 and 19) differ, one of them was changed: undoing that would write to a
   * damaged file. Only then a second handle is worth its risk.
   */
  static void checkJournal(Connection connection, Path file) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA journal_mode")) {
      if (!row.next() || !"wal".equalsIgnoreCase(row.getString(1))) {
        return;
      }
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] header = in.readNBytes(20);
      if (header.length < 20 || header[18] != header[19]) {
        throw NotebookException.damaged(file, null, Damage.HEADER);
      }
    } catch (IOException e) {
      throw new SQLException(e);
    }
  }

  static NotebookException notANotebook(
      Path file, @org.jspecify.annotations.Nullable Throwable why) {
    return new NotebookException(Kind.NOT_A_NOTEBOOK, NotebookTrouble.NOT_A_NOTEBOOK, why, file);
  }

  private static boolean isEmpty(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT 1 FROM sqlite_schema LIMIT 1")) {
      return !row.next();
    }
  }

  static int number(Connection connection, String pragma) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA " + pragma)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }
}
