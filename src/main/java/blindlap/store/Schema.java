package blindlap.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tables, triggers and views of a notebook, as the numbered SQL files make them. */
final class Schema {
  private static final Pattern NAMED =
      Pattern.compile("(CREATE|DROP) (TABLE|TRIGGER|VIEW|INDEX) (\\w+)", Pattern.DOTALL);

  private Schema() {}

  /** The statements that bring a file to a version from the one before it. */
  static List<String> statements(int version) {
    String name = "/blindlap/store/migration-" + version + ".sql";
    try (InputStream in = Schema.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + name);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r", "");
      String plain = text.replaceAll("(?m)^--.*\n", "").strip();
      return plain.isEmpty() ? List.of() : List.of(plain.split("\n\\s*\n"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Names of tables, triggers, views and indexes that are missing or not as this program makes
   * them. Others that someone added are left alone.
   */
  static List<String> differences(Connection connection) throws SQLException {
    return differences(connection, NotebookFile.VERSION);
  }

  /** The same for the tables of a version. */
  static List<String> differences(Connection connection, int current) throws SQLException {
    Map<String, String> found = found(connection);
    List<String> differences = new ArrayList<>();
    expected(current)
        .forEach(
            (name, sql) -> {
              if (!sql.equals(found.get(name))) {
                differences.add(name);
              }
            });
    differences.sort(String::compareTo);
    return differences;
  }

  private static Map<String, String> found(Connection connection) throws SQLException {
    Map<String, String> found = new HashMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("SELECT name, sql FROM sqlite_schema")) {
      while (rows.next()) {
        found.put(rows.getString(1), String.valueOf(rows.getString(2)));
      }
    }
    return found;
  }

  /** True if a file has what only versions after one have: its number was changed then. */
  static boolean later(Connection connection, int version) throws SQLException {
    Map<String, String> found = found(connection);
    Map<String, String> then = expected(version);
    return expected(NotebookFile.VERSION).entrySet().stream()
        .anyMatch(
            made ->
                !then.containsKey(made.getKey())
                    && made.getValue().equals(found.get(made.getKey())));
  }

  private static Map<String, String> expected(int current) {
    Map<String, String> expected = new HashMap<>();
    for (int version = 1; version <= current; version++) {
      for (String sql : statements(version)) {
        Matcher named = NAMED.matcher(sql);
        if (named.lookingAt()) {
          expected.remove(named.group(3));
          if (named.group(1).equals("CREATE")) {
            expected.put(named.group(3), sql.strip());
          }
        }
      }
    }
    return expected;
  }
}
