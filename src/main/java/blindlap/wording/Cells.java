package blindlap.wording;

import blindlap.review.Comparison;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;

/** Signed numbers for tables: B minus A, with the digits and the rounding of the sentences. */
final class Cells {
  private static final Words WORDS = Words.of("finding");

  private Cells() {}

  static String estimate(Comparison comparison, int decimals) {
    double shift = comparison.result().estimate();
    return sign(shift) + number(comparison, shift, decimals);
  }

  private static String number(Comparison comparison, double shift, int decimals) {
    String number = Figures.number(Sizes.size(comparison.measure(), shift), decimals);
    return comparison.measure().scale() == Scale.RATIO
        ? number + unit(comparison)
        : number + " " + Sizes.unit(comparison.measure(), number);
  }

  static String interval(Comparison comparison, Interval shifts, Sizes sizes) {
    List<BigDecimal> limits = sizes.limits(shifts);
    return WORDS.say(
        "interval.one.side",
        sign(shifts.low()) + limits.get(0).toPlainString(),
        sign(shifts.high()) + limits.get(1).toPlainString() + unit(comparison));
  }

  private static String unit(Comparison comparison) {
    if (comparison.measure().scale() == Scale.RATIO) {
      return " %";
    }
    return " " + comparison.measure().unit();
  }

  private static String sign(double shift) {
    return shift < 0 ? "−" : shift > 0 ? "+" : "";
  }
}
