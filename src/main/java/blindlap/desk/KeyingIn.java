package blindlap.desk;

import blindlap.exchange.LapsFile;
import blindlap.exchange.PlanText;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.DayCommands;
import blindlap.session.Fact;
import blindlap.session.Notebook;
import blindlap.session.SessionState;
import blindlap.session.day.LapInput;
import blindlap.session.day.LapState;
import blindlap.session.day.SessionId;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Keying in paper: a table in ridden order, entered twice; where the two differ it is settled
 * before anything is recorded.
 */
public final class KeyingIn {
  private static final String DRAFT = "key-in/";

  private final Sessions sessions;
  private final Notebook notebook;

  KeyingIn(Sessions sessions, Notebook notebook) {
    this.sessions = sessions;
    this.notebook = notebook;
  }

  /**
   * A table as it was typed.
   *
   * @param columns headings: lap, code, the measures, guess if asked, void, note
   * @param rows one for every lap still to be recorded, in ridden order
   */
  public record Table(List<String> columns, List<List<String>> rows) {
    public Table {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
    }

    /** True if nothing was typed in a row but its lap and code. */
    boolean blank(int row) {
      return rows.get(row).subList(2, columns.size()).stream().allMatch(String::isBlank);
    }
  }

  /**
   * A cell in which two tables differ.
   *
   * @param row from 0
   * @param column from 0
   * @param lap as it stands in the first column
   * @param heading of the column
   * @param first what was typed first
   * @param second what was typed second
   */
  public record Difference(
      int row, int column, String lap, String heading, String first, String second) {}

  /** The empty table of a session: laps not recorded yet, settling laps left out. */
  public Table empty(SessionState state) {
    Plan plan = state.plan();
    List<String> columns = new ArrayList<>(List.of("lap", "code"));
    plan.measures().stream().map(Measure::name).forEach(columns::add);
    if (plan.blinding().guesses()) {
      columns.add("guess");
    }
    columns.add("void");
    columns.add("note");
    List<List<String>> rows = new ArrayList<>();
    int per = plan.laps().perStint();
    int last = state.cutShort().map(Fact.DayCutShort::lastStint).orElse(plan.stints());
    for (int lap = 1; lap <= last * per; lap++) {
      boolean settling = (lap - 1) % per < plan.laps().settling();
      boolean known =
          state
              .lap(blindlap.session.day.LapId.ofDay(lap, per))
              .filter(LapState::ridden)
              .isPresent();
      if (!settling && !known) {
        List<String> row = new ArrayList<>();
        row.add(String.valueOf(lap));
        row.add(String.valueOf(state.code((lap - 1) / per + 1)));
        while (row.size() < columns.size()) {
          row.add("");
        }
        rows.add(row);
      }
    }
    return new Table(columns, rows);
  }

  /**
   * A keying in that is not done yet.
   *
   * @param again true once the first table was typed to its end
   * @param first what was typed first
   * @param second what was typed again
   */
  public record Begun(boolean again, Table first, Table second) {}

