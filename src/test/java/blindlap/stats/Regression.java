package blindlap.stats;

import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;

/** Least squares the general way, by singular values, for comparison with the engine. */
public final class Regression {
  public final double rss;
  public final double nullRss;
  public final double[] effects;
  private final RealMatrix covariance;
  private final int df;

  /** Intercept and drift, then indicators of all setups but A. */
  public Regression(String order, int setups, double[] y, boolean[] use, Drift drift) {
    int n = DayCheck.count(use);
    int q = drift.columns();
    RealMatrix x = new Array2DRowRealMatrix(n, q + setups - 1);
    double[] response = new double[n];
    int row = 0;
    for (int i = 0; i < y.length; i++) {
      if (use[i]) {
        for (int degree = 0; degree < q; degree++) {
          x.setEntry(row, degree, Math.pow((i - y.length / 2.0) / y.length, degree));
        }
        if (order.charAt(i) != 'A') {
          x.setEntry(row, q + order.charAt(i) - 'B', 1);
        }
        response[row++] = y[i];
      }
    }
    SingularValueDecomposition svd = new SingularValueDecomposition(x);
    double[] beta = svd.getSolver().solve(new Array2DRowRealMatrix(response)).getColumn(0);
    rss = squares(response, x.operate(beta));
    RealMatrix nuisance = x.getSubMatrix(0, n - 1, 0, q - 1);
    double[] alone =
        new SingularValueDecomposition(nuisance)
            .getSolver()
            .solve(new Array2DRowRealMatrix(response))
            .getColumn(0);
    nullRss = squares(response, nuisance.operate(alone));
    covariance = new SingularValueDecomposition(x.transpose().multiply(x)).getSolver().getInverse();
    effects = new double[setups];
    System.arraycopy(beta, q, effects, 1, setups - 1);
    df = n - q - setups + 1;
  }

  private static double squares(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += (a[i] - b[i]) * (a[i] - b[i]);
    }
    return sum;
  }

  public double f() {
    return (nullRss - rss) / (effects.length - 1) / (rss / df);
  }

  /** t of setup b less setup a. */
  public double t(int a, int b) {
    int q = covariance.getRowDimension() - effects.length + 1;
    double variance = 0;
    for (int[] pair : new int[][] {{a, a, 1}, {b, b, 1}, {a, b, -2}}) {
      if (pair[0] > 0 && pair[1] > 0) {
        variance += pair[2] * covariance.getEntry(q + pair[0] - 1, q + pair[1] - 1);
      }
    }
    return (effects[b] - effects[a]) / Math.sqrt(rss / df * variance);
  }
}
