package blindlap.stats;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Least squares of any columns by QR, for comparison with the engine.
 *
 * @param beta one coefficient a column
 * @param rss residual sum of squares
 */
public record LeastSquares(double[] beta, double rss) {
  /** Fits the columns, each as long as the response and none of them explained by the others. */
  public static LeastSquares of(List<double[]> columns, double[] response) {
    RealMatrix x = new Array2DRowRealMatrix(response.length, columns.size());
    for (int k = 0; k < columns.size(); k++) {
      x.setColumn(k, columns.get(k));
    }
    RealMatrix y = new Array2DRowRealMatrix(response);
    double[] beta = new QRDecomposition(x).getSolver().solve(y).getColumn(0);
    double[] fitted = x.operate(beta);
    double rss = 0;
    for (int i = 0; i < response.length; i++) {
      rss += (response[i] - fitted[i]) * (response[i] - fitted[i]);
    }
    return new LeastSquares(beta, rss);
  }

  /** The rows that are used. */
  public static double[] rows(double[] full, boolean[] use) {
    double[] rows = new double[full.length];
    int n = 0;
    for (int i = 0; i < full.length; i++) {
      if (use[i]) {
        rows[n++] = full[i];
      }
    }
    return java.util.Arrays.copyOf(rows, n);
  }
}
