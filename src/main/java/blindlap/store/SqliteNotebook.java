package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.seal.Cover;
import blindlap.seal.CoveredOrder;
import blindlap.session.Addition;
import blindlap.session.CausalOrder;
import blindlap.session.Chains;
import blindlap.session.Contents;
import blindlap.session.Damage;
import blindlap.session.Fact;
import blindlap.session.Head;
import blindlap.session.Notebook;
import blindlap.session.NotebookException;
import blindlap.session.NotebookId;
import blindlap.session.NotebookReport;
import blindlap.session.Profiles;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.StepAfter;
import blindlap.session.StoredEntry;
import blindlap.session.Trails;
import blindlap.session.day.ByPhone;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The notebook in one SQLite file. Safe for use by several threads; one connection, one at a time.
 */
public final class SqliteNotebook implements Notebook {
  private final Path file;
  private final Connection connection;
  private final NotebookId id;
  private final EntryTable entries;
  private final SummaryTable summaries;
  private final DraftTable drafts;
  private final CoverTable covers;
  private final Door door;

  private SqliteNotebook(Path file, Connection connection, NotebookId id) {
    this.file = file;
    this.connection = connection;
    this.id = id;
    this.entries = new EntryTable(connection);
    this.summaries = new SummaryTable(connection);
    this.drafts = new DraftTable(connection);
    this.covers = new CoverTable(connection);
    this.door = new Door(connection, file);
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
    requireNotLost(file);
    return on(Connections.open(file, busyMilliseconds), file, newId, now);
  }

  /** An empty file becomes a new notebook, but not where backups tell that one was there. */
  private static void requireNotLost(Path file) {
    if (file.toFile().isFile() && file.toFile().length() == 0 && Backups.areThere(file)) {
      throw NotebookException.damaged(file, null, Damage.EMPTY, Backups.usualFolder(file));
    }
  }

  static SqliteNotebook on(Connection connection, Path file, byte[] newId, Instant now) {
    try {
      Migrations.run(connection, file, NotebookId.of(newId), now);
      OpeningCheck.run(connection, file);
      SqliteNotebook notebook =
          new SqliteNotebook(file, connection, OpeningCheck.id(connection, file));
      notebook.makeLists();
      return notebook;
    } catch (SQLException e) {
      Connections.closeQuietly(connection, e);
      throw Connections.explain(e, file);
    } catch (RuntimeException e) {
      Connections.closeQuietly(connection, e);
      throw e;
    }
  }

  /** Makes the lists again where they are missing or older than this program. */
  private void makeLists() throws SQLException {
    if (summaries.current()) {
      return;
    }
    door.made(
        () -> {
          for (SessionId session : summaries.sessionsOfEntries()) {
            putSummary(session, stored(session));
          }
          summaries.settle();
          return true;
        });
  }

  private void putSummary(SessionId session, List<StoredEntry> sorted) throws SQLException {
    SessionSummary summary = SessionSummary.of(SessionState.of(sorted));
    summaries.put(Summaries.with(summary, summary.step(), ""));
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
    return door.reading(summaries::sessions);
  }

  @Override
  public synchronized List<SessionSummary> summaries() {
    return door.reading(summaries::all);
  }

  @Override
  public synchronized List<SessionSummary> search(String words) {
    return door.reading(() -> summaries.search(words));
  }

  @Override
  public synchronized boolean putVerdict(SessionId session, String words) {
    return door.writing(
        () -> {
          Optional<SessionSummary> known = summaries.find(session);
          if (known.isEmpty() || known.get().step().sealed()) {
            return false;
          }
          summaries.change(Summaries.with(known.get(), known.get().step(), words));
          return true;
        });
  }

  @Override
  public synchronized List<StoredEntry> entries(SessionId session) {
    return door.reading(() -> stored(session));
  }

  /** Entries of a session in causal order, every hash, link and chain checked. */
  private List<StoredEntry> stored(SessionId session) throws SQLException {
    List<StoredEntry> found;
    try {
      found = entries.entries(session);
    } catch (Unreadable e) {
      throw door.damaged(e, Damage.NOT_AN_ENTRY, e.problem().fault().name());
    }
    List<Problem> problems = Chains.problems(session, found);
    if (!problems.isEmpty()) {
      String where = problems.get(0).where();
      throw door.damaged(null, Damage.CHAINS, session.brief(), where);
    }
    return CausalOrder.sort(found);
  }

  @Override
  public synchronized List<Head> heads(SessionId session) {
    return door.reading(() -> entries.heads(session));
  }

