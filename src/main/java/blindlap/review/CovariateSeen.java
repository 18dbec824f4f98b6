package blindlap.review;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.stats.compare.PartialCorrelation;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.stats.order.Nuisance;
import java.util.ArrayList;
import java.util.List;

/**
 * How strongly a covariate of a day went with a measure, drift and setups removed
 * (docs/method.md#covariates).
 *
 * @param covariate as its plan declares it
 * @param seen the correlation, with its degrees of freedom
 */
public record CovariateSeen(Covariate covariate, PooledCorrelation.Seen seen) {

  /** Of every covariate that can be told of. */
  static List<CovariateSeen> of(DayRecord day, Measure measure, StintValues stints) {
    List<CovariateSeen> seen = new ArrayList<>();
    int setups = day.plan().setups().size();
    for (Covariate covariate : day.plan().covariates()) {
      double[] values = TakenOut.values(day, covariate);
      boolean[] use = stints.valid();
      int used = 0;
      for (int i = 0; i < use.length; i++) {
        use[i] &= !Double.isNaN(values[i]);
        used += use[i] ? 1 : 0;
      }
      // The constant is one of the drift's columns.
      int df = used - measure.drift().columns() - (setups - 1) - 1;
      double r = df < 1 ? Double.NaN : goesWith(day.asFitted(), measure, values, use, stints);
      if (Double.isFinite(r)) {
        seen.add(new CovariateSeen(covariate, new PooledCorrelation.Seen(r, df)));
      }
    }
    return seen;
  }

  /**
   * The correlation, from −1 to 1; NaN where there is none, and where more setups were compared
   * than a nuisance has columns.
   *
   * @param order setup of each stint, from 0
   * @param use stints with both values
   */
  static double goesWith(
      int[] order, Measure measure, double[] values, boolean[] use, StintValues stints) {
    int setups = 1 + java.util.Arrays.stream(order).max().orElse(0);
    if (setups > Nuisance.MOST + 1) {
      return Double.NaN;
    }
    List<double[]> columns = new ArrayList<>();
    for (int setup = 1; setup < setups; setup++) {
      double[] column = new double[order.length];
      for (int i = 0; i < column.length; i++) {
        column[i] = order[i] == setup ? 1 : 0;
      }
      columns.add(column);
    }
    return PartialCorrelation.of(
        use, Nuisance.of(measure.drift(), columns), values, stints.values());
  }
}
