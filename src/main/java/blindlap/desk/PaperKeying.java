package blindlap.desk;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.KeyingIn;
import blindlap.desk.day.LapTable;
import blindlap.exchange.CsvText;
import blindlap.exchange.LapsFile;
import blindlap.exchange.PlanText;
import blindlap.fault.CanonicalJson;
import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.plan.TellingRun;
import blindlap.session.DayCommands;
import blindlap.session.KeyKnown;
import blindlap.session.Notebook;
import blindlap.session.Outcome;
import blindlap.session.SessionState;
import blindlap.session.day.Day;
import blindlap.session.day.LapInput;
import blindlap.session.day.SessionId;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Keying in paper: tables typed on a page, kept as drafts, or files; all recorded as laps. */
public final class PaperKeying implements KeyingIn {
  private static final String DRAFT = "key-in/";

  /** Where a problem of a file stands; the first line has the headings. */
  private static final Pattern LINE = Pattern.compile("^line (\\d+)");

  private final Sessions sessions;
  private final Notebook notebook;

  PaperKeying(Sessions sessions, Notebook notebook) {
    this.sessions = sessions;
    this.notebook = notebook;
  }

  @Override
  public void keep(SessionId session, Begun begun) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("again", String.valueOf(begun.again()));
    fields.put("columns", begun.first().columns());
    fields.put("first", begun.first().rows());
    fields.put("second", begun.second().rows());
    notebook.putDraft(DRAFT + session.text(), CanonicalJson.text(fields));
  }

  @Override
  public void forget(SessionId session) {
    notebook.deleteDraft(DRAFT + session.text());
  }

  @Override
  public Begun begun(Day day) {
    LapTable empty = LapTable.empty(day);
    String kept = notebook.drafts().get(DRAFT + day.id().text());
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

  private static LapTable filled(LapTable empty, @Nullable Object kept) {
    Map<String, List<String>> typed = new HashMap<>();
    if (kept instanceof List<?> rows) {
      for (Object row : rows) {
        if (row instanceof List<?> cells && cells.size() == empty.columns().size()) {
          typed.put(String.valueOf(cells.get(0)), cells.stream().map(String::valueOf).toList());
        }
      }
    }
    return new LapTable(
        empty.columns(),
        empty.rows().stream().map(row -> typed.getOrDefault(row.get(0), row)).toList());
  }

  /** What two files of laps hold, and where they differ. */
  public record Files(
      LapsFile.Reading first, LapsFile.Reading second, List<LapTable.Difference> found) {
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
    LapsFile.Reading one = read(first, state.day());
    LapsFile.Reading two = read(second, state.day());
    SortedMap<Integer, List<String>> rows = new TreeMap<>();
    List<String> columns = LapTable.empty(state.day()).columns();
    Map<Integer, List<String>> other = cells(two.laps(), state.plan(), columns);
    Map<Integer, List<String>> mine = cells(one.laps(), state.plan(), columns);
    rows.putAll(other);
    rows.putAll(mine);
    List<LapTable.Difference> found = new ArrayList<>();
    for (int lap : rows.keySet()) {
      for (int i = LapTable.FIXED; i < columns.size(); i++) {
        String a = mine.containsKey(lap) ? mine.get(lap).get(i) : "";
        String b = other.containsKey(lap) ? other.get(lap).get(i) : "";
        if (!LapTable.same(a, b)) {
          found.add(new LapTable.Difference(-1, i, String.valueOf(lap), columns.get(i), a, b));
        }
      }
    }
    return new Files(one, two, found);
  }

  /** What was ridden by a file typed from paper. */
  private static LapsFile.Reading read(byte[] file, Day day) {
    return PaperTrials.ridden(day.plan().telling(), LapsFile.read(file, day.plan(), day.codes()));
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
              case "guess", "answer" -> lap.guess() == null ? "" : lap.guess();
              case "sureness" -> lap.sureness() == null ? "" : lap.sureness();
              case "cue" -> lap.cue();
              case "void" -> lap.voidReason() == null ? "" : lap.voidReason();
              case "note" -> lap.note();
              default -> value == null ? beside(lap, column) : value.toPlainString();
            });
      }
      rows.put(lap.lap().ofDay(plan.laps().perStint()), cells);
    }
    return rows;
  }

  private static String beside(LapInput lap, String column) {
    return lap.covariates()
        .getOrDefault(column, Optional.empty())
        .map(BigDecimal::toPlainString)
        .orElseGet(() -> lap.conditions().getOrDefault(column, ""));
  }

  /**
   * Records two files between which no difference is left.
   *
   * @param knowing names of the measures that were timed or scored by someone who knows the key
   */
  public Sessions.Result record(SessionState state, Files files, List<String> knowing) {
    return record(state.id(), files.first(), knowing);
  }

  private Sessions.Result record(
      SessionId session, LapsFile.Reading reading, List<String> knowing) {
    if (!reading.problems().isEmpty()) {
      return new Sessions.Result.Refused(reading.problems());
    }
    return sessions.act(
        session,
        latest ->
            new KeyKnown(latest)
                .among(new DayCommands(latest).recordWithOpen(reading.laps()), knowing));
  }

  @Override
  public DayResult record(Day day, LapTable table, List<String> knowing) {
    LapTable typed = typed(table, day.plan().telling());
    DayResult result =
        record(day.id(), read(text(typed.columns(), typed.rows()), day), knowing).day();
    return result instanceof DayResult.Refused refused
        ? new DayResult.Refused(byLap(refused.problems(), typed))
        : result;
  }

  @Override
  public List<Problem> check(Day day, LapTable table, int row) {
    if (table.blank(row)) {
      return List.of();
    }
    LapTable together = table.together(day, row);
    LapsFile.Reading reading = read(text(together.columns(), together.rows()), day);
    if (!reading.problems().isEmpty()) {
      return of(table, row, byLap(reading.problems(), together));
    }
    Outcome outcome =
        sessions
            .state(day.id())
            .map(state -> new DayCommands(state).recordWithOpen(reading.laps()))
            .orElseGet(() -> new Outcome.Accepted(List.of()));
    return outcome instanceof Outcome.Refused refused
        ? of(table, row, byLap(refused.problems(), together))
        : List.of();
  }

  /** Those of one row, where others of its trial were looked at with it. */
  private static List<Problem> of(LapTable table, int row, List<Problem> problems) {
    String place = place(table.rows().get(row).get(0));
    return problems.stream()
        .filter(each -> !each.where().startsWith("lap ") || each.where().equals(place))
        .toList();
  }

  private static String place(String lap) {
    return "lap " + lap;
  }

  /** Places of a page: whoever types a table knows laps, and no lines of a file. */
  private static List<Problem> byLap(List<Problem> problems, LapTable table) {
    return problems.stream()
        .map(
            problem -> {
              Matcher line = LINE.matcher(problem.where());
              int at = line.find() ? Integer.parseInt(line.group(1)) - 2 : -1;
              return at < 0 || at >= table.rows().size()
                  ? problem
                  : new Problem(
                      problem.fault(), place(table.rows().get(at).get(0)), problem.details());
            })
        .toList();
  }

  /** Rows in which something was typed; of a telling run all, for most have nothing to type. */
  private static LapTable typed(LapTable table, @Nullable TellingRun run) {
    List<List<String>> typed = new ArrayList<>();
    for (int row = 0; row < table.rows().size(); row++) {
      if (run != null || !table.blank(row)) {
        typed.add(table.rows().get(row));
      }
    }
    return new LapTable(table.columns(), typed);
  }

  /** The table as a file of laps, rows without any answer left out. */
  public byte[] csv(LapTable table) {
    return text(table.columns(), typed(table, null).rows());
  }

  /** The empty table as a file to be filled in elsewhere. */
  public byte[] form(SessionState state) {
    LapTable table = LapTable.empty(state.day());
    return text(table.columns(), table.rows());
  }

  private static byte[] text(List<String> columns, List<List<String>> rows) {
    List<List<String>> cells =
        rows.stream().map(row -> row.stream().map(String::strip).toList()).toList();
    return CsvText.write(';', columns, cells).getBytes(StandardCharsets.UTF_8);
  }
}
