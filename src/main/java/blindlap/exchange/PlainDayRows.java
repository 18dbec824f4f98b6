package blindlap.exchange;

import blindlap.fault.Decimals;
import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Measure;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads the rows of a file of old days, each with its mistakes. */
final class PlainDayRows {
  private static final Set<String> NOT_VOID = Set.of("", "-", "–", "0", "no", "n", "false");
  private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})-(\\d{1,2})-(\\d{1,2})");
  private static final Pattern DAY_FIRST = Pattern.compile("(\\d{1,2})\\.(\\d{1,2})\\.(\\d{4})");

  private final CsvTable table;
  private final PlainDayMapping mapping;
  private final Decimals decimals;
  private final List<Problem> problems = new ArrayList<>();

  PlainDayRows(CsvTable table, PlainDayMapping mapping) {
    this.table = table;
    this.mapping = mapping;
    this.decimals = Decimals.of(mapping.places().decimals(), table.separator() != ',');
  }

  PlainDayReading read(Optional<LocalDate> day) {
    Map<String, Integer> places = new LinkedHashMap<>();
    mapping.measures().forEach(m -> places.put(m.measure().name(), place(m.column())));
    if (new HashSet<>(places.keySet()).size() < mapping.measures().size()) {
      problems.add(Problem.of(FileFault.COLUMN_TWICE, "", String.join(", ", places.keySet())));
    }
    int date = optional(mapping.places().date());
    int stint = optional(mapping.places().stint());
    int lap = optional(mapping.places().lap());
    int setup = optional(mapping.places().setup());
    int voids = optional(mapping.places().voids());
    Map<LocalDate, List<PlainDayRow>> days = new LinkedHashMap<>();
    for (CsvTable.Row row : problems.isEmpty() ? table.rows() : List.<CsvTable.Row>of()) {
      List<Problem> own = new ArrayList<>();
      Map<String, BigDecimal> values = new LinkedHashMap<>();
      for (PlainDayMapping.Column column : mapping.measures()) {
        int place = places.getOrDefault(column.measure().name(), 0);
        value(column, row, place, own).ifPresent(v -> values.put(column.measure().name(), v));
      }
      Optional<LocalDate> when = date < 0 ? day : date(row, date);
      int number = lap < 0 ? 0 : number(row, lap, own);
      String on = setup < 0 ? "" : row.cells().get(setup);
      boolean isVoid = voids >= 0 && isVoid(row.cells().get(voids));
      String within = stint < 0 ? "" : stint(row, stint, own);
      when.ifPresent(
          d ->
              days.computeIfAbsent(d, key -> new ArrayList<>())
                  .add(new PlainDayRow(row.line(), within, number, on, values, isVoid, own)));
    }
    return new PlainDayReading(
        days.entrySet().stream()
            .map(e -> new PlainDayOrder(e.getValue(), lap >= 0, stint >= 0).day(e.getKey()))
            .toList(),
        problems);
  }

  private static boolean isVoid(String cell) {
    return !NOT_VOID.contains(cell.toLowerCase(Locale.ROOT));
  }

  private int optional(String column) {
    return column.isBlank() ? -1 : place(column);
  }

  private int place(String column) {
    List<String> names = table.names();
    int found = -1;
    for (int c = 0; c < names.size(); c++) {
      if (names.get(c).equalsIgnoreCase(column.strip())) {
        if (found >= 0) {
          problems.add(Problem.of(FileFault.COLUMN_TWICE, "line " + table.headerLine(), column));
        }
        found = c;
      }
    }
    if (found < 0) {
      problems.add(
          Problem.of(
              FileFault.UNKNOWN_COLUMN,
              "line " + table.headerLine(),
              column,
              String.join(", ", names)));
    }
    return Math.max(0, found);
  }

  private static String where(CsvTable.Row row, int place) {
    return "line " + row.line() + ", column " + (place + 1);
  }

  /** True for a date as files may have it. */
  static boolean isDate(String cell) {
    return parse(cell) != null;
  }

  // Day and month cannot be told apart between slashes, so such dates are not taken.
  private static @Nullable LocalDate parse(String cell) {
    Matcher year = YEAR_FIRST.matcher(cell);
    Matcher day = DAY_FIRST.matcher(cell);
    try {
      if (year.matches()) {
        return date(year.group(1), year.group(2), year.group(3));
      }
      return day.matches() ? date(day.group(3), day.group(2), day.group(1)) : null;
    } catch (DateTimeException noSuchDay) {
      return null;
    }
  }

  private static LocalDate date(String year, String month, String day) {
    return LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day));
  }

  private Optional<LocalDate> date(CsvTable.Row row, int place) {
    LocalDate date = parse(row.cells().get(place));
    if (date == null) {
      problems.add(Problem.of(FileFault.NOT_A_DATE, where(row, place), row.cells().get(place)));
    }
    return Optional.ofNullable(date);
  }

  private static int number(CsvTable.Row row, int place, List<Problem> own) {
    String cell = row.cells().get(place);
    int number = TypedNumber.whole(cell).orElse(0);
    if (number < 1) {
      own.add(Problem.of(FileFault.NOT_A_LAP_NUMBER, where(row, place), cell));
    }
    return Math.max(0, number);
  }

  private static String stint(CsvTable.Row row, int place, List<Problem> own) {
    String cell = row.cells().get(place);
    if (cell.isEmpty()) {
      own.add(Problem.of(FileFault.NO_STINT, where(row, place)));
    }
    return cell;
  }

  private Optional<BigDecimal> value(
      PlainDayMapping.Column column, CsvTable.Row row, int place, List<Problem> own) {
    String cell = row.cells().get(place);
    if (cell.isEmpty() || cell.equals("-") || cell.equals("–")) {
      return Optional.empty();
    }
    String where = where(row, place);
    if (decimals.mixed(cell, row.line())) {
      own.add(
          decimals.firstLine() > 0
              ? Problem.of(FileFault.MIXED_DECIMALS, where, cell, decimals.firstLine())
              : Problem.of(FileFault.OTHER_DECIMALS, where, cell));
      return Optional.empty();
    }
    Measure measure = column.measure();
    if (TypedNumber.twoSigns(cell)) {
      own.add(Problem.of(FileFault.TWO_SIGNS, where, measure.name(), cell));
      return Optional.empty();
    }
    boolean timed = measure.kind().timed();
    Optional<BigDecimal> value = timed ? decimals.time(cell) : decimals.number(cell);
    if (timed && cell.indexOf(':') < 0) {
      value = value.map(number -> number.multiply(column.unit().factor()));
    }
    if (value.isEmpty() || !measure.kind().admits(value.get())) {
      own.add(
          Problem.of(
              timed ? FileFault.NOT_A_TIME_FORM : FileFault.NOT_A_NUMBER,
              where,
              measure.name(),
              cell));
      return Optional.empty();
    }
    return value;
  }
}
