package blindlap.plot;

import java.util.ArrayList;
import java.util.List;

/** Cuts shapes at level lines, computed instead of clipped, so that every surface gets the same. */
final class Cutting {
  private Cutting() {}

  /**
   * What of a line or convex polygon lies between two heights.
   *
   * @param top upper edge, a smaller y
   * @return xs and ys of the corners in order; may be empty
   */
  static double[][] between(double[] xs, double[] ys, double top, double bottom) {
    List<double[]> corners = new ArrayList<>();
    for (int i = 0; i < xs.length; i++) {
      corners.add(new double[] {xs[i], ys[i]});
    }
    List<double[]> cut = half(half(corners, top, 1), bottom, -1);
    return new double[][] {
      cut.stream().mapToDouble(p -> p[0]).toArray(), cut.stream().mapToDouble(p -> p[1]).toArray()
    };
  }

  /** Keeps what lies on one side: sign 1 keeps larger y. */
  private static List<double[]> half(List<double[]> corners, double edge, int sign) {
    List<double[]> kept = new ArrayList<>();
    int n = corners.size();
    for (int i = 0; i < n; i++) {
      double[] a = corners.get(i);
      boolean in = sign * (a[1] - edge) >= 0;
      if (in) {
        kept.add(a);
      }
      if (n == 2 && i == 1) {
        break;
      }
      double[] b = corners.get((i + 1) % n);
      if (in != sign * (b[1] - edge) >= 0) {
        double share = (edge - a[1]) / (b[1] - a[1]);
        kept.add(new double[] {a[0] + share * (b[0] - a[0]), edge});
      }
    }
    return kept;
  }
}
