package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A difference of two setups in words, wherever it comes from. */
final class DifferenceWords {
  private static final Words WORDS = Words.of("finding");

  private final List<String> setups;
  private final EndNames names;
  private final Measure measure;
  private final Way way;
  private final double estimate;
  private final Sizes sizes;
  private final boolean byName;

  /**
   * @param setups names of the two setups; the difference is second less first
   * @param estimate on the scale of the analysis
   * @param intervals those that will be said
   * @param spread a size that tells the digits where there is no interval
   */
  DifferenceWords(
      List<String> setups,
      Measure measure,
      double estimate,
      List<Optional<Interval>> intervals,
      double spread) {
    this(EndNames.of(setups), measure, estimate, intervals, spread, false);
  }

  /**
   * The same; of a null run the names differ and no setup was better or worse.
   *
   * @param byName true for a null run
   */
  DifferenceWords(
      EndNames names,
      Measure measure,
      double estimate,
      List<Optional<Interval>> intervals,
      double spread,
      boolean byName) {
    this.byName = byName;
    this.names = names;
    this.setups = names.names();
    this.measure = measure;
    this.way = Way.of(measure);
    this.estimate = estimate;
    this.sizes = Sizes.of(measure, estimate, intervals, spread);
  }

  /** The digits it is said with. */
  Sizes sizes() {
    return sizes;
  }

  /** "Shock L was 2.3 s a lap faster than Shock K". */
  String difference() {
    if (estimate == 0) {
      return WORDS.say("equal", setups.get(0), setups.get(1), measure.name());
    }
    if (byName) {
      return WORDS.say("null.careful", setups.get(1), setups.get(0), signed());
    }
    int first = way.first(estimate);
    return WORDS.say(
        way.key(measure),
        setups.get(first),
        names.bare().get(1 - first),
        sizes.with(sizes.estimate(estimate)),
        measure.name(),
        measure.unit());
  }

  /** The setup that the difference names first, if it is the worse one; "better" declared. */
  Optional<String> firstIfWorse() {
    boolean worse =
        measure.better() != Measure.Better.NEITHER && !way.firstIsBetter(measure) && estimate != 0;
    return worse ? Optional.of(setups.get(way.first(estimate))) : Optional.empty();
  }

  /** The difference; one that is not shown is said to be a best estimate. */
  String careful(boolean shown) {
    return shown ? difference() : WORDS.say("best", setups.get(0), setups.get(1), difference());
  }

  /** "p = .004" or "p below .0001". */
  static String p(double p) {
    return p < 0.0001 ? WORDS.say("p.below", ".0001") : WORDS.say("p", Figures.p(p));
  }

  /** "−2.3 s": second less first, for a plot whose axis says so. */
  String signed() {
    String sign = estimate < 0 ? "−" : estimate > 0 ? "+" : "";
    return sign + sizes.with(sizes.estimate(estimate));
  }

  /** "Shock K faster", for a side of an axis. */
  String side(int side) {
    return byName
        ? WORDS.say(side < 0 ? "null.side.less" : "null.side.more", setups.get(1), setups.get(0))
        : WORDS.say("side." + word(), setups.get(way.first(side)));
  }

  private String word() {
    return way.name().toLowerCase(Locale.ROOT).replace('_', '.');
  }

  /** "1.7 to 3.0 s", or from one setup's side to the other's. */
  String interval(Optional<Interval> shifts) {
    return shifts.map(this::interval).orElse(WORDS.say("unbounded"));
  }

  private String interval(Interval interval) {
    List<BigDecimal> limits = sizes.limits(interval);
    if (byName) {
      return IntervalWords.signed(interval, limits, sizes.unit());
    }
    boolean above = interval.low() > 0;
    if (above || interval.high() < 0) {
      BigDecimal near = above ? limits.get(0) : limits.get(1);
      BigDecimal far = above ? limits.get(1) : limits.get(0);
      return WORDS.say(
          "interval.one.side", near.toPlainString(), far.toPlainString() + sizes.unit());
    }
    return WORDS.say("interval.two.sides", end(-1, limits.get(0)), end(1, limits.get(1)));
  }

  private String end(int side, BigDecimal limit) {
    if (limit.signum() == 0) {
      return WORDS.say("end.none");
    }
    return WORDS.say(
        "end." + word(), setups.get(way.first(side)), sizes.with(limit.toPlainString()));
  }
}
