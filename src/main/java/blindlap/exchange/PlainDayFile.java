package blindlap.exchange;

import blindlap.fault.Decimals;
import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.session.PlainLap;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads the laps of old test days from a CSV file of any layout: the tester says which column holds
 * which measure, and which the date, stint, lap, setup and void laps, if any
 * (docs/manual/notebook.md). Without a column for the lap, rows are laps in ridden order.
 */
public final class PlainDayFile {
  private PlainDayFile() {}

  /** Unit in which a file has a time; others are taken as they are. */
  public enum TimeUnit {
    SECONDS("s", "1"),
    MILLISECONDS("ms", "0.001"),
    MINUTES("min", "60");

    private final String symbol;
    private final BigDecimal factor;

    TimeUnit(String symbol, String factor) {
      this.symbol = symbol;
      this.factor = new BigDecimal(factor);
    }

    /** What a number in this unit is multiplied with to give seconds. */
    BigDecimal factor() {
      return factor;
    }

    /** The unit of a symbol: s, ms or min. */
    public static Optional<TimeUnit> of(String symbol) {
      for (TimeUnit unit : values()) {
        if (unit.symbol.equals(symbol.strip())) {
          return Optional.of(unit);
        }
      }
      return Optional.empty();
    }
  }

  /**
   * Where a measure stands.
   *
   * @param measure what is recorded, named as in the plans it is to count with; its unit for
   *     anything but times is the file's
   * @param column name of the column
   * @param unit unit of a time in the file; ignored for other measures and for m:ss.s
   */
  public record Column(Measure measure, String column, TimeUnit unit) {}

  /**
   * Which columns tell where a row belongs.
   *
   * @param date name of the column with the date; empty if all rows are of one day
   * @param stint name of the column with the stint; empty if every lap is a stint of its own
   * @param lap name of the column with the number of the lap; empty if rows are in ridden order
   * @param decimals sign of decimals
   */
  public record Places(String date, String stint, String lap, Decimals.Sign decimals) {
    /** One day, a lap a row in ridden order, decimals as written. */
    public static final Places PLAIN = new Places("", "", "", Decimals.Sign.AS_WRITTEN);
  }

  /**
   * What stands where.
   *
   * @param measures at least one
   * @param setup name of the column that says what was on; empty if none does
   * @param voids name of the column that marks void laps; empty if none does
   * @param places where a row belongs
   */
  public record Mapping(List<Column> measures, String setup, String voids, Places places) {
    public Mapping {
      measures = List.copyOf(measures);
    }

    /** Column by what it gives, for the record. */
    public Map<String, String> columns() {
      Map<String, String> columns = new LinkedHashMap<>();
      measures.forEach(m -> columns.put(m.measure().name(), m.column()));
      put(columns, "date", places.date());
      put(columns, "stint", places.stint());
      put(columns, "lap", places.lap());
      put(columns, "setup", setup);
      put(columns, "void", voids);
      return columns;
    }

    private static void put(Map<String, String> columns, String what, String column) {
      if (!column.isBlank()) {
        columns.put(what, column);
      }
    }
  }

  /**
   * A day of a file.
   *
   * @param day when
   * @param lines lines of its laps, in ridden order
   * @param laps in ridden order; to be used only if there are no problems
   * @param lapsPerStint laps of every stint; 1 without a column for the stint
   * @param problems its mistakes, in the order of the file
   */
  public record Day(
      LocalDate day,
      List<Integer> lines,
      List<PlainLap> laps,
      int lapsPerStint,
      List<Problem> problems) {
    public Day {
      lines = List.copyOf(lines);
      laps = List.copyOf(laps);
      problems = List.copyOf(problems);
    }
  }

  /**
   * What a file holds.
   *
   * @param days in the order in which the file names them
   * @param problems mistakes that no day can be told for; then no day is to be used
   */
  public record Reading(List<Day> days, List<Problem> problems) {
    public Reading {
      days = List.copyOf(days);
      problems = List.copyOf(problems);
    }
  }

  /**
   * A file before anything is mapped.
   *
   * @param header names of its columns; one without a name is "column 3"
   * @param rows its first rows as texts
   * @param guess columns that speak for themselves
   * @param problems why it cannot be read; empty if it can
   */
  public record Preview(
      List<String> header, List<List<String>> rows, PlainDayGuess guess, List<Problem> problems) {
    public Preview {
      header = List.copyOf(header);
      rows = List.copyOf(rows);
      problems = List.copyOf(problems);
    }
  }

  /** The header and the first rows. */
  public static Preview preview(byte[] bytes, int rows) {
    try {
      CsvTable table = CsvTable.read(bytes);
      List<List<String>> cells = table.rows().stream().map(CsvTable.Row::cells).toList();
      return new Preview(
          names(table),
          cells.stream().limit(rows).toList(),
          PlainDayGuess.of(names(table), cells, table.separator() != ','),
          List.of());
    } catch (CsvTable.Unreadable e) {
      return new Preview(List.of(), List.of(), PlainDayGuess.NOTHING, e.problems());
    }
  }

  /** Names of the columns; one without a name is called by its place. */
  static List<String> names(CsvTable table) {
    List<String> names = new ArrayList<>();
    for (String name : table.header()) {
      names.add(name.isBlank() ? "column " + (names.size() + 1) : name);
    }
    return names;
  }

  /**
   * Reads the days.
   *
   * @param day day of rows where no column has it
   */
  public static Reading read(byte[] bytes, Mapping mapping, Optional<LocalDate> day) {
    try {
      return new PlainDayRows(CsvTable.read(bytes), mapping).read(day);
    } catch (CsvTable.Unreadable e) {
      return new Reading(List.of(), e.problems());
    }
  }
}
