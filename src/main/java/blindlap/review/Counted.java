package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import java.util.List;
import java.util.Locale;

/**
 * Which laps count, and whether a day may have a verdict at all, where whoever voids a lap or ends
 * the day knows what is on (docs/method.md#known-voids).
 */
final class Counted {
  /** What ends a day against the rider's will; a reason begins with one of these. */
  private static final List<String> FORCED = List.of("dark", "injur", "damag");

  private Counted() {}

  /** All ridden laps where voids are decided knowing what is on, else those that are not void. */
  static StintValues.Laps laps(Plan plan) {
    return plan.level().blind() ? StintValues.Laps.NOT_VOID : StintValues.Laps.ALL_RIDDEN;
  }

  /** The values of a measure that carry its result. */
  static StintValues of(DayRecord day, Measure measure) {
    return StintValues.of(day, measure, laps(day.plan()));
  }

  /**
   * True if the day ended before its last stint, by someone who knew what was on, and for another
   * reason than dark, injury or damage: whoever stops when ahead makes a verdict of nothing.
   */
  static boolean endedFreely(DayRecord day) {
    return !day.plan().level().blind()
        && day.lastRidden() < day.plan().stints()
        && day.remarks(Remark.Kind.CUT_SHORT).stream().noneMatch(r -> forced(r.words()));
  }

  private static boolean forced(String reason) {
    String typed = reason.strip().toLowerCase(Locale.ROOT);
    return FORCED.stream().anyMatch(typed::startsWith);
  }
}
