package blindlap.stats.pool;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;

/**
 * One session.
 *
 * @param set its admissible orders, two setups, closed under swapping A and B
 * @param order the order ridden, a member of the set
 * @param values one value per stint; NaN where none
 * @param valid true where the stint counts
 * @param nuisance what is removed
 */
public record PooledSession(
    Assignments set, int[] order, double[] values, boolean[] valid, Nuisance nuisance) {
  /** With a drift alone. */
  public PooledSession(
      Assignments set, int[] order, double[] values, boolean[] valid, Drift drift) {
    this(set, order, values, valid, Nuisance.of(drift));
  }

  public PooledSession {
    order = order.clone();
    values = values.clone();
    valid = valid.clone();
  }

  /** The stints that count: valid, with a value and with every covariate. */
  boolean[] used() {
    return nuisance.known(DayCheck.used(set, "values", values, valid));
  }

  @Override
  public int[] order() {
    return order.clone();
  }

  @Override
  public double[] values() {
    return values.clone();
  }

  @Override
  public boolean[] valid() {
    return valid.clone();
  }
}
