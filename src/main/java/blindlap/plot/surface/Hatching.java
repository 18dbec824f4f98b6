package blindlap.plot.surface;

/**
 * Lines of a hatched rectangle, computed instead of clipped, so that every surface gets the same.
 */
public final class Hatching {
  private static final double DISTANCE = 7 * Math.sqrt(2);

  private Hatching() {}

  /** End points x1, y1, x2, y2 of rising lines, 7 apart measured across them. */
  public static double[] lines(Box box) {
    double first = Math.floor((box.x() + box.y()) / DISTANCE) * DISTANCE + DISTANCE;
    double last = box.right() + box.bottom();
    int count = (int) Math.max(0, Math.ceil((last - first) / DISTANCE));
    double[] ends = new double[4 * count];
    for (int i = 0; i < count; i++) {
      double sum = first + i * DISTANCE;
      double left = Math.max(box.x(), sum - box.bottom());
      double right = Math.min(box.right(), sum - box.y());
      ends[4 * i] = left;
      ends[4 * i + 1] = sum - left;
      ends[4 * i + 2] = right;
      ends[4 * i + 3] = sum - right;
    }
    return ends;
  }
}
