package blindlap.review;

import blindlap.stats.order.Drift;
import java.util.ArrayList;
import java.util.List;

/**
 * The analysed units of where on the trail: what a short script needs to work it out again.
 *
 * @param drift what is removed
 * @param columns sectors first, then pieces
 */
public record WayUnits(Drift drift, List<Column> columns) {
  /** What a column is of. */
  public enum Part {
    SECTOR,
    PIECE
  }

  /**
   * One sector or piece.
   *
   * @param number from 1
   * @param values by stint, in seconds; NaN where masked
   * @param tested false if too many values are missing for a test
   */
  public record Column(Part part, int number, double[] values, boolean tested) {}

  public WayUnits {
    columns = List.copyOf(columns);
  }

  /** Of a day; no columns where nothing was recorded or other than two setups were ridden. */
  public static WayUnits of(DayRecord day) {
    WayValues values = new WayValues(day);
    List<Column> columns = new ArrayList<>();
    if (day.plan().setups().size() == 2) {
      for (int sector = 0; sector < day.recorded().sectors(); sector++) {
        WayValues.Column column = values.sector(sector);
        columns.add(new Column(Part.SECTOR, sector + 1, column.values(), column.tested()));
      }
      if (day.recorded().hasPieces()) {
        pieces(columns, values.pieces(), day.recorded().pieces());
      }
    }
    return new WayUnits(values.drift(), columns);
  }

  private static void pieces(List<Column> columns, WayValues.Table table, int pieces) {
    boolean tested = table.share() <= Analysis.MOST_MISSING;
    for (int piece = 0; piece < pieces; piece++) {
      double[] values = new double[table.values().length];
      for (int stint = 0; stint < values.length; stint++) {
        values[stint] = table.values()[stint][piece];
      }
      columns.add(new Column(Part.PIECE, piece + 1, values, tested));
    }
  }
}
