package blindlap.session;

import java.math.BigDecimal;

/** How many digits a number in an entry has. */
final class Digits {
  /** Nobody types more digits before and behind the decimal sign together. */
  static final int MOST = 27;

  private Digits() {}

  /** True for a number of no more digits than anyone types or any watch shows. */
  static boolean ordinary(BigDecimal value) {
    // Not by its text: of a number like 1e999999999 that would be a gigabyte.
    return value.precision() <= MOST && Math.abs((long) value.scale()) <= MOST;
  }
}
