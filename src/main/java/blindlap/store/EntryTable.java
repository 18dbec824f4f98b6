package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.fault.Unreadable;
import blindlap.session.Entry;
import blindlap.session.EntryFault;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteErrorCode;

/**
 * The table of entries: the text is the entry, the columns beside it only repeat it for queries.
 * Statements are prepared once, for this is on the way from a rider's score to "saved".
 */
final class EntryTable {
  /** From chain to chain by index, so that it does not grow with the number of entries. */
  private static final String HEADS =
      """
      WITH RECURSIVE chain (notebook) AS (
        SELECT min(notebook) FROM entry WHERE session = ?1
        UNION ALL
        SELECT (SELECT min(notebook) FROM entry WHERE session = ?1 AND notebook > chain.notebook)
        FROM chain WHERE chain.notebook IS NOT NULL
      )
      SELECT entry.notebook, entry.number, entry.hash
      FROM chain CROSS JOIN entry ON entry.session = ?1 AND entry.notebook = chain.notebook
        AND entry.number = (SELECT max(number) FROM entry AS last
          WHERE last.session = ?1 AND last.notebook = chain.notebook)
      ORDER BY entry.notebook
      """;

  private final Prepared heads;
  private final Prepared texts;
  private final Prepared insert;
  private final Prepared at;

  EntryTable(Connection connection) {
    heads = new Prepared(connection, HEADS);
    texts =
        new Prepared(
            connection, "SELECT text, hash FROM entry WHERE session = ? ORDER BY notebook, number");
    insert =
        new Prepared(
            connection,
            "INSERT INTO entry (session, notebook, previous, hash, kind, at, text, number)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
    at =
        new Prepared(
            connection,
            "SELECT text, hash FROM entry WHERE session = ? AND notebook = ? AND number = ?");
  }

  /** Number and hash of the entry that arrived last in a notebook. */
  static String lastArrived(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT arrived, hash FROM entry ORDER BY arrived DESC LIMIT 1")) {
      return row.next() ? row.getLong(1) + " " + row.getString(2) : "none";
    }
  }

  /** The last entry of every chain of a session. */
  List<Head> heads(SessionId session) throws SQLException {
    return heads.use(
        statement -> {
          List<Head> found = new ArrayList<>();
          try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
              found.add(head(rows));
            }
          }
          return found;
        },
        session.text());
  }

  private static Head head(ResultSet row) throws SQLException {
    try {
      return new Head(new NotebookId(row.getString(1)), row.getLong(2), new Hash(row.getString(3)));
    } catch (IllegalArgumentException e) {
      throw new SQLException(
          "the end of a chain cannot be read: " + e.getMessage(),
          "",
          SQLiteErrorCode.SQLITE_CORRUPT.code);
    }
  }

  /**
   * All entries of a session, by chain and number, each hashed again.
   *
   * @throws Unreadable if one is not what its hash says
   */
  List<StoredEntry> entries(SessionId session) throws SQLException {
    return texts.use(
        statement -> {
          List<StoredEntry> found = new ArrayList<>();
          try (ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
              found.add(verified(rows.getString(1), rows.getString(2)));
            }
          }
          return found;
        },
        session.text());
  }

  private static StoredEntry verified(String text, String hash) {
    StoredEntry entry = EntryText.read(text);
    if (!entry.hash().hex().equals(hash)) {
      throw new Unreadable(EntryFault.HASH_DIFFERS);
    }
    return entry;
  }

  /** Adds entries and reads each back. */
  void add(List<StoredEntry> all) throws SQLException {
    for (StoredEntry entry : all) {
      insert(entry);
    }
    for (StoredEntry entry : all) {
      readBack(entry);
    }
  }

  void insert(StoredEntry stored) throws SQLException {
    Entry entry = stored.entry();
    insert.use(
        statement -> {
          statement.setLong(8, entry.number());
          return statement.executeUpdate();
        },
        entry.session().text(),
        entry.notebook().text(),
        entry.previous().hex(),
        stored.hash().hex(),
        EntryText.kind(entry),
        entry.at().toString(),
        stored.text());
  }

  /** Nothing is called saved that was not read back and hashed again. */
  private void readBack(StoredEntry stored) throws SQLException {
    Entry entry = stored.entry();
    boolean same =
        at.use(
            statement -> {
              statement.setLong(3, entry.number());
              try (ResultSet row = statement.executeQuery()) {
                return row.next()
                    && Hash.of(row.getString(1)).equals(stored.hash())
                    && row.getString(2).equals(stored.hash().hex());
              }
            },
            entry.session().text(),
            entry.notebook().text());
    if (!same) {
      throw new SQLException("an entry read back differs from what was written");
    }
  }
}
