package blindlap.exchange;

import blindlap.plan.Measure;
import blindlap.plan.Problem;
import blindlap.session.PlainLap;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Reads the laps of an old test day from a CSV file of any layout: the tester says which column
 * holds which measure, and which the setup and the void laps, if any (docs/manual/notebook.md).
 * Rows are laps in ridden order.
 */
public final class PlainDayFile {
  private static final Set<String> NOT_VOID = Set.of("", "-", "–", "0", "no", "n", "false");

  private final CsvTable table;
  private final Decimals decimals;
  private final List<Problem> problems = new ArrayList<>();

  private PlainDayFile(CsvTable table) {
    this.table = table;
    this.decimals = new Decimals(table.separator() != ',');
  }

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
   * What stands where.
   *
   * @param measures at least one
   * @param setup name of the column that says what was on; empty if none does
   * @param voids name of the column that marks void laps; empty if none does
   */
  public record Mapping(List<Column> measures, String setup, String voids) {
    public Mapping {
      measures = List.copyOf(measures);
    }

    /** Column by what it gives, for the record. */
    public Map<String, String> columns() {
      Map<String, String> columns = new LinkedHashMap<>();
      measures.forEach(m -> columns.put(m.measure().name(), m.column()));
      if (!setup.isBlank()) {
        columns.put("setup", setup);
      }
      if (!voids.isBlank()) {
        columns.put("void", voids);
      }
      return columns;
    }
  }

  /**
   * What a file holds.
   *
   * @param laps in ridden order; to be used only if there are no problems
   * @param problems mistakes, in the order of the file
   */
  public record Reading(List<PlainLap> laps, List<Problem> problems) {
    public Reading {
      laps = List.copyOf(laps);
      problems = List.copyOf(problems);
    }
  }

  /**
   * A file before anything is mapped.
   *
   * @param header names of its columns
   * @param rows its first rows as texts
   * @param problems why it cannot be read; empty if it can
   */
  public record Preview(List<String> header, List<List<String>> rows, List<Problem> problems) {
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
      return new Preview(
          table.header(),
          table.rows().stream().limit(rows).map(CsvTable.Row::cells).toList(),
          List.of());
    } catch (CsvTable.Unreadable e) {
      return new Preview(List.of(), List.of(), e.problems());
    }
  }

  /** Reads the laps. */
  public static Reading read(byte[] bytes, Mapping mapping) {
    try {
      return new PlainDayFile(CsvTable.read(bytes)).read(mapping);
    } catch (CsvTable.Unreadable e) {
      return new Reading(List.of(), e.problems());
    }
  }

  private Reading read(Mapping mapping) {
    Map<String, Integer> places = new LinkedHashMap<>();
    mapping.measures().forEach(m -> places.put(m.measure().name(), place(m.column())));
    int setup = mapping.setup().isBlank() ? -1 : place(mapping.setup());
    int voids = mapping.voids().isBlank() ? -1 : place(mapping.voids());
    if (new HashSet<>(places.keySet()).size() < mapping.measures().size()) {
      problems.add(Problem.of(FileFault.COLUMN_TWICE, "", places.keySet()));
    }
    List<PlainLap> laps = new ArrayList<>();
    for (CsvTable.Row row : problems.isEmpty() ? table.rows() : List.<CsvTable.Row>of()) {
      Map<String, BigDecimal> values = new LinkedHashMap<>();
      for (Column column : mapping.measures()) {
        value(column, row, places.getOrDefault(column.measure().name(), 0))
            .ifPresent(value -> values.put(column.measure().name(), value));
      }
      laps.add(
          new PlainLap(
              laps.size() + 1,
              setup < 0 ? "" : row.cells().get(setup),
              values,
              voids >= 0 && !NOT_VOID.contains(row.cells().get(voids).toLowerCase(Locale.ROOT))));
    }
    return new Reading(problems.isEmpty() ? laps : List.of(), problems);
  }

  private int place(String column) {
    for (int c = 0; c < table.header().size(); c++) {
      if (table.header().get(c).equalsIgnoreCase(column.strip())) {
        return c;
      }
    }
    problems.add(
        Problem.of(
            FileFault.UNKNOWN_COLUMN,
            "line " + table.headerLine(),
            column,
            String.join(", ", table.header())));
    return 0;
  }

  private Optional<BigDecimal> value(Column column, CsvTable.Row row, int place) {
    String cell = row.cells().get(place);
    String where = "line " + row.line() + ", column " + (place + 1);
    if (cell.isEmpty() || cell.equals("-") || cell.equals("–")) {
      return Optional.empty();
    }
    if (decimals.mixed(cell, row.line())) {
      problems.add(Problem.of(FileFault.MIXED_DECIMALS, where, cell, decimals.firstLine()));
      return Optional.empty();
    }
    Measure measure = column.measure();
    boolean timed = measure.kind().timed();
    Optional<BigDecimal> value = timed ? decimals.time(cell) : decimals.number(cell);
    if (timed && cell.indexOf(':') < 0) {
      value = value.map(number -> number.multiply(column.unit().factor));
    }
    if (value.isEmpty()) {
      problems.add(
          Problem.of(
              timed ? FileFault.NOT_A_TIME_FORM : FileFault.NOT_A_NUMBER,
              where,
              measure.name(),
              cell));
    } else if (!measure.kind().admits(value.get())) {
      problems.add(Problem.of(FileFault.NOT_A_NUMBER, where, measure.name(), cell));
      return Optional.empty();
    }
    return value;
  }
}
