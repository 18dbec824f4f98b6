package blindlap.review;

import blindlap.plan.Plan;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;

/**
 * The one difference that a day is about: of its two setups, or from the lowest to the highest
 * level of its one setting.
 */
final class OfDay {
  private OfDay() {}

  /** Works it out; {@code order} is the order ridden, of {@code set}. */
  static OneDifference compare(
      Plan plan,
      Assignments set,
      int[] order,
      double[] values,
      boolean[] valid,
      Nuisance nuisance) {
    return plan.steps() == null
        ? TwoSetups.compare(set, order, values, valid, nuisance, Sampling.PREFERRED)
        : Trend.of(set, plan.levelNumbers(), order, values, valid, nuisance, Sampling.PREFERRED);
  }

  /** The estimate alone with every stint at the level that was really on. */
  static OneDifference asFitted(
      DayRecord day, Assignments set, double[] values, boolean[] valid, Nuisance nuisance) {
    Plan plan = day.plan();
    double[] at = day.levelsFitted();
    return Trend.estimateAt(set, plan.levelNumbers(), at, values, valid, nuisance);
  }
}
