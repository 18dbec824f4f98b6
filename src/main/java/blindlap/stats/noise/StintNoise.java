package blindlap.stats.noise;

import blindlap.fault.StatsException;
import blindlap.stats.compare.Residuals;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Noise and drift of a day by least squares, whatever its number of setups and however it was
 * ordered: standard deviation from stint to stint once setups and drift are removed
 * (docs/method.md#noise), and how far the values moved over the day. No test; for open noise runs,
 * null runs, sessions and days that were not blinded.
 *
 * @param noise standard deviation and degrees of freedom; empty if fewer than one degree is left
 * @param change fitted straight-line change from the first to the last used stint, setups removed,
 *     in the unit of the values; NaN if it cannot be told
 * @param used number of stints used
 */
public record StintNoise(Optional<RiderNoise> noise, double change, int used) {
  private static final double DEPENDENT = 1e-10;

  /**
   * Fits a day.
   *
   * @param setups setup index of each stint, from 0
   * @param values one value per stint; NaN where none
   * @param valid true where the stint counts
   * @param drift what is removed
   * @throws StatsException if lengths differ or a value is infinite
   */
  public static StintNoise of(int[] setups, double[] values, boolean[] valid, Drift drift) {
    int n = values.length;
    if (setups.length != n || valid.length != n) {
      throw new StatsException("values", "must have one entry per stint, as setups and valid.");
    }
    boolean[] use = new boolean[n];
    for (int i = 0; i < n; i++) {
      if (Double.isInfinite(values[i])) {
        throw new StatsException("values[" + i + "]", "must be a finite number.");
      }
      use[i] = valid[i] && !Double.isNaN(values[i]);
    }
    int used = DayCheck.count(use);
    List<double[]> basis = new ArrayList<>();
    for (int setup : java.util.Arrays.stream(setups).distinct().toArray()) {
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        column[i] = use[i] && setups[i] == setup ? 1 : 0;
      }
      add(basis, column);
    }
    double[] y = DayCheck.centred(values, use);
    double change = change(basis, y, use);
    for (int degree = 1; degree <= drift.degree(); degree++) {
      add(basis, position(use, degree));
    }
    double squares = rest(basis, y);
    int df = used - basis.size();
    Optional<RiderNoise> noise =
        df < 1 ? Optional.empty() : Optional.of(new RiderNoise(Math.sqrt(squares / df), df));
    return new StintNoise(noise, change, used);
  }

  private static double[] position(boolean[] use, int degree) {
    double[] column = new double[use.length];
    for (int i = 0; i < column.length; i++) {
      column[i] = use[i] ? Math.pow(2.0 * i / Math.max(1, column.length - 1) - 1, degree) : 0;
    }
    return column;
  }

  private static double change(List<double[]> setups, double[] y, boolean[] use) {
    List<double[]> basis = new ArrayList<>(setups);
    double[] line = position(use, 1);
    if (!add(basis, line)) {
      return Double.NaN;
    }
    double[] q = basis.get(basis.size() - 1);
    double slope = Residuals.dot(q, y) / Residuals.dot(q, position(use, 1));
    int first = -1;
    int last = -1;
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        first = first < 0 ? i : first;
        last = i;
      }
    }
    return slope * 2.0 * (last - first) / Math.max(1, use.length - 1);
  }

  private static double rest(List<double[]> basis, double[] y) {
    double[] left = y.clone();
    for (double[] q : basis) {
      double along = Residuals.dot(q, left);
      for (int i = 0; i < left.length; i++) {
        left[i] -= along * q[i];
      }
    }
    return Residuals.dot(left, left);
  }

  /** Adds what is new of a column to an orthonormal basis; false if nothing is. */
  private static boolean add(List<double[]> basis, double[] column) {
    double before = Residuals.dot(column, column);
    double[] rest = column.clone();
    for (int pass = 0; pass < 2; pass++) {
      for (double[] q : basis) {
        double along = Residuals.dot(q, rest);
        for (int i = 0; i < rest.length; i++) {
          rest[i] -= along * q[i];
        }
      }
    }
    double norm = Math.sqrt(Residuals.dot(rest, rest));
    if (norm <= DEPENDENT * Math.sqrt(before)) {
      return false;
    }
    for (int i = 0; i < rest.length; i++) {
      rest[i] /= norm;
    }
    basis.add(rest);
    return true;
  }
}
