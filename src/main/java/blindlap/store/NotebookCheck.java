package blindlap.store;

import blindlap.exchange.EntryText;
import blindlap.fault.Problem;
import blindlap.fault.Unreadable;
import blindlap.session.CausalOrder;
import blindlap.session.Chains;
import blindlap.session.Entry;
import blindlap.session.NotebookFault;
import blindlap.session.NotebookReport;
import blindlap.session.SessionState;
import blindlap.session.SessionSummary;
import blindlap.session.StoredEntry;
import blindlap.session.day.SessionId;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The full check: the database's own, every entry read and hashed again, its columns against its
 * text, every chain, the folding of every session, the lists against the entries. It only reads.
 */
final class NotebookCheck {
  private static final String ALL =
      "SELECT session, notebook, number, previous, hash, kind, at, text, arrived FROM entry"
          + " ORDER BY session, notebook, number";

  private final SummaryTable summaries;
  private CoverCheck covers = CoverCheck.none();
  private final List<Problem> problems = new ArrayList<>();
  private final List<StoredEntry> session = new ArrayList<>();
  private long sessions;
  private long entries;

  private NotebookCheck(SummaryTable summaries) {
    this.summaries = summaries;
  }

  /** Checks all that a connection sees, as of one moment. */
  static NotebookReport run(Connection connection, SummaryTable summaries) throws SQLException {
    NotebookCheck check = new NotebookCheck(summaries);
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN");
      try {
        check.all(connection);
        statement.execute("COMMIT");
      } catch (SQLException e) {
        check.report(NotebookFault.UNREADABLE, "", String.valueOf(e.getMessage()));
        Connections.rollBack(connection, e);
      }
    }
    return new NotebookReport(check.sessions, check.entries, check.problems);
  }

  private void all(Connection connection) throws SQLException {
    for (String name : Schema.differences(connection)) {
      report(NotebookFault.CHANGED_TABLES, "", name);
    }
    String found = OpeningCheck.integrity(connection);
    if (!found.isEmpty()) {
      report(NotebookFault.FILE_DAMAGED, "", found);
    }
    int version = NotebookFile.number(connection, "user_version");
    if (version != NotebookFile.VERSION) {
      report(NotebookFault.FILE_DAMAGED, "", "its version is " + version);
    }
    if (!OpeningCheck.hasId(connection)) {
      report(NotebookFault.FILE_DAMAGED, "", "the notebook has no id");
    }
    covers = CoverCheck.of(connection);
    readAll(connection);
    covers.left().forEach(id -> report(NotebookFault.COVER_DIFFERS, at(new SessionId(id))));
    problems.addAll(BesideCheck.problems(connection));
    if (!summaries.current()) {
      report(NotebookFault.LIST_DIFFERS, "");
    }
  }

  private void readAll(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(ALL)) {
      while (rows.next()) {
        entries++;
        read(rows).ifPresent(this::add);
      }
    }
    endSession();
  }

  private void add(StoredEntry entry) {
    if (!session.isEmpty() && !id().equals(entry.entry().session())) {
      endSession();
    }
    session.add(entry);
  }

  private SessionId id() {
    return session.get(0).entry().session();
  }

  private Optional<StoredEntry> read(ResultSet row) throws SQLException {
    String where = "row " + row.getLong(9);
    try {
      StoredEntry stored = EntryText.read(row.getString(8));
      if (!stored.hash().hex().equals(row.getString(5))) {
        report(NotebookFault.HASH_DIFFERS, where);
      } else if (!columnsAgree(stored, row)) {
        report(NotebookFault.COLUMNS_DIFFER, where);
      }
      return Optional.of(stored);
    } catch (Unreadable e) {
      report(NotebookFault.NOT_AN_ENTRY, where, e.problem().fault().name());
      return Optional.empty();
    }
  }

  private static boolean columnsAgree(StoredEntry stored, ResultSet row) throws SQLException {
    Entry entry = stored.entry();
    return entry.session().text().equals(row.getString(1))
        && entry.notebook().text().equals(row.getString(2))
        && entry.number() == row.getLong(3)
        && entry.previous().hex().equals(row.getString(4))
        && EntryText.kind(entry).equals(row.getString(6))
        && entry.at().toString().equals(row.getString(7));
  }

  private void endSession() {
    if (session.isEmpty()) {
      return;
    }
    sessions++;
    SessionId id = id();
    List<StoredEntry> all = List.copyOf(session);
    session.clear();
    List<Problem> broken = Chains.problems(id, all);
    for (Problem problem : broken) {
      report(problem.fault(), at(id) + ", " + problem.where(), problem.details().toArray());
    }
    if (broken.isEmpty()) {
      fold(id, all);
    }
  }

  private void fold(SessionId id, List<StoredEntry> all) {
    try {
      SessionState state = SessionState.of(CausalOrder.sort(all));
      if (!covers.sound(state)) {
        report(NotebookFault.COVER_DIFFERS, at(id));
      }
      SessionSummary told = SessionSummary.of(state);
      Optional<SessionSummary> listed = summaries.find(id);
      if (listed.isEmpty() || !Summaries.with(listed.get(), listed.get().step(), "").equals(told)) {
        report(NotebookFault.LIST_DIFFERS, at(id));
      }
    } catch (Unreadable e) {
      report(NotebookFault.CANNOT_FOLD, at(id), e.problem().fault().name());
    } catch (SQLException e) {
      report(NotebookFault.LIST_DIFFERS, at(id));
    }
  }

  private static String at(SessionId id) {
    return "session " + id.brief();
  }

  private void report(blindlap.fault.Fault fault, String where, Object... details) {
    problems.add(Problem.of(fault, where, details));
  }
}
