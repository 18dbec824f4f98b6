package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.stats.order.DayCheck;
import java.util.function.Supplier;

/**
 * Least squares of B minus A after drift, on the stints that are used; vectors have length N with
 * zeros elsewhere.
 */
public final class SetupFit {
  private static final double TIE = 1e-9;

  final Residuals residuals;
  public final double[] e;

  /** Wy of the centred values. */
  final double[] wy;

  public final double[] wz;
  public final double estimate;
  public final double c;
  final double noiseSd;

  /**
   * Root mean square residual in units of the difference, for tie tolerances; more where the values
   * are so large against their scatter that their own rounding would part ties.
   */
  final double scale;

  final int df;
  public final int used;
  final boolean noVariation;

  public SetupFit(int[] order, double[] values, boolean[] use, Residuals residuals) {
    this(
        signs(order),
        values,
        use,
        residuals,
        () ->
            new Unusable(
                "values",
                "do not tell the setups apart: on the stints left one setup has no value, or follows the"
                    + " drift.",
                DayFault.SETUPS_NOT_APART));
  }

  /**
   * The same of any column in place of ±1/2.
   *
   * @param z one number a stint
   * @param notApart the refusal where nothing is left of it after drift
   */
  SetupFit(
      double[] z,
      double[] values,
      boolean[] use,
      Residuals residuals,
      Supplier<Unusable> notApart) {
    this.used = DayCheck.count(use);
    this.df = used - residuals.columns() - 1;
    if (df < 1) {
      throw DayCheck.tooFew("values", used, 2, residuals.nuisance());
    }
    this.residuals = residuals;
    this.wz = residuals.apply(z);
    this.c = Residuals.dot(wz, wz);
    if (c <= TIE * used) {
      throw notApart.get();
    }
    double[] y = DayCheck.centred(values, use);
    this.estimate = Residuals.dot(wz, y) / c;
    this.wy = residuals.apply(y);
    this.e = new double[use.length];
    for (int i = 0; i < e.length; i++) {
      e[i] = wy[i] - estimate * wz[i];
    }
    double ss = Residuals.dot(e, e);
    this.noiseSd = Math.sqrt(ss / df);
    this.scale =
        Math.max(Math.sqrt(ss / used) / Math.sqrt(c), DayCheck.rounding(values, use) / TIE);
    this.noVariation = DayCheck.noVariation(ss, values, use);
  }

  /** ±1/2 by setup. */
  public static double[] signs(int[] order) {
    double[] z = new double[order.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = order[i] - 0.5;
    }
    return z;
  }
}
