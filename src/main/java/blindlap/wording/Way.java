package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.stats.compare.Scale;

/** How a difference in a measure is said: the word, and whose setup comes first. */
enum Way {
  /** A time where less is better; the setup with the smaller value comes first. */
  FASTER(false),
  /** A time where no direction, or more, is better; the larger value comes first. */
  LONGER(true),
  /** A ratio of times: the larger, in per cent of the smaller. */
  PERCENT_LONGER(true),
  HIGHER(true),
  LOWER(false),
  FEWER(false),
  MORE(true);

  private final boolean largerFirst;

  Way(boolean largerFirst) {
    this.largerFirst = largerFirst;
  }

  static Way of(Measure measure) {
    boolean lower = measure.better() == Measure.Better.LOWER;
    if (measure.scale() == Scale.RATIO) {
      return PERCENT_LONGER;
    }
    if (measure.kind().timed()) {
      return lower ? FASTER : LONGER;
    }
    if (measure.kind().rating()) {
      return lower ? LOWER : HIGHER;
    }
    return lower ? FEWER : MORE;
  }

  /** Index of the setup that comes first, for a shift B minus A. */
  int first(double shift) {
    return (shift > 0) == largerFirst ? 1 : 0;
  }

  /** True if the setup that comes first is the better one; false where no direction is better. */
  boolean firstIsBetter(Measure measure) {
    return switch (measure.better()) {
      case LOWER -> !largerFirst;
      case HIGHER -> largerFirst;
      case NEITHER -> false;
    };
  }

  /** Key of the sentence, and of its short form with "short." before it. */
  String key(Measure measure) {
    String sector =
        switch (measure.kind()) {
          case SECTOR_TIME -> ".sector";
          case LAP_TIME, LINE_SCALE, CATEGORY_SCALE, COUNT -> "";
        };
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '.') + sector;
  }
}
