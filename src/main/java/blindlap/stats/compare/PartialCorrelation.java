package blindlap.stats.compare;

import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Nuisance;

/**
 * Correlation of two series of a day once the same is removed from both
 * (docs/method.md#covariates): x'Wy / √(x'Wx · y'Wy).
 */
public final class PartialCorrelation {
  private PartialCorrelation() {}

  /**
   * The correlation, from −1 to 1; NaN where nothing of one of them is left.
   *
   * @param use true where the stint counts; both have a value there
   * @param nuisance what is removed from both
   */
  public static double of(boolean[] use, Nuisance nuisance, double[] x, double[] y) {
    Residuals residuals = new Residuals(use, nuisance);
    double[] restX = residuals.apply(DayCheck.centred(x, use));
    double[] restY = residuals.apply(DayCheck.centred(y, use));
    double squaresX = Residuals.dot(restX, restX);
    double squaresY = Residuals.dot(restY, restY);
    boolean nothing =
        DayCheck.noVariation(squaresX, x, use) || DayCheck.noVariation(squaresY, y, use);
    return nothing
        ? Double.NaN
        : Math.max(-1, Math.min(1, Residuals.dot(restX, restY) / Math.sqrt(squaresX * squaresY)));
  }
}
