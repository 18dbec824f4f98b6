package blindlap.wording;

import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;

/** An interval in words: "1.7 to 3.0 s", or from one setup's side to the other's. */
final class IntervalWords {
  private static final Words WORDS = Words.of("finding");

  private final Way way;
  private final String first;
  private final String second;

  /** For differences of the second setup less the first. */
  IntervalWords(Way way, String first, String second) {
    this.way = way;
    this.first = first;
    this.second = second;
  }

  /** "−0.3 to +1.1 s": of a null run, where no side is that of a setup. */
  static String signed(Interval interval, List<BigDecimal> limits, String unit) {
    return WORDS.say(
        "interval.one.side",
        sign(interval.low()) + limits.get(0).toPlainString(),
        sign(interval.high()) + limits.get(1).toPlainString() + unit);
  }

  private static String sign(double value) {
    return value < 0 ? "−" : value > 0 ? "+" : "";
  }

  String say(Interval interval, Sizes digits) {
    var limits = digits.limits(interval);
    boolean above = interval.low() > 0;
    if (above || interval.high() < 0) {
      BigDecimal near = above ? limits.get(0) : limits.get(1);
      BigDecimal far = above ? limits.get(1) : limits.get(0);
      return WORDS.say(
          "interval.one.side", near.toPlainString(), far.toPlainString() + digits.unit());
    }
    return WORDS.say(
        "interval.two.sides", end(-1, limits.get(0), digits), end(1, limits.get(1), digits));
  }

  private String end(int side, BigDecimal limit, Sizes digits) {
    if (limit.signum() == 0) {
      return WORDS.say("end.none");
    }
    return WORDS.say(
        "end." + way.name().toLowerCase(Locale.ROOT).replace('_', '.'),
        way.first(side) == 0 ? first : second,
        limit.toPlainString() + digits.unit());
  }
}
