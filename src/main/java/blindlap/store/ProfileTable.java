package blindlap.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Versions of profiles, a row each. Rows are only added. */
final class ProfileTable {
  private final Connection connection;

  /** A row as it lies in the file. */
  record Row(String sha256, String text) {}

  ProfileTable(Connection connection) {
    this.connection = connection;
  }

  List<Row> all() throws SQLException {
    List<Row> found = new ArrayList<>();
    try (PreparedStatement statement =
            connection.prepareStatement("SELECT sha256, text FROM profile ORDER BY sha256");
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        found.add(new Row(rows.getString(1), rows.getString(2)));
      }
    }
    return found;
  }

  /** Adds a row; 0 if one under this hash is there already. */
  int add(Row row) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("INSERT OR IGNORE INTO profile (sha256, text) VALUES (?, ?)")) {
      statement.setString(1, row.sha256());
      statement.setString(2, row.text());
      return statement.executeUpdate();
    }
  }
}
