package blindlap.store;

import blindlap.session.Fact;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** Notebooks in temporary folders, and other programs that look at them. */
final class Books {
  private Books() {}

  static SqliteNotebook open(Path file) {
    return open(file, 77);
  }

  static SqliteNotebook open(Path file, long idSeed) {
    return SqliteNotebook.open(file, new SeededBytes(idSeed).next(16), Days.MORNING, 300);
  }

  /** Appends facts, one minute after the entry before. */
  static List<StoredEntry> put(SqliteNotebook notebook, SessionId session, Fact... facts) {
    return put(notebook, session, List.of(facts));
  }

  static List<StoredEntry> put(SqliteNotebook notebook, SessionId session, List<Fact> facts) {
    var known = notebook.heads(session);
    long minutes = known.stream().mapToLong(head -> head.number()).sum();
    return notebook
        .append(session, known, facts, Days.MORNING.plusSeconds(60 * minutes), Days.ZONE)
        .orElseThrow();
  }

  static SessionState state(SqliteNotebook notebook, SessionId session) {
    return SessionState.of(notebook.entries(session));
  }

  /** Any other program that opens the file with plain SQLite. */
  static Connection plain(Path file) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + file);
  }

  static void sql(Path file, String... statements) throws SQLException {
    try (Connection connection = plain(file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  static String ask(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() ? row.getString(1) : "nothing";
    }
  }

  static String ask(Path file, String sql) throws SQLException {
    try (Connection connection = plain(file)) {
      return ask(connection, sql);
    }
  }
}
