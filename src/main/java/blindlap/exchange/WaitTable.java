package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.review.Handling;
import blindlap.review.Waits;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** How long the handlings of a day took, as a table of a data package. */
final class WaitTable {
  static final String NAME = "waits";
  static final String FILE = NAME + ".csv";

  private static final List<Column> COLUMNS =
      List.of(
          Column.of("stint", "integer", "stint, from 1; 0 is the warm-up"),
          new Column(
              "wait",
              "number",
              "s",
              "from the last lap of the stint before to the bike being handed over; empty if not known"),
          Column.of("counts", "boolean", "true if the test of waits uses it"),
          Column.of("real", "boolean", "true if what was on the bike changed"),
          new Column("took", "number", "s", "how long the helper's handling took"),
          new Column("given", "number", "s", "how long every handling was to take"),
          Column.of("mishap", "boolean", "true if the helper declared a mishap"),
          Column.of("words", "string", "what happened"));

  private WaitTable() {}

  /** Nothing where nothing is known of any handling. */
  static void write(PackageTables tables, List<Waits.Timed> handlings) {
    if (!handlings.isEmpty()) {
      tables.table(NAME, COLUMNS, handlings.stream().map(WaitTable::row).toList());
    }
  }

  private static List<String> row(Waits.Timed each) {
    Handling handling = each.handling();
    String mishap = handling.mishap();
    return List.of(
        String.valueOf(handling.stint()),
        text(handling.waited()),
        String.valueOf(each.counts().isPresent()),
        String.valueOf(each.real()),
        text(handling.took()),
        text(handling.given()),
        String.valueOf(mishap != null),
        mishap == null ? "" : mishap);
  }

  private static String text(@Nullable BigDecimal seconds) {
    return seconds == null ? "" : seconds.toPlainString();
  }

  /**
   * Handlings of the rows of a table, by stint.
   *
   * @throws Unreadable if a column is missing or a cell cannot be read
   */
  static SortedMap<Integer, Handling> read(List<Map<String, String>> rows, Plan plan) {
    SortedMap<Integer, Handling> handlings = new TreeMap<>();
    for (Map<String, String> row : rows) {
      int stint = PackageCells.stint(row, FILE, 0, plan);
      handlings.put(
          stint,
          new Handling(
              stint,
              seconds(row, "wait"),
              seconds(row, "took"),
              seconds(row, "given"),
              PackageCells.yes(row, "mishap") ? PackageCells.text(row, "words") : null));
    }
    return handlings;
  }

  private static @Nullable BigDecimal seconds(Map<String, String> row, String column) {
    String written = PackageCells.text(row, column);
    return written.isEmpty() ? null : PackageCells.number(written, column);
  }
}
