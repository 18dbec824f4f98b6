package blindlap.exchange;

import blindlap.plan.Measure;
import blindlap.session.PlainDayPlaces;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What stands where in a file of old days.
 *
 * @param measures at least one
 * @param places where a row belongs
 */
public record PlainDayMapping(List<Column> measures, PlainDayPlaces places) {
  public PlainDayMapping {
    measures = List.copyOf(measures);
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

  /** Column by what it gives, for the record. */
  public Map<String, String> columns() {
    Map<String, String> columns = new LinkedHashMap<>();
    measures.forEach(m -> columns.put(m.measure().name(), m.column()));
    put(columns, "date", places.date());
    put(columns, "stint", places.stint());
    put(columns, "lap", places.lap());
    put(columns, "setup", places.setup());
    put(columns, "void", places.voids());
    return columns;
  }

  private static void put(Map<String, String> columns, String what, String column) {
    if (!column.isBlank()) {
      columns.put(what, column);
    }
  }
}
