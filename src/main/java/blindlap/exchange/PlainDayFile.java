package blindlap.exchange;

import blindlap.session.PlainDayPreview;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Reads the laps of old test days from a CSV file of any layout: the tester says which column holds
 * which measure, and which the date, stint, lap, setup and void laps, if any
 * (docs/manual/old-days.md). Without a column for the lap, rows are laps in ridden order.
 */
public final class PlainDayFile {
  private PlainDayFile() {}

  /** The header and the first rows. */
  public static PlainDayPreview preview(byte[] bytes, int rows) {
    try {
      CsvTable table = CsvTable.ofTexts(bytes);
      List<List<String>> cells = table.rows().stream().map(CsvTable.Row::cells).toList();
      return new PlainDayPreview(
          table.names(),
          cells.stream().limit(rows).toList(),
          PlainDayGuess.of(table.names(), cells, table.separator() != ','),
          List.of());
    } catch (CsvTable.Unreadable e) {
      return new PlainDayPreview(List.of(), List.of(), PlainDayPreview.Guess.NOTHING, e.problems());
    }
  }

  /**
   * Reads the days.
   *
   * @param day day of rows where no column has it
   */
  public static PlainDayReading read(
      byte[] bytes, PlainDayMapping mapping, Optional<LocalDate> day) {
    try {
      return new PlainDayRows(CsvTable.ofTexts(bytes), mapping).read(day);
    } catch (CsvTable.Unreadable e) {
      return new PlainDayReading(List.of(), e.problems());
    }
  }
}
