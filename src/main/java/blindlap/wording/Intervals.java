package blindlap.wording;

import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import java.util.Optional;

/** Intervals in figures; their ends are rounded by {@link Figures}. */
public final class Intervals {
  private Intervals() {}

  /** "1.7 to 3.0". */
  public static String interval(Interval interval, int decimals) {
    return Figures.number(interval.low(), decimals)
        + " to "
        + Figures.number(interval.high(), decimals);
  }

  /** An optional interval, or words for none. */
  public static String interval(Optional<Interval> interval, int decimals) {
    return interval.map(i -> interval(i, decimals)).orElse("not bounded");
  }
}
