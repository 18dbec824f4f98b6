package blindlap.review;

import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The levels of a steps day, or of a telling run between two of one setting, that were really on,
 * by what the helper wrote down.
 */
final class FittedLevels {
  private final StepsDay steps;
  private final double[] levels;
  private final int[] planned;
  private final Map<Integer, HelperFit> fits;
  private final int lastStint;

  /**
   * @param planned the setup that the order names for every stint
   * @param fits what the helper wrote down, by stint
   */
  FittedLevels(Plan plan, int[] planned, Map<Integer, HelperFit> fits, int lastStint) {
    this.steps = Objects.requireNonNull(plan.oneSetting(), "a day without levels");
    this.levels = plan.levelNumbers();
    this.planned = planned.clone();
    this.fits = fits;
    this.lastStint = lastStint;
  }

  /**
   * The level that was on in every stint: as measured, where the helper wrote a number down, or
   * else as the setup that was fitted has it.
   *
   * @param fitted the setup that was on in every stint
   */
  double[] at(int[] fitted) {
    double[] at = new double[fitted.length];
    for (int i = 0; i < at.length; i++) {
      BigDecimal measured = measured(i + 1);
      at[i] = measured == null ? levels[fitted[i]] : measured.doubleValue();
    }
    return at;
  }

  /**
   * Stints whose measured level is another than planned, whatever the helper called it: of clicks
   * any other number; of what is read from a gauge or a rule one that is nearer to another level.
   */
  TreeSet<Integer> wrong() {
    TreeSet<Integer> wrong = off();
    wrong.removeIf(stint -> steps.way() != StepsDay.Way.CLICKS && !nearerToAnother(stint));
    return wrong;
  }

  /** Stints whose measured level is not to the last digit the one planned. */
  TreeSet<Integer> off() {
    TreeSet<Integer> off = new TreeSet<>();
    for (int stint = 1; stint <= lastStint; stint++) {
      BigDecimal measured = measured(stint);
      if (measured != null && measured.doubleValue() != levels[planned[stint - 1]]) {
        off.add(stint);
      }
    }
    return off;
  }

  private boolean nearerToAnother(int stint) {
    double measured = Objects.requireNonNull(measured(stint)).doubleValue();
    double away = Math.abs(measured - levels[planned[stint - 1]]);
    return Arrays.stream(levels).anyMatch(level -> Math.abs(measured - level) < away);
  }

  private @Nullable BigDecimal measured(int stint) {
    HelperFit fit = fits.get(stint);
    return fit == null ? null : fit.measured().get(steps.setting());
  }
}
