package blindlap.plot;

/**
 * A long step curve as its highest point in each of many columns, which no eye can tell from it.
 */
final class ThinnedCurve {
  /** Columns that a long curve is thinned to; more than a screen has pixels across. */
  static final int COLUMNS = 2000;

  private final double low;
  private final double high;
  private final double[] heights;

  private ThinnedCurve(double low, double high, double[] heights) {
    this.low = low;
    this.high = high;
    this.heights = heights;
  }

  /** Heights over {@value #COLUMNS} equal columns from low to high. */
  static ThinnedCurve of(double[] knots, double[] steps, double low, double high) {
    double[] heights = new double[COLUMNS];
    double column = (high - low) / COLUMNS;
    for (int i = 0; i < COLUMNS; i++) {
      int from = stepAt(knots, low + i * column);
      int to = stepAt(knots, low + (i + 1) * column);
      for (int step = from; step <= to; step++) {
        heights[i] = Math.max(heights[i], steps[step]);
      }
    }
    return new ThinnedCurve(low, high, heights);
  }

  /** Index of the height that holds at this difference: the number of knots at or below it. */
  private static int stepAt(double[] knots, double difference) {
    int low = 0;
    int high = knots.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (knots[middle] <= difference) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Where the first column begins. */
  double low() {
    return low;
  }

  /** Where the last column ends. */
  double high() {
    return high;
  }

  /** The highest p in a column. */
  double height(int column) {
    return heights[column];
  }
}