  @Override
  public synchronized Optional<List<StoredEntry>> append(
      SessionId session,
      List<Head> known,
      List<Fact> facts,
      Instant at,
      ZoneId zone,
      @Nullable ByPhone phone) {
    return door.writing(
        () -> {
          List<Head> heads = entries.heads(session);
          if (!new HashSet<>(heads).equals(new HashSet<>(known))) {
            return Optional.empty();
          }
          List<StoredEntry> written = OwnChain.longer(id, session, heads, facts, at, zone, phone);
          entries.add(written);
          covers.follow(session, heads, written, id);
          keepUp(session, heads.isEmpty(), written);
          return Optional.of(written);
        });
  }

  @Override
  public synchronized List<StoredEntry> commit(
      SessionId session, List<Fact> facts, Instant at, ZoneId zone, CoveredOrder order) {
    return door.writing(
        () -> {
          List<StoredEntry> written =
              OwnChain.longer(id, session, List.of(), facts, at, zone, null);
          entries.add(written);
          covers.begin(session, order, written.get(written.size() - 1));
          keepUp(session, true, written);
          return written;
        });
  }

  @Override
  public synchronized Optional<Cover> cover(SessionId session) {
    return door.reading(() -> covers.cover(session, entries.heads(session)));
  }

  /** The list follows the entries in the same transaction; new entries have seen all others. */
  private void keepUp(SessionId session, boolean begins, List<StoredEntry> written)
      throws SQLException {
    Optional<Step> before = summaries.step(session);
    if (begins || before.isEmpty()) {
      putSummary(session, begins ? written : stored(session));
      return;
    }
    Step step = before.get();
    for (StoredEntry entry : written) {
      step = StepAfter.of(step, entry.entry().fact());
    }
    if (step != before.get() && step == Step.ABANDONED) {
      putSummary(session, stored(session));
      toldAnew(session, written);
      return;
    }
    Optional<SessionSummary> known =
        step == before.get() ? Optional.empty() : summaries.find(session);
    if (known.isPresent()) {
      summaries.change(Summaries.with(known.get(), step, known.get().verdict()));
      toldAnew(session, written);
    }
  }

  private void toldAnew(SessionId session, List<StoredEntry> news) throws SQLException {
    Optional<SessionSummary> about = summaries.find(session);
    if (about.isPresent()) {
      Summaries.forget(summaries, about.get(), news);
    }
  }

  @Override
  public synchronized Addition addEntries(List<StoredEntry> added) {
    Map<SessionId, List<StoredEntry>> bySession = new TreeMap<>();
    for (StoredEntry entry : added) {
      bySession
          .computeIfAbsent(entry.entry().session(), key -> new ArrayList<>())
          .add(EntryText.read(entry.text()));
    }
    return door.writing(
        () -> {
          List<Merge> merges = new ArrayList<>();
          for (Map.Entry<SessionId, List<StoredEntry>> session : bySession.entrySet()) {
            Merge merge = Merge.of(session.getKey(), stored(session.getKey()), session.getValue());
            List<Problem> problems = merge.problems();
            if (!problems.isEmpty()) {
              return new Addition.Refused(session.getKey(), problems);
            }
            merges.add(merge);
          }
          return insert(merges);
        });
  }

  private Addition insert(List<Merge> merges) throws SQLException {
    int added = 0;
    int known = 0;
    for (Merge merge : merges) {
      List<Head> before = entries.heads(merge.session());
      entries.add(merge.fresh());
      covers.follow(merge.session(), before, merge.fresh(), null);
      if (!merge.fresh().isEmpty()) {
        putSummary(merge.session(), CausalOrder.sort(merge.all()));
        toldAnew(merge.session(), merge.all());
      }
      added += merge.fresh().size();
      known += merge.known();
    }
    return new Addition.Added(added, known);
  }

  synchronized void keep(SessionId session, NotebookId chain, Cover cover) {
    door.writing(() -> covers.put(session, chain, cover));
  }

  @Override
  public synchronized NotebookReport verify() {
    return door.reading(() -> NotebookCheck.run(connection, summaries));
  }

  @Override
  public synchronized long dataVersion() {
    return door.reading(
        () -> {
          try (Statement statement = connection.createStatement();
              ResultSet row = statement.executeQuery("PRAGMA data_version")) {
            return door.commits() + (row.next() ? row.getLong(1) : 0);
          }
        });
  }

  @Override
  public synchronized Map<String, String> drafts() {
    return door.reading(drafts::all);
  }

  @Override
  public synchronized void putDraft(String name, String text) {
    door.writing(() -> drafts.put(name, text));
  }

  @Override
  public synchronized void deleteDraft(String name) {
    door.writing(() -> drafts.delete(name));
  }

  @Override
  public Trails trails() {
    return new KeptTrails(door, connection);
  }

  @Override
  public Profiles profiles() {
    return new KeptProfiles(door, connection);
  }

  @Override
  public Contents contents() {
    return new KeptContents(door, connection);
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
