package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * How many stints a repeat of a steps day at the same levels needs to show, on 8 of 10, a trend as
 * large as the worthwhile difference from the lowest to the highest level
 * (docs/method.md#more-days).
 *
 * @param worthwhile that difference, on the scale of the analysis
 * @param stints at this day's noise; empty if more than {@link Rule#MOST_STINTS}
 * @param fewest at the low end of its 95 % interval
 * @param most at its high end
 */
public record NeededStints(
    double worthwhile, OptionalInt stints, OptionalInt fewest, OptionalInt most) {

  /** Empty for other days, and where no worthwhile difference is declared. */
  static Optional<NeededStints> of(Plan plan, Measure measure, Shows shows, RiderNoise noise) {
    BigDecimal declared = measure.worthwhile();
    if (plan.steps() == null || declared == null) {
      return Optional.empty();
    }
    double margin = measure.scale().margin(declared.doubleValue());
    Search search = new Search(plan, shows, new TreeMap<>());
    Interval range = noise.interval95IfNormal();
    return Optional.of(
        new NeededStints(
            margin,
            search.least(margin / noise.sd()),
            search.least(margin / range.low()),
            search.least(margin / range.high())));
  }

  /** By halving: more stints of one rule show less. */
  private record Search(Plan plan, Shows shows, Map<Integer, Double> known) {
    OptionalInt least(double wanted) {
      Integer block = plan.protocol().block();
      int step = block == null ? plan.setups().size() : block;
      int enough = Rule.MOST_STINTS / step;
      if (!enough(enough * step, wanted)) {
        return OptionalInt.empty();
      }
      int tooFew = 0;
      while (enough - tooFew > 1) {
        int half = (tooFew + enough) / 2;
        if (enough(half * step, wanted)) {
          enough = half;
        } else {
          tooFew = half;
        }
      }
      return OptionalInt.of(enough * step);
    }

    private boolean enough(int stints, double wanted) {
      double shown =
          known.computeIfAbsent(
              stints, n -> shows.difference(plan.protocol().rule(plan.setups().size(), n), 1));
      // Of a rule that can show nothing it is no number.
      return shown <= wanted;
    }
  }
}
