package blindlap.store;

import blindlap.session.NotebookException;
import blindlap.session.NotebookException.Kind;
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

  static Connection open(Path file, boolean readOnly, int busyMilliseconds) {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(readOnly);
    config.setBusyTimeout(busyMilliseconds);
    try {
      Connection connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
      try {
        settings(connection, file, readOnly);
        return connection;
      } catch (SQLException | RuntimeException e) {
        connection.close();
        throw e;
      }
    } catch (SQLException e) {
      throw explain(e, file);
    }
  }

  private static void settings(Connection connection, Path file, boolean readOnly)
      throws SQLException {
    try (Statement statement = connection.createStatement()) {
      if (!readOnly) {
        statement.execute("PRAGMA journal_mode = TRUNCATE");
        statement.execute("PRAGMA synchronous = EXTRA");
        statement.execute("PRAGMA secure_delete = ON");
        require(statement, file, "journal_mode", "truncate");
        require(statement, file, "synchronous", "3");
        require(statement, file, "secure_delete", "1");
      }
      statement.execute("PRAGMA trusted_schema = OFF");
      statement.execute("PRAGMA cell_size_check = ON");
    }
  }

  private static void require(Statement statement, Path file, String pragma, String value)
      throws SQLException {
    try (ResultSet row = statement.executeQuery("PRAGMA " + pragma)) {
      String found = row.next() ? row.getString(1) : "nothing";
      if (!value.equalsIgnoreCase(found)) {
        throw new NotebookException(
            Kind.OTHER,
            "The notebook "
                + file
                + " cannot be kept safely here: "
                + pragma
                + " is "
                + found
                + " instead of "
                + value
                + "; nothing was written. Move it to a local disk.");
      }
    }
  }

  /** Turns a database error into one sentence. */
  static NotebookException explain(SQLException error, Path file) {
    SQLiteErrorCode code =
        error instanceof SQLiteException sqlite
            ? sqlite.getResultCode()
            : SQLiteErrorCode.getErrorCode(error.getErrorCode());
    int primary = code.code & 0xff;
    if (primary == SQLiteErrorCode.SQLITE_BUSY.code
        || primary == SQLiteErrorCode.SQLITE_LOCKED.code) {
      return new NotebookException(
          Kind.LOCKED,
          "The notebook "
              + file
              + " is held by another program; nothing was written. Close the"
              + " other program and try again.",
          error);
    }
    if (primary == SQLiteErrorCode.SQLITE_FULL.code) {
      return new NotebookException(
          Kind.FULL,
          "The disk is full: the last entry was not saved, everything before it is kept in "
              + file
              + ". Free some space and enter it again.",
          error);
    }
    if (primary == SQLiteErrorCode.SQLITE_READONLY.code
        || (primary == SQLiteErrorCode.SQLITE_CANTOPEN.code && Files.exists(file))) {
      return new NotebookException(
          Kind.READ_ONLY,
          "The notebook "
              + file
              + " or its folder cannot be written to; nothing was changed. Make"
              + " it writable or copy it elsewhere.",
          error);
    }
    if (primary == SQLiteErrorCode.SQLITE_CORRUPT.code
        || primary == SQLiteErrorCode.SQLITE_NOTADB.code) {
      return damaged(file, error);
    }
    return new NotebookException(
        Kind.OTHER,
        "The notebook "
            + file
            + " cannot be used ("
            + error.getMessage()
            + "); nothing was written.",
        error);
  }

  static NotebookException damaged(Path file, Throwable cause) {
    return new NotebookException(
        Kind.DAMAGED,
        "The notebook "
            + file
            + " is damaged ("
            + cause.getMessage()
            + "); it was left as it is. Go on with a copy of your last backup.",
        cause);
  }
}
