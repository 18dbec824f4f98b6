package blindlap.plan;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a plan holds against each other, as far as power hangs on it: so many setups, or the levels
 * of one setting, whose distances count.
 *
 * @param setups how many, levels included
 * @param levels where each level lies between the lowest, 0, and the highest, 1, in the order of
 *     the setups; null where setups are compared
 */
record Compared(int setups, @Nullable List<Double> levels) {
  Compared {
    levels = levels == null ? null : List.copyOf(levels);
  }

  /** Of setups that have nothing between them. */
  static Compared of(int setups) {
    return new Compared(setups, null);
  }

  /**
   * Empty for a steps day whose levels are not numbers that differ within the maker's limits: of
   * such a day nothing is said but what {@link PlanCheck} says.
   */
  static Optional<Compared> of(Plan plan) {
    StepsDay steps = plan.steps();
    if (steps == null) {
      return Optional.of(of(plan.setups().size()));
    }
    return plan.levels()
        .filter(levels -> levels.stream().allMatch(steps::allows))
        .map(levels -> levels.stream().map(BigDecimal::doubleValue).toList())
        .filter(levels -> levels.stream().distinct().count() == levels.size())
        .map(levels -> new Compared(levels.size(), along(levels)));
  }

  /** Power hangs on where levels lie between their ends, not on the unit: 4, 7, 10 as 1, 2, 3. */
  private static List<Double> along(List<Double> levels) {
    double lowest = Collections.min(levels);
    double range = Collections.max(levels) - lowest;
    return levels.stream().map(level -> (level - lowest) / range).toList();
  }

  /** The levels for the calculation. */
  double[] numbers() {
    return levels == null
        ? new double[0]
        : levels.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Mean square of what stands in place of ±1/2, if each is ridden as often: of two setups a
   * quarter.
   */
  double spread() {
    double[] at = levels == null ? new double[] {0, 1} : numbers();
    double mean = Arrays.stream(at).average().orElseThrow();
    return Arrays.stream(at).map(a -> (a - mean) * (a - mean)).average().orElseThrow();
  }
}
