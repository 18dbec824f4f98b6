package blindlap.store;

import blindlap.seal.Cover;
import blindlap.seal.CoverProof;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Whether the covered orders that a notebook keeps are those of its sessions. */
final class CoverCheck {
  private final Map<String, CoverTable.Row> rows = new TreeMap<>();
  private final String notebook;

  private CoverCheck(String notebook) {
    this.notebook = notebook;
  }

  /** Nothing to check. */
  static CoverCheck none() {
    return new CoverCheck("");
  }

  /** Reads all covers; none where their table is missing, which is told by itself. */
  static CoverCheck of(Connection connection) {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT id FROM notebook")) {
      CoverCheck check = new CoverCheck(row.next() ? row.getString(1) : "");
      CoverTable.all(connection).forEach(each -> check.rows.put(each.session(), each));
      return check;
    } catch (SQLException e) {
      return none(); // what cannot be read is found by the reading of everything
    }
  }

  /** True unless a session lacks the cover that it had here, or has one that is not its own. */
  boolean sound(SessionState state) {
    CoverTable.Row row = rows.remove(state.id().text());
    if (row == null) {
      String home = state.entries().get(0).entry().notebook().text();
      return !state.covered() || !home.equals(notebook);
    }
    return state.covered()
        && cover(row, state)
            .filter(
                cover ->
                    CoverProof.belongs(
                        cover,
                        state.planText().getBytes(StandardCharsets.UTF_8),
                        state.plan().rule(),
                        state.planFingerprint()))
            .isPresent();
  }

  private static Optional<Cover> cover(CoverTable.Row row, SessionState state) {
    try {
      return CoverTable.end(row, state.heads()).map(row::under);
    } catch (IllegalArgumentException e) {
      return Optional.empty(); // not even the form of a cover
    }
  }

  /** Sessions of covers that have no entries; to be asked last. */
  Set<String> left() {
    return rows.keySet();
  }
}
