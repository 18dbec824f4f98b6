package blindlap.screen.part;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/** Heights of a part for the last few widths that were asked for. */
final class SteadyHeights {
  private static final int KEPT = 4;

  private final double[] widths = new double[KEPT];
  private final double[] heights = new double[KEPT];
  private int next;

  SteadyHeights() {
    forget();
  }

  double of(double width, DoubleUnaryOperator measure) {
    for (int i = 0; i < KEPT; i++) {
      if (widths[i] == width) {
        return heights[i];
      }
    }
    double height = measure.applyAsDouble(width);
    widths[next] = width;
    heights[next] = height;
    next = (next + 1) % KEPT;
    return height;
  }

  void forget() {
    Arrays.fill(widths, Double.NaN);
  }
}
