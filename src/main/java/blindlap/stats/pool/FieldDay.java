package blindlap.stats.pool;

import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import java.util.List;

/**
 * One day of a {@link Field}.
 *
 * @param setups names, A first
 * @param order setup indices, one per stint
 * @param values one per stint; NaN where none
 * @param valid true where the stint counts
 * @param nuisance what is removed from the day
 */
public record FieldDay(
    List<String> setups, int[] order, double[] values, boolean[] valid, Nuisance nuisance) {
  /** A day without covariates. */
  public FieldDay(List<String> setups, int[] order, double[] values, boolean[] valid, Drift drift) {
    this(setups, order, values, valid, Nuisance.of(drift));
  }
}
