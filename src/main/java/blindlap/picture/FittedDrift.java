package blindlap.picture;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.review.DayRecord;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.stats.order.DayCheck;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The day's drift as pictures show it: a line or curve in the stint number by least squares on
 * values less setups, together with the covariates that are taken out.
 */
final class FittedDrift {
  private final int stints;
  private final double[] values;
  private final int powers;
  private final List<double[]> covariates;
  private final double[] fitted;

  /**
   * Fits it.
   *
   * @param above estimate of each setup less the first, on the scale of the analysis
   */
  FittedDrift(DayRecord day, Measure measure, StintValues stints, double[] above) {
    this.stints = day.plan().stints();
    this.values = stints.values();
    this.powers = measure.drift().columns();
    this.covariates = covariates(day, measure, stints);
    int columns = powers + covariates.size();
    double[][] normal = new double[columns][columns + 1];
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        continue;
      }
      double[] row = row(i);
      double y = values[i] - above[day.setup(i + 1)];
      for (int r = 0; r < columns; r++) {
        for (int c = 0; c < columns; c++) {
          normal[r][c] += row[r] * row[c];
        }
        normal[r][columns] += row[r] * y;
      }
    }
    this.fitted = solved(normal);
  }

  /** Coefficients of the powers of the stint number; the first is the level of the first setup. */
  double[] drift() {
    return Arrays.copyOf(fitted, powers);
  }

  /** The value of the first setup at a stint, covariates at their mean. */
  double at(int stint) {
    double value = 0;
    double[] row = powers(stint);
    for (int c = 0; c < powers; c++) {
      value += fitted[c] * row[c];
    }
    return value;
  }

  /** The values without drift and covariates, their mean kept; NaN where a stint does not count. */
  double[] removed() {
    double[] drift = new double[values.length];
    double sum = 0;
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      double[] row = row(i);
      for (int c = 1; c < fitted.length; c++) {
        drift[i] += fitted[c] * row[c];
      }
      if (!Double.isNaN(values[i])) {
        sum += drift[i];
        n++;
      }
    }
    double[] removed = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      removed[i] = values[i] - drift[i] + sum / Math.max(1, n);
    }
    return removed;
  }

  private double[] row(int stint) {
    double[] row = Arrays.copyOf(powers(stint + 1), powers + covariates.size());
    for (int c = 0; c < covariates.size(); c++) {
      row[powers + c] = covariates.get(c)[stint];
    }
    return row;
  }

  /** Centred powers, so that the equations stay well conditioned. */
  private double[] powers(int stint) {
    double t = (stint - (stints + 1) / 2.0) / stints;
    double[] row = new double[powers];
    row[0] = 1;
    for (int c = 1; c < powers; c++) {
      row[c] = row[c - 1] * t;
    }
    return row;
  }

  /** Those that are taken out, each less its mean and over its largest size. */
  private static List<double[]> covariates(DayRecord day, Measure measure, StintValues stints) {
    boolean[] use = stints.valid();
    List<double[]> columns = new ArrayList<>();
    for (Covariate covariate : TakenOut.of(day, measure, stints).used()) {
      double[] column = DayCheck.centred(TakenOut.values(day, covariate), use);
      double largest = 0;
      for (int i = 0; i < column.length; i++) {
        column[i] = use[i] ? column[i] : 0;
        largest = Math.max(largest, Math.abs(column[i]));
      }
      for (int i = 0; i < column.length; i++) {
        column[i] /= largest;
      }
      columns.add(column);
    }
    return columns;
  }

  private static double[] solved(double[][] m) {
    int n = m.length;
    for (int p = 0; p < n; p++) {
      int best = p;
      for (int r = p + 1; r < n; r++) {
        best = Math.abs(m[r][p]) > Math.abs(m[best][p]) ? r : best;
      }
      double[] swap = m[p];
      m[p] = m[best];
      m[best] = swap;
      for (int r = 0; r < n; r++) {
        double factor = r == p || m[p][p] == 0 ? 0 : m[r][p] / m[p][p];
        for (int c = p; c <= n; c++) {
          m[r][c] -= factor * m[p][c];
        }
      }
    }
    double[] x = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = m[i][i] == 0 ? 0 : m[i][n] / m[i][i];
    }
    return x;
  }
}
