package blindlap.wording;

import blindlap.review.Caveat;
import blindlap.review.Comparison;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Optional;

/**
 * Another result of a measure of two setups, beside the one as planned. It is as careful as any
 * other sentence: what it does not show it calls a best estimate.
 */
final class BesideWords {
  private static final Words WORDS = Words.of("finding");

  /** A difference this small a share of the noise is rounding of the arithmetic: none. */
  private static final double ROUNDING = 1e-9;

  private final EndNames names;
  private final Comparison planned;
  private final boolean byName;

  /**
   * @param byName true for a null run
   */
  BesideWords(EndNames names, Comparison planned, boolean byName) {
    this.byName = byName;
    this.names = names;
    this.planned = planned;
  }

  String said(OneDifference other, boolean estimateOnly) {
    if (other.noVariation() && !estimateOnly) {
      return WORDS.say("beside.variation");
    }
    Optional<Interval> wide = estimateOnly ? Optional.empty() : interval(other, 0.95);
    Optional<Interval> ninety = estimateOnly ? Optional.empty() : interval(other, 0.90);
    DifferenceWords words =
        new DifferenceWords(
            names,
            planned.measure(),
            snapped(other.estimate()),
            List.of(wide, ninety),
            planned.result().noiseSd(),
            byName);
    if (estimateOnly) {
      return WORDS.say("beside.estimate", WORDS.say("best.alone", words.difference()));
    }
    double p = other.curve().p(0);
    boolean shown = planned.tested() && p <= 0.05;
    String difference = words.careful(shown);
    if (wide.isEmpty()) {
      return WORDS.say("beside.unbounded", difference);
    }
    return WORDS.say(
        planned.tested() ? "beside" : untested(),
        difference,
        words.interval(wide),
        DifferenceWords.p(p));
  }

  private String untested() {
    return planned.caveats().contains(Caveat.MISSING) ? "beside.untested" : "beside.ended";
  }

  private Optional<Interval> interval(OneDifference other, double level) {
    return other
        .curve()
        .interval(level)
        .map(i -> new Interval(snapped(i.low()), snapped(i.high())));
  }

  private double snapped(double shift) {
    return Math.abs(shift) <= ROUNDING * planned.result().noiseSd() ? 0 : shift;
  }
}
