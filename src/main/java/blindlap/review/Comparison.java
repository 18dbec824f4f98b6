package blindlap.review;

import blindlap.plan.Measure;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.CountRatio;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One measure of a two-setup session or a steps day, compared. Differences are B minus A in the
 * unit of the measure, or the ratio B to A on the ratio scale; of a steps day from the lowest level
 * to the highest.
 *
 * @param measure which measure
 * @param stints the analysed units
 * @param result the numbers
 * @param verdict empty unless the measure carries a verdict
 * @param adjusted p adjusted among the secondary measures; empty for others
 * @param harm the tests of a measure that is watched for harm, adjusted for all that are
 * @param ratio the ratio of counts
 * @param caveats what a reader must know beside the numbers
 * @param looks what looks before the end come to; of the primary measure alone
 */
public record Comparison(
    Measure measure,
    StintValues stints,
    OneDifference result,
    Optional<Verdict> verdict,
    OptionalDouble adjusted,
    Optional<HarmTest> harm,
    Optional<CountRatio> ratio,
    Set<Caveat> caveats,
    Optional<LooksFound> looks) {

  public Comparison {
    caveats = java.util.Collections.unmodifiableSet(new java.util.TreeSet<>(caveats));
  }

  Comparison withAdjusted(double p) {
    return new Comparison(
        measure, stints, result, verdict, OptionalDouble.of(p), harm, ratio, caveats, looks);
  }

  Comparison withHarm(HarmTest found) {
    return new Comparison(
        measure, stints, result, verdict, adjusted, Optional.of(found), ratio, caveats, looks);
  }

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

  /** The trend over the levels of a steps day; empty of two setups. */
  public Optional<Trend> trend() {
    return result instanceof Trend trend ? Optional.of(trend) : Optional.empty();
  }

  /** The verdict's fixed string; of a trend there may be no worthwhile trend. */
  public Optional<String> verdictText() {
    return verdict.map(found -> trend().isPresent() ? found.textOfTrend() : found.text());
  }

  /** After drift and setups; of levels after each one's mean, since they may bend. */
  public RiderNoise riderNoise() {
    return trend().flatMap(Trend::means).map(RiderNoise::of).orElseGet(() -> RiderNoise.of(result));
  }

  /** The confidence curve on the scale of the analysis. */
  public ConfidenceCurve curve() {
    return result.curve();
  }

  /**
   * True if a test may be said: not with too many values missing, nor on a day that someone ended
   * who knew what was on, nor beside an early stop.
   */
  public boolean tested() {
    return !caveats.contains(Caveat.MISSING)
        && !caveats.contains(Caveat.ENDED_FREELY)
        && !caveats.contains(Caveat.STOPPED_EARLY);
  }

  /** Estimated difference as said: B − A, or B/A on the ratio scale. */
  public double estimate() {
    return measure.scale().back(result.estimate());
  }

  /** An interval as said; empty if unbounded or without variation. */
  public Optional<Interval> interval(double level) {
    return shifts(level)
        .map(i -> new Interval(measure.scale().back(i.low()), measure.scale().back(i.high())));
  }

  /** An interval on the scale of the analysis; empty if unbounded or without variation. */
  public Optional<Interval> shifts(double level) {
    return result.noVariation() ? Optional.empty() : curve().interval(level);
  }

  /** Two-sided p of "no difference", over the looks where any was taken; 1 without variation. */
  public double p() {
    return looks.map(LooksFound::p).orElse(ordinaryP());
  }

  /** The same without regard to looks before the end. */
  public double ordinaryP() {
    return result.noVariation() ? 1 : curve().p(0);
  }

  /** True if the setups differ in this measure at level .05, adjusted where it is adjusted. */
  public boolean shown() {
    return tested() && !result.noVariation() && adjusted.orElse(p()) <= 0.05;
  }

  /**
   * Which end has the larger value: 1 = B or the highest level, 0 = A or the lowest; 1 if equal.
   */
  public int larger() {
    return result.estimate() >= 0 ? 1 : 0;
  }

  /** Which end is better, or larger where no direction is better. */
  public int better() {
    return measure.better() == Measure.Better.LOWER ? 1 - larger() : larger();
  }
}
