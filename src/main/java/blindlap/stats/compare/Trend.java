package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.LevelScale;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * Trend over the levels of one setting by re-randomisation (docs/method.md#trend): the difference
 * from the lowest to the highest level after drift, with its exact confidence curve, and whether
 * the trend bends. The curve is that of two setups with the centred level in place of ±1/2; every
 * order has one knot, for mirror images belong to the set only where levels are symmetric.
 *
 * <p>Use {@link #of}; the result is immutable.
 */
public final class Trend implements OneDifference {
  private static final double TAIL = 0.025;

  private final Assignments set;
  private final SetupFit fit;
  private final ConfidenceCurve curve;
  private final Optional<Bend> bend;
  private final Optional<LevelMeans> means;
  private final double[] levels;
  private final boolean sampled;
  private final Sampling sampling;

  private Trend(
      Assignments set,
      double[] levels,
      SetupFit fit,
      ConfidenceCurve curve,
      Optional<Bend> bend,
      Optional<LevelMeans> means,
      boolean sampled,
      Sampling sampling) {
    this.set = set;
    this.fit = fit;
    this.curve = curve;
    this.bend = bend;
    this.means = means;
    this.levels = levels.clone();
    this.sampled = sampled;
    this.sampling = sampling;
  }

  /**
   * Follows the values over the levels.
   *
   * @param set the admissible orders, one setup per level
   * @param levels the number of each level, for setup A first; no two equal
   * @param order the order ridden, a member of the set
   * @param values one value per stint; NaN where none
   * @param valid true where the stint counts
   * @param nuisance what is removed; a stint on which a covariate is not known is masked
   * @param sampling what to do with very large sets
   * @throws StatsException if levels are equal, or values do not fit or do not tell levels apart
   */
  public static Trend of(
      Assignments set,
      double[] levels,
      int[] order,
      double[] values,
      boolean[] valid,
      Nuisance nuisance,
      Sampling sampling) {
    LevelScale.check(set, levels);
    DayCheck.order(set, order);
    boolean[] use = nuisance.known(DayCheck.used(set, "values", values, valid));
    sampling.check(set);
    Residuals residuals = Residuals.required(use, nuisance);
    double[] x = LevelScale.centred(levels);
    double[] z = Arrays.stream(order).mapToDouble(level -> x[level]).toArray();
    SetupFit fit = fit(z, values, use, residuals);
    if (fit.noVariation) {
      ConfidenceCurve flat = TwoSetups.flat(set);
      return new Trend(set, levels, fit, flat, Optional.empty(), Optional.empty(), false, sampling);
    }
    boolean sampled = sampling.samples(set);
    int capacity = sampled ? sampling.draws() + 1 : set.count().intValueExact();
    KnotSink sink = new KnotSink(capacity, fit.estimate, fit.c, fit.scale);
    double loose = 2 * DayCheck.rounding(values, use) / fit.noiseSd;
    Optional<Bend> bend = walk(set, fit, x, order, use, sink, loose, sampled ? sampling : null);
    return new Trend(
        set,
        levels,
        fit,
        sink.curve(fit.scale),
        bend,
        LevelMeans.of(set, levels, order, values, use, fit),
        sampled,
        sampling);
  }

  /**
   * The estimate alone, of stints at levels of their own, such as those that were really on.
   *
   * @param at the level of every stint, in the unit of the levels
   * @return without a curve that says anything; no variation where the values do not vary
   * @throws StatsException if the values do not fit or do not tell levels apart
   */
  public static Trend estimateAt(
      Assignments set,
      double[] levels,
      double[] at,
      double[] values,
      boolean[] valid,
      Nuisance nuisance) {
    LevelScale.check(set, levels);
    DayCheck.length(set, "fitted", at.length, "levels");
    boolean[] use = nuisance.known(DayCheck.used(set, "values", values, valid));
    double mean = Arrays.stream(levels).average().orElseThrow();
    double[] z =
        Arrays.stream(at).map(level -> (level - mean) / LevelScale.range(levels)).toArray();
    SetupFit fit = fit(z, values, use, Residuals.required(use, nuisance));
    return new Trend(
        set,
        levels,
        fit,
        TwoSetups.flat(set),
        Optional.empty(),
        Optional.empty(),
        false,
        Sampling.PREFERRED);
  }

  /** Hands every order's sums, or a sample's, to the sink, and counts their bends. */
  private static Optional<Bend> walk(
      Assignments set,
      SetupFit fit,
      double[] x,
      int[] order,
      boolean[] use,
      KnotSink sink,
      double loose,
      @Nullable Sampling sample) {
    Residuals residuals = fit.residuals;
    double[][] vectors = {fit.e, fit.wz, fit.wy};
    Bend.Tally tally = bend(set, fit, x, order, use, residuals, vectors, loose);
    int columns = residuals.columns();
    TrendWalk walk =
        new TrendWalk(
            set,
            residuals,
            use,
            x,
            LevelScale.bent(x),
            vectors,
            sums -> {
              sink.order(sums[0], sums[1], TrendWalk.product(sums, columns, 4, 0, 0));
              tally.order(sums);
            });
    if (sample == null) {
      walk.run();
    } else {
      walk.visit(order);
      walk.sample(sample.draws(), sample.source());
    }
    return x.length > 2 && fit.df > 1 ? Optional.of(tally.found()) : Optional.empty();
  }

  private static SetupFit fit(double[] z, double[] values, boolean[] use, Residuals residuals) {
    return new SetupFit(
        z,
        values,
        use,
        residuals,
        () ->
            new Unusable(
                "values",
                "do not tell the levels apart: on the stints left there is one level, or levels"
                    + " follow the drift.",
                DayFault.LEVELS_NOT_APART));
  }

  private static Bend.Tally bend(
      Assignments set,
      SetupFit fit,
      double[] x,
      int[] order,
      boolean[] use,
      Residuals residuals,
      double[][] vectors,
      double loose) {
    double[][] observed = new double[1][];
    new TrendWalk(
            set, residuals, use, x, LevelScale.bent(x), vectors, sums -> observed[0] = sums.clone())
        .visit(order);
    double total = Residuals.dot(fit.wy, fit.wy);
    return new Bend.Tally(total, fit.df - 1, residuals.columns(), observed[0], loose);
  }

  /** Number of admissible orders, whether walked or sampled. */
  @Override
  public BigInteger count() {
    return set.count();
  }

  /** From the lowest to the highest level, in the unit of the values. */
  @Override
  public double estimate() {
    return fit.estimate;
  }

  /** The same per unit of the levels. */
  public double perUnit(double[] levels) {
    return fit.estimate / LevelScale.range(levels);
  }

  /** Stint-to-stint standard deviation after drift and trend, with {@link #df()}. */
  @Override
  public double noiseSd() {
    return fit.noiseSd;
  }

  /** Degrees of freedom of the noise: stints used less nuisance columns less 1. */
  @Override
  public int df() {
    return fit.df;
  }

  /** True if nothing is left to vary once drift and trend are removed: no test is possible. */
  @Override
  public boolean noVariation() {
    return fit.noVariation;
  }

  /** True if the reference set was sampled. */
  @Override
  public boolean sampled() {
    return sampled;
  }

  /** Monte-Carlo standard error of a p-value; 0 where the set was walked whole. */
  @Override
  public double pError(double p) {
    return sampled ? Math.sqrt(p * (1 - p) / sampling.draws()) : 0;
  }

  @Override
  public double c() {
    return fit.c;
  }

  @Override
  public int used() {
    return fit.used;
  }

  @Override
  public Sampling sampling() {
    return sampling;
  }

  /** The confidence curve of the difference from the lowest to the highest level. */
  @Override
  public ConfidenceCurve curve() {
    return curve;
  }

  /** Whether the trend bends; empty for two levels, without variation, or if no noise is left. */
  public Optional<Bend> bend() {
    return bend;
  }

  /**
   * The mean of every level; empty without variation, if no noise is left beside the levels, or if
   * the levels ridden follow the drift.
   */
  public Optional<LevelMeans> means() {
    return means;
  }

  /** True if the two-sided test at 5 % finds a trend. */
  public boolean real() {
    return !noVariation() && (curve.exceeds(0, TAIL) || curve.fallsShortOf(0, TAIL));
  }

  /**
   * The setup of which may be said that it is better than both ends: the bend's p is .05 or less
   * and it beats each end (docs/method.md#trend).
   */
  public OptionalInt middleBetter(boolean lowerIsBetter) {
    return bend.filter(Bend::real).isPresent()
        ? means.map(found -> found.beatsBothEnds(lowerIsBetter)).orElse(OptionalInt.empty())
        : OptionalInt.empty();
  }

  /**
   * The setup at the end of the levels of which may be said that it was still getting better there,
   * so that the answer may lie beyond: the trend's p is .05 or less, and the best mean is that of
   * the end that the trend leads to (docs/method.md#trend).
   */
  public OptionalInt stillBetter(boolean lowerIsBetter) {
    if (!real() || means.isEmpty()) {
      return OptionalInt.empty();
    }
    boolean leadsUp = lowerIsBetter ? fit.estimate < 0 : fit.estimate > 0;
    int end = 0;
    for (int setup = 1; setup < levels.length; setup++) {
      boolean further = leadsUp ? levels[setup] > levels[end] : levels[setup] < levels[end];
      end = further ? setup : end;
    }
    return means.get().best(lowerIsBetter) == end ? OptionalInt.of(end) : OptionalInt.empty();
  }

  /**
   * The verdict for shifts −D and +D over the whole range; {@link Verdict#textOfTrend} is its fixed
   * string. That there is no worthwhile difference says here that there is no worthwhile trend: the
   * middle may still be best. Where {@link OrderSet#ofTrend} attains no level, the day could not
   * show anything, whatever the counts.
   */
  @Override
  public Verdict verdict(double worthwhileLow, double worthwhileHigh) {
    return noVariation() ? Verdict.NO_VARIATION : Verdict.of(curve, worthwhileLow, worthwhileHigh);
  }
}
