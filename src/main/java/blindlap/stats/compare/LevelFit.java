package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.stats.order.DayCheck;
import java.util.Arrays;

/**
 * Least squares of a trend over levels after drift, on the stints that are used; vectors have
 * length N with zeros elsewhere.
 */
final class LevelFit {
  private static final double TIE = 1e-9;

  /** Wy of the centred values. */
  final double[] wy;

  /** Wx of the levels ridden. */
  final double[] wx;

  /** Residuals after drift and trend. */
  final double[] e;

  final double estimate;
  final double c;
  final double noiseSd;

  /** Root mean square residual in units of the estimate, for tie tolerances. */
  final double scale;

  final int df;
  final boolean noVariation;

  LevelFit(double[] x, int[] order, double[] values, boolean[] use, Residuals residuals) {
    int used = DayCheck.count(use);
    this.df = used - residuals.columns() - 1;
    if (df < 1) {
      throw DayCheck.tooFew("values", used, 2, residuals.nuisance());
    }
    this.wx = residuals.apply(Arrays.stream(order).mapToDouble(level -> x[level]).toArray());
    this.c = Residuals.dot(wx, wx);
    if (c <= TIE * used) {
      throw new Unusable(
          "values",
          "do not tell the levels apart: on the stints left there is one level, or levels follow"
              + " the drift.",
          DayFault.LEVELS_NOT_APART);
    }
    double[] y = DayCheck.centred(values, use);
    this.estimate = Residuals.dot(wx, y) / c;
    this.wy = residuals.apply(y);
    this.e = new double[use.length];
    for (int i = 0; i < e.length; i++) {
      e[i] = wy[i] - estimate * wx[i];
    }
    double ss = Residuals.dot(e, e);
    this.noiseSd = Math.sqrt(ss / df);
    this.scale =
        Math.max(Math.sqrt(ss / used) / Math.sqrt(c), DayCheck.rounding(values, use) / TIE);
    this.noVariation = DayCheck.noVariation(ss, values, use);
  }

  /** Highest less lowest level. */
  static double range(double[] levels) {
    return Arrays.stream(levels).max().orElseThrow() - Arrays.stream(levels).min().orElseThrow();
  }

  /** (level − mean of the levels) over the whole range. */
  static double[] centred(double[] levels) {
    double mean = Arrays.stream(levels).average().orElseThrow();
    double range = range(levels);
    return Arrays.stream(levels).map(level -> (level - mean) / range).toArray();
  }

  /** The quadratic contrast: orthogonal to a constant and to x over the levels. */
  static double[] bent(double[] x) {
    double squares = Arrays.stream(x).map(each -> each * each).sum();
    double cubes = Arrays.stream(x).map(each -> each * each * each).sum();
    return Arrays.stream(x)
        .map(each -> each * each - squares / x.length - each * cubes / squares)
        .toArray();
  }
}
