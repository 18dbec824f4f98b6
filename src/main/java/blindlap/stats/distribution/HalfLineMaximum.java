package blindlap.stats.distribution;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Maximum of a smooth function of x ≥ 0, located on a geometric grid and sharpened as a root of its
 * derivative.
 */
public final class HalfLineMaximum {
  private static final int STEPS_PER_DECADE = 20;
  private static final int DECADES = 16;

  private HalfLineMaximum() {}

  /**
   * @param value the function, such as a log-likelihood
   * @param slope its derivative
   * @param scale an x of the size to expect; the grid spans 10 decades below to 6 above it
   * @return x of the largest value, possibly 0; NaN if the function still rises at the end
   */
  public static double of(UnivariateFunction value, UnivariateFunction slope, double scale) {
    int best = 0;
    double most = value.value(0);
    int last = DECADES * STEPS_PER_DECADE;
    for (int i = 1; i <= last; i++) {
      double here = value.value(grid(i, scale));
      if (here > most) {
        most = here;
        best = i;
      }
    }
    if (best == last) {
      return Double.NaN;
    }
    double low = best <= 1 ? 0 : grid(best - 1, scale);
    double high = grid(best + 1, scale);
    double rising = slope.value(low);
    if (rising <= 0 || slope.value(high) >= 0) {
      return rising <= 0 && low == 0 ? 0 : grid(best, scale);
    }
    return new BrentSolver(1e-15, 1e-16 * scale, 1e-18).solve(500, slope, low, high);
  }

  private static double grid(int i, double scale) {
    return i == 0 ? 0 : scale * Math.pow(10, (double) i / STEPS_PER_DECADE - 10);
  }
}
