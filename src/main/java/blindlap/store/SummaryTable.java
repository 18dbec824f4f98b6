package blindlap.store;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.session.SessionSummary;
import blindlap.session.day.SessionId;
import blindlap.session.day.Step;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.text.Normalizer;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.sqlite.SQLiteErrorCode;

/**
 * What lists of sessions show, kept beside the entries and written in the same transaction.
 * Derived, not part of the record: it may be thrown away at any time and is then made again.
 */
final class SummaryTable {
  /** Changes with anything that is kept here, so that older lists are made again. */
  static final String FORM = "blindlap-summary-8";

  private static final Map<String, Plan.Kind> KINDS = words(Plan.Kind.class);
  private static final Map<String, Step> STEPS = words(Step.class);
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern BETWEEN = Pattern.compile("\\s+");

  /** The column "verdict" holds how a session ended: why, if it was abandoned. */
  private static final String COLUMNS =
      "session, committed_at, kind, question, rider, trail, day, setups, series, looks, step,"
          + " verdict";

  private final Connection connection;
  private final Prepared step;
  private final Prepared one;
  private final Prepared put;
  private final Prepared change;

  SummaryTable(Connection connection) {
    this.connection = connection;
    step = new Prepared(connection, "SELECT step FROM summary WHERE session = ?");
    one = new Prepared(connection, "SELECT " + COLUMNS + " FROM summary WHERE session = ?");
    put =
        new Prepared(
            connection,
            "INSERT OR REPLACE INTO summary ("
                + COLUMNS
                + ", words, first) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, (SELECT"
                + " min(arrived) FROM entry WHERE session = ? AND kind = 'PlanCommitted'))");
    change =
        new Prepared(
            connection, "UPDATE summary SET step = ?, verdict = ?, words = ? WHERE session = ?");
  }

  /** The step of a session, which is all that an append needs to know. */
  Optional<Step> step(SessionId session) throws SQLException {
    return step.use(
        statement -> {
          try (ResultSet row = statement.executeQuery()) {
            return row.next() ? Optional.ofNullable(STEPS.get(row.getString(1))) : Optional.empty();
          }
        },
        session.text());
  }

  /** The row of a session. */
  Optional<SessionSummary> find(SessionId session) throws SQLException {
    return one.use(
        statement -> {
          try (ResultSet row = statement.executeQuery()) {
            return row.next() ? Optional.of(summary(row)) : Optional.empty();
          }
        },
        session.text());
  }

  /** Puts a whole row; its verdict is the one given. */
  void put(SessionSummary summary) throws SQLException {
    String id = summary.id().text();
    put.use(
        PreparedStatement::executeUpdate,
        id,
        summary.committedAt().toString(),
        kind(summary),
        summary.question(),
        summary.rider(),
        summary.trail(),
        summary.day().toString(),
        String.join("\n", summary.setups()),
        summary.series(),
        looks(summary),
        PlanJson.word(summary.step()),
        ending(summary),
        words(summary),
        id);
  }

  /** Changes what changes over the life of a session. */
  void change(SessionSummary summary) throws SQLException {
    change.use(
        PreparedStatement::executeUpdate,
        PlanJson.word(summary.step()),
        ending(summary),
        words(summary),
        summary.id().text());
  }

  /** All rows, latest commit first. */
  List<SessionSummary> all() throws SQLException {
    return search("");
  }

