package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import java.util.ArrayList;
import java.util.List;

/**
 * The projection W = I − X(X'X)⁻¹X' that removes a constant, a drift polynomial over the real stint
 * positions and covariates, on the stints that are used; rows and columns of other stints are zero.
 */
public final class Residuals {
  /** Share of its centred squared length below which a covariate holds nothing of its own. */
  private static final double NOTHING_OWN = 1e-9;

  private final double[][] w;
  private final double[][] basis;
  private final List<Integer> unusable;
  private final int used;
  private final Nuisance nuisance;

  /**
   * @param used length N, true where the stint enters
   * @param drift the polynomial that is removed
   */
  public Residuals(boolean[] used, Drift drift) {
    this(used, Nuisance.of(drift));
  }

  /**
   * @param used length N, true where the stint enters and every covariate is known
   * @param nuisance what is removed; a covariate that is constant on the used stints, or that drift
   *     and the one before it explain, removes nothing
   */
  public Residuals(boolean[] used, Nuisance nuisance) {
    int n = used.length;
    this.unusable = new ArrayList<>();
    this.basis = orthonormalBasis(used, nuisance, unusable);
    this.used = DayCheck.count(used);
    this.nuisance = nuisance;
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

  /**
   * As the constructor, for what must not be left out without a word.
   *
   * @throws Unusable if a covariate removes nothing
   */
  public static Residuals required(boolean[] used, Nuisance nuisance) {
    Residuals residuals = new Residuals(used, nuisance);
    if (!residuals.unusable.isEmpty()) {
      int first = residuals.unusable.get(0);
      throw new Unusable(
          "covariates[" + first + "]",
          "is constant, or nothing but drift, on the stints that count.",
          DayFault.COVARIATE_HOLDS_NOTHING,
          first + 1);
    }
    return residuals;
  }

  /** Those covariates of a nuisance, by index, that are not constant or explained on a mask. */
  public static List<Integer> usable(boolean[] used, Nuisance nuisance) {
    List<Integer> unusable = new ArrayList<>();
    orthonormalBasis(used, nuisance, unusable);
    List<Integer> usable = new ArrayList<>();
    for (int i = 0; i < nuisance.covariates(); i++) {
      if (!unusable.contains(i)) {
        usable.add(i);
      }
    }
    return List.copyOf(usable);
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
  Nuisance nuisance() {
    return nuisance;
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

  private static double[][] orthonormalBasis(
      boolean[] used, Nuisance nuisance, List<Integer> unusable) {
    int n = used.length;
    List<double[]> basis = new ArrayList<>();
    for (int degree = 0; degree <= nuisance.drift().degree(); degree++) {
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        double t = n == 1 ? 0 : 2.0 * i / (n - 1) - 1;
        column[i] = used[i] ? Math.pow(t, degree) : 0;
      }
      add(basis, column, 1e-20);
    }
    for (int k = 0; k < nuisance.covariates(); k++) {
      double[] column = DayCheck.centred(nuisance.covariate(k), used);
      double largest = 0;
      for (double each : column) {
        largest = Math.max(largest, Math.abs(each));
      }
      double rounding = DayCheck.rounding(nuisance.covariate(k), used);
      if (largest <= rounding) {
        unusable.add(k);
        continue;
      }
      for (int i = 0; i < n; i++) {
        column[i] /= largest;
      }
      if (!add(basis, column, NOTHING_OWN)) {
        unusable.add(k);
      }
    }
    return basis.toArray(new double[0][]);
  }

  /**
   * Adds what is new of a column, unless that is no more than a share of its squared length; false
   * if nothing was added. The column is changed.
   */
  private static boolean add(List<double[]> basis, double[] column, double share) {
    double before = dot(column, column);
    // Twice is enough (Kahan; Parlett 1980): the second pass removes what rounding left.
    for (int pass = 0; pass < 2; pass++) {
      for (double[] q : basis) {
        double overlap = dot(q, column);
        for (int i = 0; i < column.length; i++) {
          column[i] -= overlap * q[i];
        }
      }
    }
    double left = dot(column, column);
    if (left <= share * before) {
      return false;
    }
    double norm = Math.sqrt(left);
    for (int i = 0; i < column.length; i++) {
      column[i] /= norm;
    }
    basis.add(column);
    return true;
  }

  public static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }
}
