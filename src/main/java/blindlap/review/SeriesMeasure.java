package blindlap.review;

import blindlap.plan.Measure;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.distribution.Interval;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A measure of a series beside its primary one (docs/method.md#measures-of-a-series): never a
 * verdict. Differences are second less first setup of the first plan, on the scale of the analysis.
 *
 * @param measure as the first plan has it
 * @param sessions how many of the pooled sessions say something of it
 * @param estimate of these riders on these days with one rider, of riders in general with several
 * @param interval95 95 %, of this measure alone; empty if nothing bounds it
 * @param interval90 90 %, likewise
 * @param p two-sided p of "no difference", of this measure alone; empty with too few riders
 * @param adjusted the same adjusted for the number of secondary measures; empty for others
 * @param harm of a measure that is watched for harm, adjusted for all that are
 */
public record SeriesMeasure(
    Measure measure,
    int sessions,
    double estimate,
    Optional<Interval> interval95,
    Optional<Interval> interval90,
    OptionalDouble p,
    OptionalDouble adjusted,
    Optional<HarmTest> harm) {
  SeriesMeasure withAdjusted(double value) {
    return new SeriesMeasure(
        measure, sessions, estimate, interval95, interval90, p, OptionalDouble.of(value), harm);
  }

  SeriesMeasure withHarm(HarmTest found) {
    return new SeriesMeasure(
        measure, sessions, estimate, interval95, interval90, p, adjusted, Optional.of(found));
  }

  /** True if the setups differ in it at level .05, adjusted where it is adjusted. */
  public boolean shown() {
    return adjusted.isPresent()
        ? adjusted.getAsDouble() <= 0.05
        : p.isPresent() && p.getAsDouble() <= 0.05;
  }
}
