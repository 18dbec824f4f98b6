package blindlap.exchange;

import blindlap.exchange.PackageTables.Column;
import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Sector;
import blindlap.plan.TrailVersion;
import blindlap.review.DayRecord;
import blindlap.review.RecordedTimes;
import blindlap.review.WayUnits;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Times on the way as tables of a data package: sectors, pieces of the trail's line, and the units
 * that are analysed.
 */
final class RecordedTables {
  static final String SECTORS = "sectors";
  static final String PIECES = "pieces";
  static final String UNITS = "way";

  /** More sectors or pieces of a lap than any trail has. */
  private static final int MOST = 100;

  private static final List<Column> SECTOR_COLUMNS =
      List.of(
          Column.of("stint", "integer", "stint, from 1"),
          Column.of("lap_in_stint", "integer", "lap within its stint, from 1"),
          Column.of("sector", "integer", "sector in the order of riding, from 1"),
          Column.of("from", "string", "gate at its beginning; empty if the plan names no trail"),
          Column.of("to", "string", "gate at its end"),
          new Column("seconds", "number", "s", "time as recorded; empty where a pass is missing"),
          new Column(
              "uncertainty", "number", "s", "standard deviation of that time, of the recorder"),
          Column.of("void", "boolean", "true if this sector of the lap is void"));

  private static final List<Column> PIECE_COLUMNS =
      List.of(
          Column.of("stint", "integer", "stint, from 1"),
          Column.of("lap_in_stint", "integer", "lap within its stint, from 1"),
          Column.of("piece", "integer", "piece of the trail's line, from 1"),
          new Column("from", "number", "m", "where it begins, along the line"),
          new Column("to", "number", "m", "where it ends, along the line"),
          new Column("seconds", "number", "s", "time as recorded; empty where it was not"));

  private static final List<Column> UNIT_COLUMNS =
      List.of(
          Column.of("part", "string", "sector or piece"),
          Column.of("number", "integer", "which, in the order of riding, from 1"),
          Column.of("stint", "integer", "stint, from 1"),
          new Column(
              "value", "number", "s", "summary of the stint's counting laps; empty where masked"),
          Column.of("drift", "string", "what is removed"),
          Column.of("tested", "boolean", "false if too many values are missing for a test"));

  private RecordedTables() {}

  /** Nothing where nothing was recorded. */
  static void write(PackageTables tables, DayRecord day) {
    Plan plan = day.plan();
    RecordedTimes times = day.recorded();
    if (times.isEmpty()) {
      return;
    }
    List<List<String>> sectors = new ArrayList<>();
    List<List<String>> pieces = new ArrayList<>();
    times
        .laps()
        .forEach(
            (id, lap) -> {
              sectors(sectors, plan, id, lap);
              pieces(pieces, times, id, lap);
            });
    tables.table(SECTORS, SECTOR_COLUMNS, sectors);
    if (!pieces.isEmpty()) {
      tables.table(PIECES, PIECE_COLUMNS, pieces);
    }
    units(tables, WayUnits.of(day));
  }

  /** The analysed units, so that a short script needs nothing but this table and the rule. */
  private static void units(PackageTables tables, WayUnits units) {
    List<List<String>> rows = new ArrayList<>();
    for (WayUnits.Column column : units.columns()) {
      for (int i = 0; i < column.values().length; i++) {
        double value = column.values()[i];
        rows.add(
            List.of(
                PlanJson.word(column.part()),
                String.valueOf(column.number()),
                String.valueOf(i + 1),
                Double.isNaN(value) ? "" : String.valueOf(value),
                units.drift().text(),
                String.valueOf(column.tested())));
      }
    }
    if (!rows.isEmpty()) {
      tables.table(UNITS, UNIT_COLUMNS, rows);
    }
  }

  private static void sectors(List<List<String>> rows, Plan plan, LapId id, RecordedTimes.Lap lap) {
    TrailVersion trail = plan.trailVersion();
    List<Sector> names = trail == null ? List.of() : trail.sectors();
    for (int sector = 0; sector < lap.sectors().size(); sector++) {
      rows.add(
          List.of(
              String.valueOf(id.stint()),
              String.valueOf(id.lap()),
              String.valueOf(sector + 1),
              sector < names.size() ? names.get(sector).from() : "",
              sector < names.size() ? names.get(sector).to() : "",
              text(lap.sectors().get(sector)),
              text(lap.uncertainties().get(sector)),
              String.valueOf(lap.voided().contains(sector))));
    }
  }

