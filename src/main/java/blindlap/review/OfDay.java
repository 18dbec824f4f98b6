package blindlap.review;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.math.BigDecimal;
import java.util.Map;

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

  /**
   * The estimate alone with every stint at the level that was really on: as measured, where the
   * helper wrote a number down, or else as the setup that was fitted has it.
   */
  static OneDifference asFitted(
      DayRecord day, Assignments set, double[] values, boolean[] valid, Nuisance nuisance) {
    Plan plan = day.plan();
    StepsDay steps = plan.steps();
    if (steps == null) {
      throw new IllegalArgumentException("a day without levels");
    }
    int[] fitted = day.asFitted();
    double[] levels = plan.levelNumbers();
    double[] at = new double[fitted.length];
    for (int i = 0; i < at.length; i++) {
      HelperFit fit = day.fits().get(i + 1);
      Map<String, BigDecimal> measured = fit == null ? Map.of() : fit.measured();
      BigDecimal number = measured.get(steps.setting());
      at[i] = number == null ? levels[fitted[i]] : number.doubleValue();
    }
    return Trend.estimateAt(set, levels, at, values, valid, nuisance);
  }
}