  /** Keeps what was typed so far; on disk when this returns. */
  public void keep(SessionId session, Begun begun) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("again", String.valueOf(begun.again()));
    fields.put("columns", begun.first().columns());
    fields.put("first", begun.first().rows());
    fields.put("second", begun.second().rows());
    notebook.putDraft(DRAFT + session.text(), CanonicalJson.text(fields));
  }

  /** Forgets what was typed so far. */
  public void forget(SessionId session) {
    notebook.deleteDraft(DRAFT + session.text());
  }

  /** What was typed so far, in the laps that are still to be recorded. */
  public Begun begun(SessionState state) {
    Table empty = empty(state);
    String kept = notebook.drafts().get(DRAFT + state.id().text());
    if (kept == null) {
      return new Begun(false, empty, empty);
    }
    Map<String, Object> fields = PlanText.read(kept).fields();
    if (!empty.columns().equals(fields.get("columns"))) {
      return new Begun(false, empty, empty);
    }
    return new Begun(
        "true".equals(fields.get("again")),
        filled(empty, fields.get("first")),
        filled(empty, fields.get("second")));
  }

  private static Table filled(Table empty, @Nullable Object kept) {
    Map<String, List<String>> typed = new HashMap<>();
    if (kept instanceof List<?> rows) {
      for (Object row : rows) {
        if (row instanceof List<?> cells && cells.size() == empty.columns().size()) {
          typed.put(String.valueOf(cells.get(0)), cells.stream().map(String::valueOf).toList());
        }
      }
    }
    return new Table(
        empty.columns(),
        empty.rows().stream().map(row -> typed.getOrDefault(row.get(0), row)).toList());
  }

  /** Where two tables of one session differ; numbers count by their value, not their spelling. */
  public List<Difference> differences(Table first, Table second) {
    List<Difference> found = new ArrayList<>();
    for (int row = 0; row < first.rows().size(); row++) {
      for (int column = 0; column < first.columns().size(); column++) {
        String one = first.rows().get(row).get(column).strip();
        String two = second.rows().get(row).get(column).strip();
        if (!same(one, two)) {
          found.add(
              new Difference(
                  row,
                  column,
                  first.rows().get(row).get(0),
                  first.columns().get(column),
                  one,
                  two));
        }
      }
    }
    return found;
  }

  /** What two files of laps hold, and where they differ. */
  public record Files(LapsFile.Reading first, LapsFile.Reading second, List<Difference> found) {
    public Files {
      found = List.copyOf(found);
    }

    /** What is wrong in either file; nothing is recorded while anything is. */
    public List<Problem> problems() {
      List<Problem> all = new ArrayList<>(first.problems());
      all.addAll(second.problems());
      return all;
    }
  }

  /** Compares two files that were keyed in from the same paper. */
  public Files compare(SessionState state, byte[] first, byte[] second) {
    LapsFile.Reading one = LapsFile.read(first, state.plan(), state.codes());
    LapsFile.Reading two = LapsFile.read(second, state.plan(), state.codes());
    SortedMap<Integer, List<String>> rows = new TreeMap<>();
    List<String> columns = empty(state).columns();
    Map<Integer, List<String>> other = cells(two.laps(), state.plan(), columns);
    Map<Integer, List<String>> mine = cells(one.laps(), state.plan(), columns);
    rows.putAll(other);
    rows.putAll(mine);
    List<Difference> found = new ArrayList<>();
    for (int lap : rows.keySet()) {
      for (int i = 2; i < columns.size(); i++) {
        String a = mine.containsKey(lap) ? mine.get(lap).get(i) : "";
        String b = other.containsKey(lap) ? other.get(lap).get(i) : "";
        if (!same(a, b)) {
          found.add(new Difference(-1, i, String.valueOf(lap), columns.get(i), a, b));
        }
      }
    }
    return new Files(one, two, found);
  }

  private static Map<Integer, List<String>> cells(
      List<LapInput> laps, Plan plan, List<String> columns) {
    Map<Integer, List<String>> rows = new LinkedHashMap<>();
    for (LapInput lap : laps) {
      List<String> cells = new ArrayList<>();
      for (String column : columns) {
        BigDecimal value = lap.values().get(column);
        cells.add(
            switch (column) {
              case "guess" -> lap.guess() == null ? "" : lap.guess();
              case "void" -> lap.voidReason() == null ? "" : lap.voidReason();
              case "note" -> lap.note();
              default -> value == null ? "" : value.toPlainString();
            });
      }
      rows.put(lap.lap().ofDay(plan.laps().perStint()), cells);
    }
    return rows;
  }

  /** Records two files between which no difference is left. */
  public Sessions.Result record(SessionState state, Files files) {
    return record(state, files.first());
  }

  private Sessions.Result record(SessionState state, LapsFile.Reading reading) {
    if (!reading.problems().isEmpty()) {
      return new Sessions.Result.Refused(reading.problems());
    }
    return sessions.act(
        state.id(), latest -> new DayCommands(latest).record(reading.laps(), Source.PAPER));
  }

  private static boolean same(String one, String two) {
    if (one.equals(two)) {
      return true;
    }
    BigDecimal first = Tolerance.number(one);
    BigDecimal second = Tolerance.number(two);
    return first != null && second != null && first.compareTo(second) == 0;
  }

  /** The table with one cell settled. */
  public Table settled(Table table, Difference difference, String value) {
    List<List<String>> rows = new ArrayList<>(table.rows());
    List<String> row = new ArrayList<>(rows.get(difference.row()));
    row.set(difference.column(), value);
    rows.set(difference.row(), row);
    return new Table(table.columns(), rows);
  }

  /** Records a settled table as keyed in from paper: every row in which something was typed. */
  public Sessions.Result record(SessionState state, Table table) {
    return record(state, LapsFile.read(csv(table), state.plan(), state.codes()));
  }

  /** The table as a file of laps, rows without any answer left out. */
  public byte[] csv(Table table) {
    StringBuilder text = new StringBuilder(line(table.columns()));
    for (int row = 0; row < table.rows().size(); row++) {
      if (!table.blank(row)) {
        text.append(line(table.rows().get(row)));
      }
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** The empty table as a file to be filled in elsewhere. */
  public byte[] form(SessionState state) {
    Table table = empty(state);
    StringBuilder text = new StringBuilder(line(table.columns()));
    table.rows().forEach(row -> text.append(line(row)));
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static String line(List<String> cells) {
    return cells.stream().map(KeyingIn::cell).collect(Collectors.joining(";")) + "\n";
  }

  private static String cell(String typed) {
    String plain = typed.strip();
    return plain.contains(";") || plain.contains("\"") || plain.contains("\n")
        ? "\"" + plain.replace("\"", "\"\"") + "\""
        : plain;
  }
}
