package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.session.CausalOrder;
import blindlap.session.Entry;
import blindlap.session.Fact;
import blindlap.session.Hash;
import blindlap.session.Head;
import blindlap.session.Notebook;
import blindlap.session.NotebookException;
import blindlap.session.NotebookId;
import blindlap.session.SessionId;
import blindlap.session.StoredEntry;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The notebook in one SQLite file. Safe for use by several threads; one connection, one at a time.
 */
public final class SqliteNotebook implements Notebook {
  private final Path file;
  private final Connection connection;
  private final NotebookId id;

  private SqliteNotebook(Path file, Connection connection, NotebookId id) {
    this.file = file;
    this.connection = connection;
    this.id = id;
  }

  /**
   * Opens a notebook, making it if the file does not exist.
   *
   * @param file where it lies
   * @param newId 16 random bytes for the id of a new notebook
   * @param now time for a new notebook
   * @throws NotebookException if the file cannot be used; the file is then as it was
   */
  public static SqliteNotebook open(Path file, byte[] newId, Instant now) {
    return open(file, newId, now, Connections.BUSY_MILLISECONDS);
  }

  static SqliteNotebook open(Path file, byte[] newId, Instant now, int busyMilliseconds) {
    NotebookFile.version(file);
    Connection connection = Connections.open(file, false, busyMilliseconds);
    try {
      Migrations.run(connection, file, NotebookId.of(newId), now);
      try (Statement statement = connection.createStatement();
          ResultSet row = statement.executeQuery("SELECT id FROM notebook WHERE only = 1")) {
        if (!row.next()) {
          throw new SQLException("the notebook has no id");
        }
        return new SqliteNotebook(file, connection, new NotebookId(row.getString(1)));
      }
    } catch (SQLException e) {
      closeQuietly(connection, e);
      throw Connections.explain(e, file);
    } catch (RuntimeException e) {
      closeQuietly(connection, e);
      throw e;
    }
  }

  private static void closeQuietly(Connection connection, Exception cause) {
    try {
      connection.close();
    } catch (SQLException e) {
      cause.addSuppressed(e);
    }
  }

  /** Where the notebook lies. */
  public Path file() {
    return file;
  }

  @Override
  public NotebookId id() {
    return id;
  }

  @Override
  public synchronized List<SessionId> sessions() {
    String sql =
        "SELECT session, max(arrived) AS latest FROM entry GROUP BY session ORDER BY latest DESC";
    List<SessionId> sessions = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        sessions.add(new SessionId(rows.getString(1)));
      }
      return sessions;
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  @Override
  public synchronized List<StoredEntry> entries(SessionId session) {
    String sql = "SELECT text, hash FROM entry WHERE session = ? ORDER BY arrived";
    List<StoredEntry> entries = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, session.text());
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          entries.add(verified(rows.getString(1), rows.getString(2), session));
        }
      }
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
    Chains.verify(entries, file);
    return CausalOrder.sort(entries);
  }

  private StoredEntry verified(String text, String hash, SessionId session) {
    try {
      StoredEntry entry = EntryText.read(text);
      if (!entry.hash().hex().equals(hash) || !entry.entry().session().equals(session)) {
        throw new IllegalArgumentException(
            "an entry of session " + session.brief() + " does not match its hash");
      }
      return entry;
    } catch (IllegalArgumentException e) {
      throw Connections.damaged(file, e);
    }
  }

  @Override
  public synchronized List<Head> heads(SessionId session) {
    try {
      return readHeads(session);
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  private List<Head> readHeads(SessionId session) throws SQLException {
    String sql =
        "SELECT notebook, max(number), hash FROM entry WHERE session = ? GROUP BY notebook ORDER BY notebook";
    List<Head> heads = new ArrayList<>();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, session.text());
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          heads.add(
              new Head(
                  new NotebookId(rows.getString(1)), rows.getLong(2), new Hash(rows.getString(3))));
        }
      }
    }
    return heads;
  }

  @Override
  public synchronized Optional<List<StoredEntry>> append(
      SessionId session, List<Head> known, List<Fact> facts, Instant at, ZoneId zone) {
    try {
      return inTransaction(
          () -> {
            List<Head> heads = readHeads(session);
            if (!new HashSet<>(heads).equals(new HashSet<>(known))) {
              return Optional.empty();
            }
            List<StoredEntry> written = chain(session, heads, facts, at, zone);
            for (StoredEntry entry : written) {
              insert(entry);
            }
            readBack(written);
            return Optional.of(written);
          });
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  private List<StoredEntry> chain(
      SessionId session, List<Head> heads, List<Fact> facts, Instant at, ZoneId zone) {
    long number = 0;
    Hash previous = Hash.NONE;
    List<Head> others = new ArrayList<>();
    for (Head head : heads) {
      if (head.notebook().equals(id)) {
        number = head.number();
        previous = head.hash();
      } else {
        others.add(head);
      }
    }
    List<StoredEntry> written = new ArrayList<>();
    for (Fact fact : facts) {
      number++;
      StoredEntry entry =
          EntryText.write(new Entry(session, id, number, previous, others, at, zone, fact));
      previous = entry.hash();
      written.add(entry);
    }
    return written;
  }

  private void insert(StoredEntry stored) throws SQLException {
    String sql =
        "INSERT INTO entry (session, notebook, number, previous, hash, kind, at, text)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)";
    Entry entry = stored.entry();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setString(1, entry.session().text());
      statement.setString(2, entry.notebook().text());
      statement.setLong(3, entry.number());
      statement.setString(4, entry.previous().hex());
      statement.setString(5, stored.hash().hex());
      statement.setString(6, EntryText.kind(entry));
      statement.setString(7, entry.at().toString());
      statement.setString(8, stored.text());
      statement.executeUpdate();
    }
  }

  /** Nothing is called saved that was not read back and hashed again. */
  private void readBack(List<StoredEntry> written) throws SQLException {
    String sql = "SELECT text FROM entry WHERE hash = ?";
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (StoredEntry entry : written) {
        statement.setString(1, entry.hash().hex());
        try (ResultSet row = statement.executeQuery()) {
          if (!row.next() || !Hash.of(row.getString(1)).equals(entry.hash())) {
            throw new SQLException("an entry read back differs from what was written");
          }
        }
      }
    }
  }

  private interface Work<T> {
    T run() throws SQLException;
  }

  private <T> T inTransaction(Work<T> work) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try {
        T result = work.run();
        statement.execute("COMMIT");
        return result;
      } catch (SQLException | RuntimeException e) {
        try {
          statement.execute("ROLLBACK");
        } catch (SQLException alreadyRolledBack) {
          e.addSuppressed(alreadyRolledBack);
        }
        throw e;
      }
    }
  }

  @Override
  public synchronized long dataVersion() {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA data_version")) {
      return row.next() ? row.getLong(1) : 0;
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  @Override
  public synchronized Map<String, String> drafts() {
    Map<String, String> drafts = new LinkedHashMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("SELECT name, text FROM draft ORDER BY name")) {
      while (rows.next()) {
        drafts.put(rows.getString(1), rows.getString(2));
      }
      return drafts;
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  @Override
  public synchronized void putDraft(String name, String text) {
    change(
        "INSERT INTO draft (name, text) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET text = excluded.text",
        name,
        text);
  }

  @Override
  public synchronized void deleteDraft(String name) {
    change("DELETE FROM draft WHERE name = ?", name);
  }

  private void change(String sql, String... values) {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < values.length; i++) {
        statement.setString(i + 1, values[i]);
      }
      statement.executeUpdate();
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }

  @Override
  public synchronized void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw Connections.explain(e, file);
    }
  }
}
