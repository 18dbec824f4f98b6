package blindlap.store;

import blindlap.seal.Cover;
import blindlap.seal.CoveredOrder;
import blindlap.seal.Fingerprint;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Covered orders, one row a session that was committed here: wrapped under the end of a chain of
 * its session, anew in every transaction that lengthens that chain (docs/sealing.md#covered). Rows
 * of sessions with as many stints are of one length.
 */
final class CoverTable {
  private final Prepared select;
  private final Prepared insert;
  private final Prepared update;

  /** A row as it lies in the file. */
  record Row(String session, String chain, String k0, String places) {
    /** The cover, if it was wrapped under that entry. */
    Cover under(String hash) {
      return Cover.read(session, Fingerprint.parse(hash), k0, places);
    }

    /** Says which session only. */
    @Override
    public String toString() {
      return "Row[" + session + "]";
    }
  }

  CoverTable(Connection connection) {
    select =
        new Prepared(connection, "SELECT session, chain, k0, places FROM cover WHERE session = ?");
    insert =
        new Prepared(
            connection, "INSERT INTO cover (session, chain, k0, places) VALUES (?, ?, ?, ?)");
    update = new Prepared(connection, "UPDATE cover SET chain = ?, places = ? WHERE session = ?");
  }

  /** All rows. */
  static List<Row> all(Connection connection) throws SQLException {
    List<Row> found = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT session, chain, k0, places FROM cover ORDER BY session")) {
      while (rows.next()) {
        found.add(row(rows));
      }
    }
    return found;
  }

  private static Row row(ResultSet rows) throws SQLException {
    return new Row(rows.getString(1), rows.getString(2), rows.getString(3), rows.getString(4));
  }

  private Optional<Row> find(SessionId session) throws SQLException {
    return select.use(
        statement -> {
          try (ResultSet rows = statement.executeQuery()) {
            return rows.next() ? Optional.of(row(rows)) : Optional.empty();
          }
        },
        session.text());
  }

  /** Covers an order under the last entry of its commit. */
  void begin(SessionId session, CoveredOrder order, StoredEntry last) throws SQLException {
    put(session, last.entry().notebook(), order.under(Fingerprint.parse(last.hash().hex())));
  }

  /** Keeps a cover that was saved from elsewhere. */
  int put(SessionId session, NotebookId chain, Cover cover) throws SQLException {
    return insert.use(
        PreparedStatement::executeUpdate, session.text(), chain.text(), cover.k0(), cover.places());
  }

  /** The cover of a session under the ends of its chains; empty if none is kept or none fits. */
  Optional<Cover> cover(SessionId session, List<Head> heads) throws SQLException {
    Optional<Row> row = find(session);
    if (row.isEmpty()) {
      return Optional.empty();
    }
    return end(row.get(), heads).map(hash -> row.get().under(hash));
  }

  /** The hash that a row is wrapped under, by the ends of the chains. */
  static Optional<String> end(Row row, List<Head> heads) {
    return heads.stream()
        .filter(head -> head.notebook().text().equals(row.chain()))
        .map(head -> head.hash().hex())
        .findFirst();
  }

  /**
   * Wraps the order of a session, if one is kept, under the new end of a chain. One that does not
   * open stays as it is: the full check tells of it.
   *
   * @param before the ends of the chains as they were
   * @param written what lengthened them, in order; by this notebook, or brought in from others
   * @param own the notebook that appends to its own chain; null where entries are brought in
   */
  void follow(
      SessionId session, List<Head> before, List<StoredEntry> written, @Nullable NotebookId own)
      throws SQLException {
    Optional<Row> row = find(session);
    Optional<String> end = row.flatMap(kept -> end(kept, before));
    if (row.isEmpty() || end.isEmpty()) {
      return;
    }
    String chain = own == null ? row.get().chain() : own.text();
    TreeMap<Long, StoredEntry> longer = new TreeMap<>();
    written.stream()
        .filter(entry -> entry.entry().notebook().text().equals(chain))
        .forEach(entry -> longer.put(entry.entry().number(), entry));
    if (longer.isEmpty()) {
      return;
    }
    StoredEntry last = longer.lastEntry().getValue();
    Optional<Cover> wrapped =
        row.get().under(end.get()).under(Fingerprint.parse(last.hash().hex()));
    if (wrapped.isPresent()) {
      update.use(PreparedStatement::executeUpdate, chain, wrapped.get().places(), session.text());
    }
  }
}
