package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.stats.compare.Scale;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Sizes of differences in one number of decimals, so chosen that no rounded limit lands on or
 * crosses "no difference" or the worthwhile difference. A limit is rounded to the nearest number;
 * where that would land on or cross a deciding value it is rounded outward, and where that does not
 * help either all get one decimal more (docs/method.md#rounding).
 *
 * <p>On the ratio scale a size is "so many per cent longer": 100·(e^|x| − 1), which is how a
 * worthwhile difference in per cent is declared too.
 */
final class Sizes {
  private static final int MOST_DECIMALS = 12;
  private static final double NOTHING = 1e-12;

  /** Below it a width is what is left of calculating with equal numbers. */
  private static final double NO_SPREAD = 1e-9;

  private static final int DECIMALS_OF_A_WATCH = 3;
  private static final String POINTS = "points";
  private static final String POINT = "point";

  private final Measure measure;
  private final int decimals;

  private Sizes(Measure measure, int decimals) {
    this.measure = measure;
    this.decimals = decimals;
  }

  /** An end of an interval: its size, and whether outward is up. */
  private record End(double size, boolean outwardUp) {}

  /**
   * @param estimate the difference on the scale of the analysis
   * @param intervals those that will be said, on that scale
   * @param spread a size that tells the digits where there is no interval
   */
  static Sizes of(
      Measure measure, double estimate, List<Optional<Interval>> intervals, double spread) {
    List<End> ends = new ArrayList<>();
    double narrowest = Double.POSITIVE_INFINITY;
    for (Optional<Interval> interval : intervals) {
      if (interval.isPresent()) {
        ends.addAll(ends(measure, interval.get()));
        narrowest = Math.min(narrowest, width(measure, interval.get()));
      }
    }
    double tells = Double.isInfinite(narrowest) ? size(measure, spread) : narrowest;
    double best = size(measure, estimate);
    int decimals = tells > NO_SPREAD ? Figures.decimals(tells) : decimalsWithoutSpread(best);
    while (decimals < MOST_DECIMALS && !fits(measure, best, ends, decimals)) {
      decimals++;
    }
    return new Sizes(measure, decimals);
  }

  /** Where nothing varied, nothing tells the digits: as many as the number has, three at most. */
  private static int decimalsWithoutSpread(double best) {
    int decimals = nearest(best, DECIMALS_OF_A_WATCH).stripTrailingZeros().scale();
    return Math.max(1, decimals);
  }

  private static double width(Measure measure, Interval interval) {
    return measure.scale() == Scale.RATIO
        ? 50 * (Math.exp(interval.high()) - Math.exp(interval.low()))
        : interval.halfWidth();
  }

  private static List<End> ends(Measure measure, Interval interval) {
    boolean oneSide = interval.low() > 0 || interval.high() < 0;
    boolean lowIsNear = interval.low() > 0;
    return List.of(
        new End(size(measure, interval.low()), !(oneSide && lowIsNear)),
        new End(size(measure, interval.high()), !(oneSide && !lowIsNear)));
  }

  private static boolean fits(Measure measure, double estimate, List<End> ends, int decimals) {
    if (estimate > NOTHING && nearest(estimate, decimals).signum() == 0) {
      return false;
    }
    return ends.stream()
        .allMatch(end -> keeps(measure, end.size(), rounded(measure, end, decimals)));
  }

  private static BigDecimal nearest(double size, int decimals) {
    return BigDecimal.valueOf(size).setScale(decimals, RoundingMode.HALF_EVEN);
  }

  private static BigDecimal rounded(Measure measure, End end, int decimals) {
    BigDecimal nearest = nearest(end.size(), decimals);
    if (keeps(measure, end.size(), nearest)) {
      return nearest;
    }
    return BigDecimal.valueOf(end.size())
        .setScale(decimals, end.outwardUp() ? RoundingMode.CEILING : RoundingMode.FLOOR);
  }

  /** True if a rounded size lies on the same side of 0 and of D as the size itself. */
  private static boolean keeps(Measure measure, double size, BigDecimal rounded) {
    if (size > NOTHING && rounded.signum() == 0) {
      return false;
    }
    BigDecimal worthwhile = measure.worthwhile();
    if (worthwhile == null) {
      return true;
    }
    double difference = size - worthwhile.doubleValue();
    double tie = 1e-9 * worthwhile.doubleValue();
    int side = Math.abs(difference) <= tie ? 0 : difference > 0 ? 1 : -1;
    return side == 0 || side == rounded.compareTo(worthwhile);
  }

  /** Size of a shift as it is said: in the unit, or in per cent. */
  static double size(Measure measure, double shift) {
    return measure.scale() == Scale.RATIO ? 100 * Math.expm1(Math.abs(shift)) : Math.abs(shift);
  }

  /** Number of decimals. */
  int decimals() {
    return decimals;
  }

  /** The size of the estimate, without unit. */
  String estimate(double shift) {
    return nearest(size(measure, shift), decimals).toPlainString();
  }

  /** The two ends of an interval, without unit: lower end of B − A first. */
  List<BigDecimal> limits(Interval interval) {
    return ends(measure, interval).stream().map(end -> rounded(measure, end, decimals)).toList();
  }

  /** The unit that follows a number, with a space; empty for counts, which say it elsewhere. */
  String unit() {
    if (measure.scale() == Scale.RATIO) {
      return " %";
    }
    return measure.kind().counted() ? "" : " " + measure.unit();
  }

  /** A number as printed with its unit, which is singular after 1. */
  String with(String number) {
    return measure.scale() == Scale.RATIO || measure.kind().counted()
        ? number + unit()
        : number + " " + unit(measure, number);
  }

  /** The unit after a number as printed: "1 point", "1.0 points". */
  static String unit(Measure measure, String number) {
    return number.equals("1") && measure.unit().equals(POINTS) ? POINT : measure.unit();
  }

  /** The worthwhile difference as declared, with its unit; empty if none was. */
  static String worthwhile(Measure measure) {
    BigDecimal declared = measure.worthwhile();
    if (declared == null) {
      return "";
    }
    String number = declared.toPlainString();
    return number + (measure.scale() == Scale.RATIO ? " %" : " " + unit(measure, number));
  }
}
