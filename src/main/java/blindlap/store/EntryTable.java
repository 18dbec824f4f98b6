package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.session.Entry;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.NotebookId;
import blindlap.session.SessionId;
import blindlap.session.StoredEntry;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteErrorCode;

/**
 * The table of entries: the text is the entry, the columns beside it only repeat it for queries.
 * Statements are prepared once, for this is on the way from a rider's score to "saved".
 */
final class EntryTable {
  private final PreparedStatement heads;
  private final PreparedStatement texts;
  private final PreparedStatement insert;
  private final PreparedStatement at;

  EntryTable(Connection connection) throws SQLException {
    heads =
        connection.prepareStatement(
            "SELECT notebook, max(number), hash FROM entry WHERE session = ?"
                + " GROUP BY notebook ORDER BY notebook");
    texts =
        connection.prepareStatement(
            "SELECT text, hash FROM entry WHERE session = ? ORDER BY notebook, number");
    insert =
        connection.prepareStatement(
            "INSERT INTO entry (session, notebook, number, previous, hash, kind, at, text)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
    at =
        connection.prepareStatement(
            "SELECT text, hash FROM entry WHERE session = ? AND notebook = ? AND number = ?");
  }

  /** The last entry of every chain of a session. */
  List<Head> heads(SessionId session) throws SQLException {
    heads.setString(1, session.text());
    List<Head> found = new ArrayList<>();
    try (ResultSet rows = heads.executeQuery()) {
      while (rows.next()) {
        found.add(
            new Head(
                new NotebookId(rows.getString(1)), rows.getLong(2), new Hash(rows.getString(3))));
      }
    } catch (IllegalArgumentException e) {
      throw new SQLException(
          "the end of a chain cannot be read: " + e.getMessage(),
          "",
          SQLiteErrorCode.SQLITE_CORRUPT.code);
    }
    return found;
  }

  /**
   * All entries of a session, by chain and number, each hashed again.
   *
   * @throws IllegalArgumentException if one is not what its hash says
   */
  List<StoredEntry> entries(SessionId session) throws SQLException {
    texts.setString(1, session.text());
    List<StoredEntry> found = new ArrayList<>();
    try (ResultSet rows = texts.executeQuery()) {
      while (rows.next()) {
        found.add(verified(rows.getString(1), rows.getString(2)));
      }
    }
    return found;
  }

  private static StoredEntry verified(String text, String hash) {
    StoredEntry entry = EntryText.read(text);
    if (!entry.hash().hex().equals(hash)) {
      throw new IllegalArgumentException(
          "an entry of session " + entry.entry().session().brief() + " does not match its hash");
    }
    return entry;
  }

  private void ask(Entry entry) throws SQLException {
    at.setString(1, entry.session().text());
    at.setString(2, entry.notebook().text());
    at.setLong(3, entry.number());
  }

  void insert(StoredEntry stored) throws SQLException {
    Entry entry = stored.entry();
    insert.setString(1, entry.session().text());
    insert.setString(2, entry.notebook().text());
    insert.setLong(3, entry.number());
    insert.setString(4, entry.previous().hex());
    insert.setString(5, stored.hash().hex());
    insert.setString(6, EntryText.kind(entry));
    insert.setString(7, entry.at().toString());
    insert.setString(8, stored.text());
    insert.executeUpdate();
  }

  /** Nothing is called saved that was not read back and hashed again. */
  void readBack(StoredEntry stored) throws SQLException {
    ask(stored.entry());
    try (ResultSet row = at.executeQuery()) {
      if (!row.next()
          || !Hash.of(row.getString(1)).equals(stored.hash())
          || !row.getString(2).equals(stored.hash().hex())) {
        throw new SQLException("an entry read back differs from what was written");
      }
    }
  }
}
