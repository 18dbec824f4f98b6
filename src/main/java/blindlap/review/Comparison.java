package blindlap.review;

import blindlap.plan.Measure;
import blindlap.stats.ConfidenceCurve;
import blindlap.stats.Interval;
import blindlap.stats.TwoSetups;
import blindlap.stats.Verdict;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * One measure of a two-setup session, compared. Differences are B minus A in the unit of the
 * measure, or the ratio B to A on the ratio scale.
 *
 * @param measure which measure
 * @param stints the analysed units
 * @param result the numbers
 * @param verdict empty unless the measure carries a verdict
 */
public record Comparison(
    Measure measure, StintValues stints, TwoSetups result, Optional<Verdict> verdict) {

  /** The worthwhile difference as shifts −D and +D on the scale of the analysis, if declared. */
  public Optional<Interval> worthwhileBand() {
    return band(measure);
  }

  static Optional<Interval> band(Measure measure) {
    BigDecimal declared = measure.worthwhile();
    if (declared == null) {
      return Optional.empty();
    }
    double margin = measure.scale().margin(declared.doubleValue());
    return Optional.of(new Interval(-margin, margin));
  }

  /** The confidence curve on the scale of the analysis. */
  public ConfidenceCurve curve() {
    return result.curve();
  }

  /** Estimated difference as said: B − A, or B/A on the ratio scale. */
  public double estimate() {
    return measure.scale().back(result.estimate());
  }

  /** An interval as said; empty if unbounded or without variation. */
  public Optional<Interval> interval(double level) {
    return result.noVariation() ? Optional.empty() : curve().interval(level).map(this::said);
  }

  private Interval said(Interval interval) {
    return new Interval(
        measure.scale().back(interval.low()), measure.scale().back(interval.high()));
  }

  /** Two-sided p of "no difference"; 1 without variation. */
  public double p() {
    return result.noVariation() ? 1 : curve().p(0);
  }
}
