package blindlap.stats.compare;

import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import java.util.ArrayList;
import java.util.List;

/**
 * The projection W = I − X(X'X)⁻¹X' that removes a constant and a drift polynomial over the real
 * stint positions, on the stints that are used; rows and columns of other stints are zero.
 */
public final class Residuals {
  private final double[][] w;
  private final double[][] basis;
  private final int used;
  private final Drift drift;

  /**
   * @param used length N, true where the stint enters
   * @param drift the polynomial that is removed
   */
  public Residuals(boolean[] used, Drift drift) {
    int n = used.length;
    this.basis = orthonormalBasis(used, drift);
    this.used = DayCheck.count(used);
    this.drift = drift;
    this.w = new double[n][n];
    for (int i = 0; i < n; i++) {
      if (!used[i]) {
        continue;
      }
      for (int j = 0; j < n; j++) {
        if (!used[j]) {
          continue;
        }
        double sum = i == j ? 1 : 0;
        for (double[] q : basis) {
          sum -= q[i] * q[j];
        }
        w[i][j] = sum;
      }
    }
  }

  /** W itself, N × N; callers must not change it. */
  public double[][] matrix() {
    return w;
  }

  /** Rank of the nuisance columns on the used stints. */
  public int columns() {
    return basis.length;
  }

  /** Number of stints used. */
  public int used() {
    return used;
  }

  /** A column of the orthonormal basis of what is removed; zeros from {@link #columns()} on. */
  public double[] column(int i) {
    return i < basis.length ? basis[i] : new double[w.length];
  }

  /** What is removed. */
  Drift drift() {
    return drift;
  }

  /** W·x. */
  public double[] apply(double[] x) {
    double[] result = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      double sum = 0;
      for (int j = 0; j < x.length; j++) {
        sum += w[i][j] * x[j];
      }
      result[i] = sum;
    }
    return result;
  }

  private static double[][] orthonormalBasis(boolean[] used, Drift drift) {
    int n = used.length;
    List<double[]> basis = new ArrayList<>();
    for (int degree = 0; degree <= drift.degree(); degree++) {
      double[] column = new double[n];
      double before = 0;
      for (int i = 0; i < n; i++) {
        double t = n == 1 ? 0 : 2.0 * i / (n - 1) - 1;
        column[i] = used[i] ? Math.pow(t, degree) : 0;
        before += column[i] * column[i];
      }
      // Twice is enough (Kahan; Parlett 1980): the second pass removes what rounding left.
      for (int pass = 0; pass < 2; pass++) {
        for (double[] q : basis) {
          double overlap = dot(q, column);
          for (int i = 0; i < n; i++) {
            column[i] -= overlap * q[i];
          }
        }
      }
      double norm = Math.sqrt(dot(column, column));
      if (norm > 1e-10 * Math.sqrt(before)) {
        for (int i = 0; i < n; i++) {
          column[i] /= norm;
        }
        basis.add(column);
      }
    }
    return basis.toArray(new double[0][]);
  }

  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