  private static void pieces(
      List<List<String>> rows, RecordedTimes times, LapId id, RecordedTimes.Lap lap) {
    for (int piece = 0; piece < lap.pieces().size(); piece++) {
      rows.add(
          List.of(
              String.valueOf(id.stint()),
              String.valueOf(id.lap()),
              String.valueOf(piece + 1),
              times.borders().get(piece).toPlainString(),
              times.borders().get(piece + 1).toPlainString(),
              text(lap.pieces().get(piece))));
    }
  }

  private static String text(@Nullable BigDecimal number) {
    return number == null ? "" : number.toPlainString();
  }

  /**
   * Times of the tables of a package; none where it has none.
   *
   * @throws Unreadable if a column is missing, or a cell cannot be read or cannot be meant
   */
  static RecordedTimes read(Map<String, byte[]> files, Plan plan) {
    Read sectors = new Read(SECTORS + ".csv", plan);
    Read pieces = new Read(PIECES + ".csv", plan);
    rows(files, sectors.file).forEach(row -> sectors.sector(row));
    rows(files, pieces.file).forEach(row -> pieces.piece(row));
    SortedMap<LapId, RecordedTimes.Lap> laps = new TreeMap<>();
    sectors.seconds.forEach(
        (id, seconds) ->
            laps.put(
                id,
                new RecordedTimes.Lap(
                    seconds,
                    sectors.uncertainties.getOrDefault(id, List.of()),
                    pieces.seconds.getOrDefault(id, List.of()),
                    sectors.voided.getOrDefault(id, new TreeSet<>()))));
    return new RecordedTimes(pieces.borders, laps);
  }

  private static List<Map<String, String>> rows(Map<String, byte[]> files, String name) {
    byte[] bytes = files.get(name);
    return bytes == null
        ? List.of()
        : CsvText.read(name, new String(bytes, StandardCharsets.UTF_8));
  }

  /** One of the two tables while it is read. */
  private static final class Read {
    final String file;
    final SortedMap<LapId, List<@Nullable BigDecimal>> seconds = new TreeMap<>();
    final SortedMap<LapId, List<@Nullable BigDecimal>> uncertainties = new TreeMap<>();
    final SortedMap<LapId, SortedSet<Integer>> voided = new TreeMap<>();
    final List<BigDecimal> borders = new ArrayList<>();
    private final Plan plan;

    Read(String file, Plan plan) {
      this.file = file;
      this.plan = plan;
    }

    void sector(Map<String, String> row) {
      LapId id = next(row, "sector");
      uncertainties.computeIfAbsent(id, lap -> new ArrayList<>()).add(number(row, "uncertainty"));
      if (PackageCells.yes(row, "void")) {
        voided
            .computeIfAbsent(id, lap -> new TreeSet<>())
            .add(PackageCells.whole(row, "sector") - 1);
      }
    }

    void piece(Map<String, String> row) {
      next(row, "piece");
      BigDecimal from = PackageCells.number(PackageCells.text(row, "from"), "from");
      BigDecimal to = PackageCells.number(PackageCells.text(row, "to"), "to");
      int piece = PackageCells.whole(row, "piece");
      if (borders.isEmpty()) {
        borders.add(from);
      }
      if (borders.size() == piece) {
        borders.add(to);
      }
      // A line has one set of borders, and they rise.
      if (!borders.get(piece - 1).equals(from)
          || !borders.get(piece).equals(to)
          || from.compareTo(to) >= 0) {
        throw new Unreadable(PackageFault.NOT_A_NUMBER, to.toPlainString(), "to");
      }
    }

    /** The lap of a row, whose sectors or pieces are counted from 1 without a hole. */
    private LapId next(Map<String, String> row, String counted) {
      int lap = PackageCells.whole(row, "lap_in_stint");
      if (lap < 1 || lap > plan.laps().perStint()) {
        throw new Unreadable(PackageFault.NO_SUCH_LAP, file, lap);
      }
      LapId id = new LapId(PackageCells.stint(row, file, 1, plan), lap);
      List<@Nullable BigDecimal> of = seconds.computeIfAbsent(id, each -> new ArrayList<>());
      int number = PackageCells.whole(row, counted);
      BigDecimal time = number(row, "seconds");
      if (number != of.size() + 1 || number > MOST) {
        throw new Unreadable(PackageFault.NOT_A_NUMBER, PackageCells.text(row, counted), counted);
      }
      if (time != null && time.signum() < 0) {
        throw new Unreadable(PackageFault.NOT_A_NUMBER, time.toPlainString(), "seconds");
      }
      of.add(time);
      return id;
    }

    private static @Nullable BigDecimal number(Map<String, String> row, String column) {
      String written = PackageCells.text(row, column);
      return written.isEmpty() ? null : PackageCells.number(written, column);
    }
  }
}
