package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Nuisance;

/** A measure as the walk needs it. */
final class MeasureColumn {
  final boolean[] use;
  final Residuals residuals;
  final double[] residual;
  final double variation;
  final double observed;

  /** How far the root of R may be off by the rounding of the values themselves. */
  final double loose;

  MeasureColumn(
      Assignments set,
      int[] order,
      double[] values,
      Nuisance nuisance,
      boolean[] valid,
      String argument) {
    use = nuisance.known(DayCheck.used(set, argument, values, valid));
    residuals = Residuals.required(use, nuisance);
    int used = DayCheck.count(use);
    if (used - residuals.columns() - 1 < 1) {
      throw DayCheck.tooFew(argument, used, 2, nuisance);
    }
    residual = residuals.apply(DayCheck.centred(values, use));
    double squares = Residuals.dot(residual, residual);
    variation = DayCheck.noVariation(squares, values, use) ? 0 : squares;
    double[] z = SetupFit.signs(order);
    double c = Residuals.dot(z, residuals.apply(z));
    if (c <= 1e-9 * used) {
      throw new Unusable(
          argument,
          "do not tell the setups apart: on the stints left one setup has no value.",
          DayFault.SETUPS_NOT_APART);
    }
    observed = share(Residuals.dot(z, residual), c);
    loose = variation == 0 ? 0 : 2 * DayCheck.rounding(values, use) / Math.sqrt(variation);
  }

  /** R of an order; 0 where the measure does not vary or the order holds no information. */
  double share(double a, double c) {
    return variation == 0 || c <= 1e-9 ? 0 : a * a / (c * variation);
  }
}
