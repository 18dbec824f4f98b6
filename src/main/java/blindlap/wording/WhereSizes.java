package blindlap.wording;

import blindlap.review.WhereOnTrail;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/** Seconds in one number of decimals, so chosen that no limit is rounded to "no difference". */
final class WhereSizes {
  private static final Words WORDS = Words.of("where");
  private static final int MOST_DECIMALS = 6;

  private final int decimals;

  private WhereSizes(int decimals) {
    this.decimals = decimals;
  }

  static WhereSizes of(WhereOnTrail where) {
    List<Interval> intervals =
        where.sectors().stream()
            .flatMap(sectors -> sectors.each().stream())
            .flatMap(sector -> sector.interval().stream())
            .filter(interval -> Double.isFinite(interval.halfWidth()))
            .toList();
    double narrowest = intervals.stream().mapToDouble(Interval::halfWidth).min().orElse(1);
    int decimals = Math.max(1, Figures.decimals(narrowest));
    while (decimals < MOST_DECIMALS && lost(intervals, decimals)) {
      decimals++;
    }
    return new WhereSizes(decimals);
  }

  /** True if an interval on one side of "no difference" would be said to reach it. */
  private static boolean lost(List<Interval> intervals, int decimals) {
    double half = 0.5 * Math.pow(10, -decimals);
    return intervals.stream()
        .anyMatch(i -> i.low() > 0 && i.low() <= half || i.high() < 0 && i.high() >= -half);
  }

  /** "−0.55 to +0.07": ends to the nearest, outward where that would be "no difference". */
  String limits(Interval interval) {
    return WORDS.say(
        "interval",
        end(interval.low(), RoundingMode.FLOOR),
        end(interval.high(), RoundingMode.CEILING));
  }

  private String end(double limit, RoundingMode outward) {
    boolean nothing = Math.abs(limit) > 1e-9 && Math.abs(limit) <= 0.5 * Math.pow(10, -decimals);
    return signed(
        nothing ? BigDecimal.valueOf(limit).setScale(decimals, outward).doubleValue() : limit);
  }

  /** With its sign. */
  String signed(double seconds) {
    return Figures.signed(seconds, decimals);
  }

  /** Without a sign. */
  String plain(double seconds) {
    return Figures.number(Math.abs(seconds), decimals);
  }
}
