package blindlap.stats.look;

import blindlap.fault.StatsException;

/** What every calculation over looks refuses. */
final class Looks {
  /** More looks than any day has stints; the work grows with their number. */
  static final int MOST = 100;

  private Looks() {}

  static void check(double level, double[] looks) {
    level(level);
    number(looks.length);
    double before = 0;
    for (int i = 0; i < looks.length; i++) {
      if (!(looks[i] > before && looks[i] <= 1)) {
        throw new StatsException(
            "looks[" + i + "]", "must be above the look before it (or 0) and at most 1.");
      }
      before = looks[i];
    }
  }

  static void level(double level) {
    if (!(level > 0 && level < 1)) {
      throw new StatsException("level", "must be between 0 and 1.");
    }
  }

  static void number(int looks) {
    if (looks < 1 || looks > MOST) {
      throw new StatsException("looks", "must be from 1 to " + MOST + " looks.");
    }
  }
}
