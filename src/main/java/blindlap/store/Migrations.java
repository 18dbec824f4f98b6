package blindlap.store;

import blindlap.session.NotebookId;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;

/** Brings a file to the current version in one exclusive transaction; numbered SQL files. */
final class Migrations {
  private Migrations() {}

  static void run(Connection connection, Path file, NotebookId newId, Instant now)
      throws SQLException {
    if (userVersion(connection) == NotebookFile.VERSION) {
      return;
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      try {
        int from = userVersion(connection);
        for (int version = from + 1; version <= NotebookFile.VERSION; version++) {
          for (String sql : statements(version)) {
            statement.execute(sql);
          }
        }
        if (from == 0) {
          identify(connection, newId, now);
          statement.execute("PRAGMA application_id = " + NotebookFile.APPLICATION_ID);
        }
        statement.execute("PRAGMA user_version = " + NotebookFile.VERSION);
        statement.execute("COMMIT");
      } catch (SQLException | RuntimeException e) {
        statement.execute("ROLLBACK");
        throw e;
      }
    }
  }

  private static int userVersion(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA user_version")) {
      return row.next() ? row.getInt(1) : 0;
    }
  }

  private static void identify(Connection connection, NotebookId id, Instant now)
      throws SQLException {
    String sql = "INSERT INTO notebook (only, id, made_at) VALUES (1, ?, ?)";
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, id.text());
      statement.setString(2, now.toString());
      statement.executeUpdate();
    }
  }

  private static Iterable<String> statements(int version) {
    String name = "/blindlap/store/migration-" + version + ".sql";
    try (InputStream in = Migrations.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + name);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      String withoutComments = text.replaceAll("(?m)^--.*$", "").strip();
      return java.util.List.of(withoutComments.split("\\R\\s*\\R"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
