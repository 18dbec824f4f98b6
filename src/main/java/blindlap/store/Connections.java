package blindlap.store;

import blindlap.session.Damage;
import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
import blindlap.session.NotebookTrouble;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * Opens connections with the settings the notebook depends on, and reads each of them back: one
 * file to copy (rollback journal, truncated), on disk when a commit returns (synchronous EXTRA),
 * nothing deleted left readable (secure_delete).
 */
final class Connections {
  static final int BUSY_MILLISECONDS = 10_000;

  private Connections() {}

  /**
   * Opens a file, making it if it is missing.
   *
   * @throws NotebookException if it cannot be opened, or is not SQLite's
   */
  static Connection open(Path file, int busyMilliseconds) {
    NotebookFile.checkPlace(file);
    NotebookPlace.make(file);
    try {
      Connection connection = connect(file, busyMilliseconds);
      try {
        settings(connection, file);
        return connection;
      } catch (SQLException | RuntimeException e) {
        closeQuietly(connection, e);
        throw e;
      }
    } catch (SQLException e) {
      throw explain(e, file);
    }
  }

  static Connection connect(Path file, int busyMilliseconds) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(busyMilliseconds);
    return config.createConnection("jdbc:sqlite:" + name(file));
  }

  /** A connection through which nothing can be written, nor rolled back. */
  static Connection readOnly(Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MILLISECONDS);
    config.setReadOnly(true);
    return config.createConnection("jdbc:sqlite:" + name(file));
  }

  /**
   * The driver takes what follows a question mark for settings, unless it is part of an address.
   */
  static String name(Path file) {
    Path path = file.toAbsolutePath();
    return path.toString().contains("?") ? path.toUri().toASCIIString() : path.toString();
  }

  private static void settings(Connection connection, Path file) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      // What the file is comes first: nothing is set on one that is not a notebook of this program.
      NotebookFile.version(connection, file);
      NotebookFile.checkJournal(connection, file);
      statement.execute("PRAGMA journal_mode = TRUNCATE");
      statement.execute("PRAGMA synchronous = EXTRA");
      statement.execute("PRAGMA secure_delete = ON");
      statement.execute("PRAGMA trusted_schema = OFF");
      statement.execute("PRAGMA cell_size_check = ON");
      require(statement, file, "journal_mode", "truncate");
      require(statement, file, "synchronous", "3");
      require(statement, file, "secure_delete", "1");
      require(statement, file, "trusted_schema", "0");
      require(statement, file, "cell_size_check", "1");
    }
  }

  private static void require(Statement statement, Path file, String pragma, String value)
      throws SQLException {
    try (ResultSet row = statement.executeQuery("PRAGMA " + pragma)) {
      String found = row.next() ? row.getString(1) : "nothing";
      if (!value.equalsIgnoreCase(found)) {
        throw new NotebookException(
            Kind.OTHER, NotebookTrouble.UNSAFE_PLACE, null, file, pragma, found, value);
      }
    }
  }

  static void closeQuietly(Connection connection, Exception cause) {
    try {
      connection.close();
    } catch (SQLException e) {
      cause.addSuppressed(e);
    }
  }

  /** Rolls back what is left of a transaction; a database error may have done so already. */
  static void rollBack(Connection connection, Exception cause) {
    try (Statement statement = connection.createStatement()) {
      statement.execute("ROLLBACK");
    } catch (SQLException alreadyRolledBack) {
      cause.addSuppressed(alreadyRolledBack);
    }
  }

  /** Turns a database error into one sentence. */
  static NotebookException explain(SQLException error, Path file) {
    SQLiteErrorCode code =
        error instanceof SQLiteException sqlite
            ? sqlite.getResultCode()
            : SQLiteErrorCode.getErrorCode(error.getErrorCode());
    return switch (SQLiteErrorCode.getErrorCode(code.code & 0xff)) {
      case SQLITE_BUSY, SQLITE_LOCKED ->
          new NotebookException(Kind.LOCKED, NotebookTrouble.HELD, error, file);
      case SQLITE_FULL -> new NotebookException(Kind.FULL, NotebookTrouble.DISK_FULL, error, file);
      case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM -> notWritable(error, file);
      case SQLITE_NOTADB -> NotebookFile.notANotebook(file, error);
      case SQLITE_CORRUPT -> damaged(error, file);
      default -> other(error, file);
    };
  }

  private static NotebookException notWritable(SQLException error, Path file) {
    NotebookTrouble what =
        Files.exists(file) && !Files.isReadable(file)
            ? NotebookTrouble.NOT_READABLE
            : NotebookTrouble.NOT_WRITABLE;
    return new NotebookException(Kind.READ_ONLY, what, error, file);
  }

  private static NotebookException other(SQLException error, Path file) {
    // SQLite has no code of its own for a header that names a form it never wrote.
    if (String.valueOf(error.getMessage()).contains("unsupported file format")) {
      return NotebookException.damaged(file, error, Damage.FORMAT);
    }
    Path place = Files.exists(file) ? file : file.toAbsolutePath().getParent();
    if (place != null && !Files.isWritable(place)) {
      return notWritable(error, file);
    }
    return new NotebookException(
        Kind.OTHER, NotebookTrouble.UNUSABLE, error, file, String.valueOf(error.getMessage()));
  }

  private static NotebookException damaged(SQLException error, Path file) {
    return NotebookException.damaged(
        file, error, Damage.DATABASE, String.valueOf(error.getMessage()));
  }
}
