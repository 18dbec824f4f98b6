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

  /** The same within a convex polygon, given by its corners in order. */
  public static double[] lines(double[] xs, double[] ys) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < xs.length; i++) {
      least = Math.min(least, xs[i] + ys[i]);
      most = Math.max(most, xs[i] + ys[i]);
    }
    int first = (int) Math.floor(least / DISTANCE) + 1;
    int last = (int) Math.ceil(most / DISTANCE) - 1;
    double[] ends = new double[4 * Math.max(0, last - first + 1)];
    for (int line = first; line <= last; line++) {
      cross(xs, ys, line * DISTANCE, ends, 4 * (line - first));
    }
    return ends;
  }

  /** Where the line of all points whose coordinates have this sum enters and leaves a polygon. */
  private static void cross(double[] xs, double[] ys, double sum, double[] ends, int at) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < xs.length; i++) {
      int next = (i + 1) % xs.length;
      double here = xs[i] + ys[i] - sum;
      double there = xs[next] + ys[next] - sum;
      if (here * there <= 0 && here != there) {
        double x = xs[i] + here / (here - there) * (xs[next] - xs[i]);
        left = Math.min(left, x);
        right = Math.max(right, x);
      }
    }
    ends[at] = left;
    ends[at + 1] = sum - left;
    ends[at + 2] = right;
    ends[at + 3] = sum - right;
  }
}
