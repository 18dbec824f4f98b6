package blindlap.store;

import blindlap.session.TrailTitle;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;

/** Versions of trails, a row each. Rows are only added. */
final class TrailTable {
  private static final String COLUMNS = "SELECT name, version, sha256, made_at, text FROM trail ";

  private final Connection connection;

  /** A row as it lies in the file. */
  record Row(TrailTitle title, String text) {}

  TrailTable(Connection connection) {
    this.connection = connection;
  }

  /** All versions without their texts, by name and number. */
  List<TrailTitle> titles() throws SQLException {
    return rows("SELECT name, version, sha256, made_at, '' FROM trail ORDER BY name, version")
        .stream()
        .map(Row::title)
        .toList();
  }

  /** All versions, by name and number. */
  List<Row> all() throws SQLException {
    return rows(COLUMNS + "ORDER BY name, version");
  }

  Optional<Row> find(String name, int number) throws SQLException {
    return rows(COLUMNS + "WHERE name = ? AND version = ?", name, number).stream().findFirst();
  }

  Optional<Row> find(String sha256) throws SQLException {
    return rows(COLUMNS + "WHERE sha256 = ? ORDER BY name, version", sha256).stream().findFirst();
  }

  /** The highest number of a name; 0 if there is none. */
  int highest(String name) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement("SELECT max(version) FROM trail WHERE name = ?")) {
      statement.setString(1, name);
      try (ResultSet row = statement.executeQuery()) {
        return row.next() ? row.getInt(1) : 0;
      }
    }
  }

  int add(Row row) throws SQLException {
    try (PreparedStatement statement =
        connection.prepareStatement(
            "INSERT INTO trail (name, version, sha256, text, made_at) VALUES (?, ?, ?, ?, ?)")) {
      statement.setString(1, row.title().name());
      statement.setInt(2, row.title().number());
      statement.setString(3, row.title().sha256());
      statement.setString(4, row.text());
      statement.setString(5, row.title().at().toString());
      return statement.executeUpdate();
    }
  }

  private List<Row> rows(String sql, Object... values) throws SQLException {
    List<Row> found = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          found.add(
              new Row(
                  new TrailTitle(
                      rows.getString(1),
                      rows.getInt(2),
                      rows.getString(3),
                      time(rows.getString(4))),
                  rows.getString(5)));
        }
      }
    }
    return found;
  }

  private static Instant time(String text) throws SQLException {
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw new SQLException(
          "the time of a trail cannot be read: " + e.getMessage(),
          "",
          SQLiteErrorCode.SQLITE_CORRUPT.code);
    }
  }
}
