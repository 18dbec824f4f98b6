package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.DayRecord;
import blindlap.review.TimedValue;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What recordings and watches say of the times of a day, as a table of a data package. */
final class TimedTable {
  static final String NAME = "timed";
  static final String FILE = NAME + ".csv";

  private static final List<Column> COLUMNS =
      List.of(
          Column.of("stint", "integer", "stint, from 1"),
          Column.of("lap_in_stint", "integer", "lap within the stint, from 1"),
          Column.of("measure", "string", "name of the measure"),
          Column.of("counts", "string", "recording or watch, as the plan says"),
          new Column("recording", "number", "s", "as recorded; empty where a pass is missing"),
          new Column(
              "uncertainty", "number", "s", "standard deviation of that time, of the recorder"),
          new Column("watch", "number", "s", "by a watch or as typed; empty where there is none"),
          Column.of("void", "boolean", "true if a sector on the way is void"));

  private TimedTable() {}

  /** Nothing where no recording says anything. */
  static void write(PackageTables tables, DayRecord day) {
    List<List<String>> rows = new ArrayList<>();
    for (DayRecord.Lap lap : day.laps()) {
      for (Measure measure : day.plan().measures()) {
        TimedValue time = lap.timed().get(measure.name());
        if (time != null) {
          rows.add(
              List.of(
                  String.valueOf(lap.id().stint()),
                  String.valueOf(lap.id().lap()),
                  measure.name(),
                  measure.recorded() ? "recording" : "watch",
                  text(time.recording()),
                  text(time.uncertainty()),
                  text(time.watch()),
                  String.valueOf(time.voided())));
        }
      }
    }
    if (!rows.isEmpty()) {
      tables.table(NAME, COLUMNS, rows);
    }
  }

  private static String text(@Nullable BigDecimal number) {
    return number == null ? "" : number.toPlainString();
  }

  /**
   * The same again, by lap and measure; nothing where a package has no such table.
   *
   * @throws Unreadable if a column is missing, or a cell cannot be read
   */
  static Map<LapId, Map<String, TimedValue>> read(Map<String, byte[]> files, Plan plan) {
    Map<LapId, Map<String, TimedValue>> all = new HashMap<>();
    byte[] bytes = files.get(FILE);
    if (bytes == null) {
      return all;
    }
    for (Map<String, String> row : CsvText.read(FILE, new String(bytes, StandardCharsets.UTF_8))) {
      int lap = PackageCells.whole(row, "lap_in_stint");
      if (lap < 1 || lap > plan.laps().perStint()) {
        throw new Unreadable(PackageFault.NO_SUCH_LAP, FILE, lap);
      }
      String measure = PackageCells.text(row, "measure");
      if (plan.measure(measure).isEmpty()) {
        throw new Unreadable(PackageFault.NOT_A_VALUE, measure);
      }
      all.computeIfAbsent(
              new LapId(PackageCells.stint(row, FILE, 1, plan), lap), id -> new TreeMap<>())
          .put(
              measure,
              new TimedValue(
                  number(row, "recording"),
                  number(row, "uncertainty"),
                  number(row, "watch"),
                  PackageCells.yes(row, "void")));
    }
    return all;
  }

  private static @Nullable BigDecimal number(Map<String, String> row, String column) {
    String written = PackageCells.text(row, column);
    if (written.isEmpty()) {
      return null;
    }
    BigDecimal number = PackageCells.number(written, column);
    if (number.signum() < 0) {
      throw new Unreadable(PackageFault.NOT_A_NUMBER, written, column);
    }
    return number;
  }
}
