package blindlap.review;

import blindlap.plan.StepsDay;
import java.math.BigDecimal;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** The levels of a steps day that were really on, by what the helper wrote down. */
public final class FittedLevels {
  private FittedLevels() {}

  /**
   * The level that was on in every stint: as measured, where the helper wrote a number down, or
   * else as the setup that was fitted has it.
   */
  public static double[] at(DayRecord day) {
    int[] fitted = day.asFitted();
    double[] levels = day.plan().levelNumbers();
    double[] at = new double[fitted.length];
    for (int i = 0; i < at.length; i++) {
      BigDecimal measured = measured(day, i + 1);
      at[i] = measured == null ? levels[fitted[i]] : measured.doubleValue();
    }
    return at;
  }

  /**
   * Stints whose measured level is another than planned, whatever the helper called it: of clicks
   * any other number; of what is read from a gauge or a rule one that is nearer to another level.
   */
  static TreeSet<Integer> wrong(DayRecord day) {
    TreeSet<Integer> wrong = new TreeSet<>();
    StepsDay steps = day.plan().steps();
    for (int stint : off(day)) {
      double measured = at(day, stint);
      double planned = day.plan().levelNumbers()[day.setup(stint)];
      boolean counted = steps != null && steps.way() == StepsDay.Way.CLICKS;
      if (counted || nearerToAnother(day, measured, planned)) {
        wrong.add(stint);
      }
    }
    return wrong;
  }

  /** Stints whose measured level is not to the last digit the one planned. */
  static TreeSet<Integer> off(DayRecord day) {
    TreeSet<Integer> off = new TreeSet<>();
    double[] levels = day.plan().levelNumbers();
    for (int stint = 1; stint <= day.lastStint(); stint++) {
      if (measured(day, stint) != null && at(day, stint) != levels[day.setup(stint)]) {
        off.add(stint);
      }
    }
    return off;
  }

  private static boolean nearerToAnother(DayRecord day, double measured, double planned) {
    for (double level : day.plan().levelNumbers()) {
      if (Math.abs(measured - level) < Math.abs(measured - planned)) {
        return true;
      }
    }
    return false;
  }

  private static double at(DayRecord day, int stint) {
    BigDecimal measured = measured(day, stint);
    return measured == null ? Double.NaN : measured.doubleValue();
  }

  private static @Nullable BigDecimal measured(DayRecord day, int stint) {
    StepsDay steps = day.plan().steps();
    HelperFit fit = day.fits().get(stint);
    return steps == null || fit == null ? null : fit.measured().get(steps.setting());
  }
}