  /** Rows that hold every word. */
  List<SessionSummary> search(String typed) throws SQLException {
    List<String> wanted =
        BETWEEN.splitAsStream(plain(typed)).filter(word -> !word.isEmpty()).toList();
    StringBuilder sql = new StringBuilder("SELECT " + COLUMNS + " FROM summary WHERE 1");
    wanted.forEach(word -> sql.append(" AND instr(words, ?)"));
    try (PreparedStatement statement =
        connection.prepareStatement(sql.append(" ORDER BY first DESC").toString())) {
      for (int i = 0; i < wanted.size(); i++) {
        statement.setString(i + 1, wanted.get(i));
      }
      List<SessionSummary> found = new ArrayList<>();
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          found.add(summary(rows));
        }
      }
      return found;
    }
  }

  List<SessionId> sessions() throws SQLException {
    return ids("SELECT session FROM summary ORDER BY first DESC");
  }

  /** Sessions that have entries, whether they are in the list or not. */
  List<SessionId> sessionsOfEntries() throws SQLException {
    return ids("SELECT DISTINCT session FROM entry ORDER BY session");
  }

  private List<SessionId> ids(String sql) throws SQLException {
    List<SessionId> ids = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        ids.add(id(rows));
      }
    }
    return ids;
  }

  private static SessionId id(ResultSet row) throws SQLException {
    try {
      return new SessionId(row.getString(1));
    } catch (IllegalArgumentException e) {
      throw unreadable(e);
    }
  }

  private static SQLException unreadable(Exception why) {
    return new SQLException(
        "the list of sessions cannot be read: " + why.getMessage(),
        "",
        SQLiteErrorCode.SQLITE_CORRUPT.code);
  }

  /** True if the table has this program's form and a row for every commit, and no other. */
  boolean current() throws SQLException {
    String sql =
        "SELECT (SELECT form FROM summary_form WHERE only = 1) = '"
            + FORM
            + "' AND NOT EXISTS (SELECT session FROM entry WHERE kind = 'PlanCommitted'"
            + " EXCEPT SELECT session FROM summary)"
            + " AND NOT EXISTS (SELECT session FROM summary"
            + " EXCEPT SELECT session FROM entry WHERE kind = 'PlanCommitted')";
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() && row.getBoolean(1);
    }
  }

  /** Forgets rows without entries, and says that the rest is in this program's form. */
  void settle() throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(
          "DELETE FROM summary WHERE session NOT IN"
              + " (SELECT session FROM entry WHERE kind = 'PlanCommitted')");
      statement.execute("INSERT OR REPLACE INTO summary_form VALUES (1, '" + FORM + "')");
    }
  }

  private static SessionSummary summary(ResultSet row) throws SQLException {
    try {
      return read(row);
    } catch (IllegalArgumentException | java.time.DateTimeException e) {
      throw unreadable(e);
    }
  }

  private static String kind(SessionSummary summary) {
    String level = summary.level().title();
    return level + (level.isEmpty() ? "" : " ") + PlanJson.word(summary.kind());
  }

  private static BlindLevel level(String kind) {
    for (BlindLevel level : BlindLevel.values()) {
      if (!level.title().isEmpty() && kind.startsWith(level.title() + " ")) {
        return level;
      }
    }
    return BlindLevel.HELPER;
  }

  private static SessionSummary read(ResultSet row) throws SQLException {
    Step step = option(STEPS, row.getString(11));
    boolean abandoned = step == Step.ABANDONED;
    String kind = row.getString(3);
    return new SessionSummary(
        new SessionId(row.getString(1)),
        option(KINDS, kind.substring(level(kind).title().length()).strip()),
        level(kind),
        row.getString(4),
        row.getString(5),
        row.getString(6),
        day(row.getString(7)),
        List.of(row.getString(8).split("\n", -1)),
        row.getString(9),
        looks(row.getString(10)),
        moment(row.getString(2)),
        step,
        abandoned ? "" : row.getString(12),
        abandoned ? row.getString(12) : "");
  }

  private static String looks(SessionSummary summary) {
    return String.join(" ", summary.looks().stream().map(String::valueOf).toList());
  }

  private static List<Integer> looks(String text) {
    return text.isEmpty() ? List.of() : BETWEEN.splitAsStream(text).map(Integer::valueOf).toList();
  }

  private static String ending(SessionSummary summary) {
    return summary.step() == Step.ABANDONED ? summary.reason() : summary.verdict();
  }

  /** The general parsers take a third of the time of a long list, so the usual forms go first. */
  private static LocalDate day(String text) {
    return text.length() == "2026-11-14".length()
        ? LocalDate.of(number(text, 0, 4), number(text, 5, 7), number(text, 8, 10))
        : LocalDate.parse(text);
  }

  private static Instant moment(String text) {
    if (text.length() != "2026-11-14T08:00:00Z".length()) {
      return Instant.parse(text);
    }
    long seconds = 3600L * number(text, 11, 13) + 60L * number(text, 14, 16) + number(text, 17, 19);
    return Instant.ofEpochSecond(86_400 * day(text.substring(0, 10)).toEpochDay() + seconds);
  }

  private static int number(String text, int from, int to) {
    return Integer.parseInt(text, from, to, 10);
  }

  private static <E extends Enum<E>> Map<String, E> words(Class<E> options) {
    Map<String, E> words = new HashMap<>();
    for (E option : options.getEnumConstants()) {
      words.put(PlanJson.word(option), option);
    }
    return Map.copyOf(words);
  }

  private static <E> E option(Map<String, E> options, String word) {
    E option = options.get(word);
    if (option == null) {
      throw new IllegalArgumentException("the list of sessions holds \"" + word + "\"");
    }
    return option;
  }

  private static String words(SessionSummary summary) {
    return plain(
        String.join(
            " ",
            summary.question(),
            String.join(" ", summary.setups()),
            summary.rider(),
            summary.trail(),
            summary.day().toString(),
            kind(summary),
            PlanJson.word(summary.step()),
            ending(summary)));
  }

  /** Without capitals and accents. */
  private static String plain(String text) {
    String parted = Normalizer.normalize(text, Normalizer.Form.NFKD);
    return MARKS.matcher(parted).replaceAll("").toLowerCase(Locale.ROOT);
  }
}
