package blindlap.review;

import java.util.List;
import java.util.Locale;

/** Why a day ended before its last stint, where that decides (docs/method.md#known-voids). */
final class EarlyEnd {
  /** What ends a day against the rider's will; a reason begins with one of these. */
  private static final List<String> FORCED = List.of("dark", "injur", "damag");

  private EarlyEnd() {}

  /**
   * True if the day ended before its last stint, by someone who knew what was on, and for another
   * reason than dark, injury or damage: whoever stops when ahead makes a verdict of nothing.
   */
  static boolean freely(DayRecord day) {
    return !day.plan().level().blind()
        && day.lastRidden() < day.plan().stints()
        && day.remarks(Remark.Kind.CUT_SHORT).stream().noneMatch(r -> forced(r.words()));
  }

  private static boolean forced(String reason) {
    String typed = reason.strip().toLowerCase(Locale.ROOT);
    return FORCED.stream().anyMatch(typed::startsWith);
  }
}
