package blindlap.store;

import blindlap.session.Damage;
import blindlap.session.NotebookException;
import blindlap.session.NotebookId;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;

/**
 * Brings a file to the current version in one exclusive transaction, after a copy of the old one
 * was laid beside it; numbered SQL files.
 */
final class Migrations {
  private Migrations() {}

  static void run(Connection connection, Path file, NotebookId newId, Instant now)
      throws SQLException {
    int before = NotebookFile.version(connection, file);
    if (before == NotebookFile.VERSION) {
      return;
    }
    if (before > 0) {
      OpeningCheck.run(connection, file, before);
      if (Schema.later(connection, before)) {
        throw NotebookException.damaged(file, null, Damage.VERSION, before);
      }
      keepOld(connection, file, before);
      // Files of earlier versions have the mode that was usual; whoever changes it later has
      // reasons.
      NotebookPlace.ownersAlone(file);
    }
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      try {
        int from = NotebookFile.version(connection, file);
        for (int version = from + 1; version <= NotebookFile.VERSION; version++) {
          for (String sql : Schema.statements(version)) {
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
        Connections.rollBack(connection, e);
        throw e;
      }
    }
  }

  /** The copy of the old version that is kept beside a migrated notebook. */
  static Path oldCopy(Path file, int version) {
    return NotebookPlace.beside(file, ".version-" + version);
  }

  private static void keepOld(Connection connection, Path file, int version) throws SQLException {
    try {
      Copies.write(connection, oldCopy(file, version));
    } catch (IOException e) {
      throw Copies.failed(oldCopy(file, version), e);
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
}
