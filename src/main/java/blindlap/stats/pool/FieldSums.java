package blindlap.stats.pool;

import blindlap.fault.StatsException;
import blindlap.stats.compare.Residuals;
import java.util.Arrays;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/**
 * Normal equations of setup effects after every day's own drift: D'WD, D'Wy and y'Wy, summed over
 * days, and their least-squares solution of least length.
 */
final class FieldSums {
  private static final double SAME = 1e-9;

  private final int setups;
  private final double[][] matrix;
  private final double[] vector;
  private double total;
  private int freedom;
  private RealMatrix inverse = new Array2DRowRealMatrix();
  private double[] effects = new double[0];
  private int rank;

  FieldSums(int setups) {
    this.setups = setups;
    this.matrix = new double[setups][setups];
    this.vector = new double[setups];
  }

  /** Of one day. */
  static FieldSums of(FieldDay day, int number, Map<String, Integer> places) {
    String at = "days[" + number + "]";
    int n = day.order().length;
    if (day.values().length != n || day.valid().length != n) {
      throw new StatsException(
          at + ".values", "has " + day.values().length + " values for " + n + " stints.");
    }
    boolean[] use = known(day, n, at);
    double mean = 0;
    int used = 0;
    for (int i = 0; i < n; i++) {
      use[i] &= day.valid()[i] && !Double.isNaN(day.values()[i]);
      mean += use[i] ? day.values()[i] : 0;
      used += use[i] ? 1 : 0;
    }
    Residuals residuals = new Residuals(use, day.nuisance());
    FieldSums sums = new FieldSums(places.size());
    sums.freedom = used - residuals.columns();
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      y[i] = use[i] ? day.values()[i] - mean / used : 0;
    }
    double[] rest = residuals.apply(y);
    sums.total = Residuals.dot(rest, rest);
    for (int i = 0; i < n; i++) {
      int one = place(day, i, at, places);
      sums.vector[one] += rest[i];
      for (int j = 0; j < n; j++) {
        sums.matrix[one][place(day, j, at, places)] += residuals.matrix()[i][j];
      }
    }
    return sums;
  }

  /** True where every covariate of the day is known. */
  private static boolean[] known(FieldDay day, int stints, String at) {
    boolean[] all = new boolean[stints];
    Arrays.fill(all, true);
    try {
      return day.nuisance().known(all);
    } catch (StatsException e) {
      throw e.named(at + "." + e.argument());
    }
  }

  private static int place(FieldDay day, int stint, String at, Map<String, Integer> places) {
    int setup = day.order()[stint];
    if (setup >= day.setups().size()) {
      throw new StatsException(
          at + ".order", "rides more setups than the " + day.setups().size() + " that are named.");
    }
    return java.util.Objects.requireNonNull(places.get(day.setups().get(setup)));
  }

  /**
   * The same with one more day of two setups in an order that is balanced against what is removed,
   * of which nothing but its worth is known: its values are not.
   *
   * @param stints of the day
   * @param columns what is removed of it
   */
  FieldSums with(int a, int b, int stints, int columns) {
    FieldSums more = new FieldSums(setups);
    more.add(this);
    double worth = stints / 4.0;
    more.matrix[a][a] += worth;
    more.matrix[b][b] += worth;
    more.matrix[a][b] -= worth;
    more.matrix[b][a] -= worth;
    more.freedom += stints - columns;
    more.solve();
    return more;
  }

  void add(FieldSums day) {
    for (int a = 0; a < setups; a++) {
      vector[a] += day.vector[a];
      for (int b = 0; b < setups; b++) {
        matrix[a][b] += day.matrix[a][b];
      }
    }
    total += day.total;
    freedom += day.freedom;
  }

  void solve() {
    SingularValueDecomposition parts =
        new SingularValueDecomposition(new Array2DRowRealMatrix(matrix));
    double[] values = parts.getSingularValues();
    double[][] scaled = new double[setups][setups];
    rank = 0;
    for (int i = 0; i < setups; i++) {
      if (values[i] > SAME * Math.max(1, values[0])) {
        scaled[i][i] = 1 / values[i];
        rank++;
      }
    }
    inverse = parts.getV().multiply(new Array2DRowRealMatrix(scaled)).multiply(parts.getUT());
    effects = inverse.operate(vector);
  }

  int setups() {
    return setups;
  }

  /** Stints used less nuisance columns. */
  int freedom() {
    return freedom;
  }

  int rank() {
    return rank;
  }

  /** Residual sum of squares. */
  double left() {
    return total - Residuals.dot(effects, vector);
  }

  double difference(int a, int b) {
    return effects[b] - effects[a];
  }

  double unitVariance(int a, int b) {
    return inverse.getEntry(a, a) + inverse.getEntry(b, b) - 2 * inverse.getEntry(a, b);
  }

  /** True if the days tell the two apart: their contrast lies in the space of the equations. */
  boolean known(int a, int b) {
    double[] contrast = new double[setups];
    contrast[a] = -1;
    contrast[b] = 1;
    double[] image = new Array2DRowRealMatrix(matrix).operate(inverse.operate(contrast));
    for (int i = 0; i < setups; i++) {
      if (Math.abs(image[i] - contrast[i]) > 1e-6) {
        return false;
      }
    }
    return true;
  }
}
