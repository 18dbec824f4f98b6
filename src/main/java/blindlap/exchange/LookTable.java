package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.review.TakenLook;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** Looks before the end of a day with the values that they used, as a table of a data package. */
final class LookTable {
  static final String NAME = "looks";
  static final String FILE = NAME + ".csv";

  private static final List<Column> COLUMNS =
      List.of(
          Column.of("after_stint", "integer", "the last stint that the look used"),
          Column.of("settled", "boolean", "true if people read that they may stop"),
          Column.of("stint", "integer", "stint of a value, from 1; empty if there was none at all"),
          Column.of("lap_in_stint", "integer", "lap of a value within its stint"),
          Column.of(
              "value",
              "number",
              "value of the primary measure as the look used it; scored laps that are missing were"
                  + " void or had none"));

  private LookTable() {}

  /** Nothing where no look was taken. */
  static void write(PackageTables tables, List<TakenLook> looks) {
    if (looks.isEmpty()) {
      return;
    }
    List<List<String>> rows = new ArrayList<>();
    for (TakenLook look : looks) {
      if (look.values().isEmpty()) {
        rows.add(row(look, "", "", ""));
      }
      look.values()
          .forEach(
              (lap, value) ->
                  rows.add(
                      row(
                          look,
                          String.valueOf(lap.stint()),
                          String.valueOf(lap.lap()),
                          value.toPlainString())));
    }
    tables.table(NAME, COLUMNS, rows);
  }

  private static List<String> row(TakenLook look, String stint, String lap, String value) {
    return List.of(String.valueOf(look.stint()), String.valueOf(look.settled()), stint, lap, value);
  }

  /**
   * Looks of the rows of a table, in order.
   *
   * @throws Unreadable if a column is missing or a cell cannot be read
   */
  static List<TakenLook> read(List<Map<String, String>> rows, Plan plan) {
    SortedMap<Integer, Boolean> settled = new TreeMap<>();
    SortedMap<Integer, SortedMap<LapId, BigDecimal>> values = new TreeMap<>();
    for (Map<String, String> row : rows) {
      int look = PackageCells.inside(PackageCells.whole(row, "after_stint"), FILE, 1, plan);
      settled.put(look, PackageCells.yes(row, "settled"));
      SortedMap<LapId, BigDecimal> of = values.computeIfAbsent(look, l -> new TreeMap<>());
      if (!PackageCells.text(row, "stint").isEmpty()) {
        LapId lap =
            new LapId(
                PackageCells.stint(row, FILE, 1, plan), PackageCells.whole(row, "lap_in_stint"));
        of.put(lap, PackageCells.number(PackageCells.text(row, "value"), "value"));
      }
    }
    List<TakenLook> looks = new ArrayList<>();
    values.forEach(
        (stint, used) ->
            looks.add(new TakenLook(stint, Boolean.TRUE.equals(settled.get(stint)), used)));
    return looks;
  }
}
