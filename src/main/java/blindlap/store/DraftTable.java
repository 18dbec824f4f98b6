package blindlap.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;

/** Drafts of plans: kept and replaced as they are typed, not part of the record. */
final class DraftTable {
  private final Connection connection;

  DraftTable(Connection connection) {
    this.connection = connection;
  }

  Map<String, String> all() throws SQLException {
    Map<String, String> drafts = new LinkedHashMap<>();
    try (PreparedStatement statement =
            connection.prepareStatement("SELECT name, text FROM draft ORDER BY name");
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        drafts.put(rows.getString(1), rows.getString(2));
      }
    }
    return drafts;
  }

  int put(String name, String text) throws SQLException {
    return change(
        "INSERT INTO draft (name, text) VALUES (?, ?)"
            + " ON CONFLICT (name) DO UPDATE SET text = excluded.text",
        name,
        text);
  }

  int delete(String name) throws SQLException {
    return change("DELETE FROM draft WHERE name = ?", name);
  }

  private int change(String sql, String... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setString(i + 1, values[i]);
      }
      return statement.executeUpdate();
    }
  }
}
