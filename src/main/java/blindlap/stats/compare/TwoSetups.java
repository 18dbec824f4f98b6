package blindlap.stats.compare;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import org.apache.commons.rng.UniformRandomProvider;
import org.jspecify.annotations.Nullable;

/**
 * Comparison of two setups by re-randomisation over the orders that could have been drawn
 * (docs/method.md#two-setups, docs/method.md#confidence-curve, docs/method.md#voids): least-squares
 * difference after drift, and its exact confidence curve. No distribution of the noise is assumed
 * (Fisher 1935, The Design of Experiments; Edgington and Onghena 2007, Randomization Tests).
 *
 * <p>Use {@link #compare}; the result is immutable.
 */
public final class TwoSetups implements OneDifference {
  private final Assignments set;
  private final double estimate;
  private final double c;
  private final double noiseSd;
  private final int df;
  private final int used;
  private final boolean noVariation;
  private final boolean sampled;
  private final Sampling sampling;
  private final ConfidenceCurve curve;

  private TwoSetups(
      Assignments set, SetupFit fit, boolean sampled, Sampling sampling, ConfidenceCurve curve) {
    this.set = set;
    this.estimate = fit.estimate;
    this.c = fit.c;
    this.noiseSd = fit.noiseSd;
    this.df = fit.df;
    this.used = fit.used;
    this.noVariation = fit.noVariation;
    this.sampling = sampling;
    this.sampled = sampled;
    this.curve = curve;
  }

  /** As below, with a drift alone. */
  public static TwoSetups compare(
      Assignments set,
      int[] order,
      double[] values,
      boolean[] valid,
      Drift drift,
      Sampling sampling) {
    return compare(set, order, values, valid, Nuisance.of(drift), sampling);
  }

  /**
   * Compares B with A.
   *
   * @param set the admissible orders, two setups, closed under swapping A and B
   * @param order the order ridden, a member of the set
   * @param values one value per stint; NaN where none
   * @param valid true where the stint counts
   * @param nuisance what is removed; a stint on which a covariate is not known is masked
   * @param sampling what to do with very large sets
   * @throws StatsException if the set is not closed, the order not in it, a value is infinite,
   *     lengths differ, or too few stints are left; its argument says which
   */
  public static TwoSetups compare(
      Assignments set,
      int[] order,
      double[] values,
      boolean[] valid,
      Nuisance nuisance,
      Sampling sampling) {
    DayCheck.twoSetups(set);
    DayCheck.order(set, order);
    boolean[] use = nuisance.known(DayCheck.used(set, "values", values, valid));
    sampling.check(set);
    SetupFit fit = new SetupFit(order, values, use, Residuals.required(use, nuisance));
    boolean sampled = !fit.noVariation && sampling.samples(set);
    ConfidenceCurve curve =
        fit.noVariation
            ? flat(set)
            : curve(set, fit, sampling.draws(), sampled ? sampling.source() : null);
    return new TwoSetups(set, fit, sampled, sampling, curve);
  }

  /** Without variation every order ties with every other. */
  static ConfidenceCurve flat(Assignments set) {
    return new ConfidenceCurve(
        new double[0], set.count().min(BigInteger.valueOf(Long.MAX_VALUE)).longValue(), 0, 1);
  }

  /** The curve of a fit: every order, or if there is a source that many draws from it. */
  static ConfidenceCurve curve(
      Assignments set, SetupFit fit, int draws, @Nullable UniformRandomProvider source) {
    int capacity = source == null ? set.count().intValueExact() : 2 * (draws + 1);
    KnotSink sink = new KnotSink(capacity, fit.estimate, fit.c, fit.scale);
    CurveWalk walk = new CurveWalk(set, fit.residuals, fit.e, fit.wz, sink);
    if (source == null) {
      walk.run();
    } else {
      sink.observedAndMirror();
      walk.sample(draws, source);
    }
    return sink.curve(fit.scale);
  }

  /** Number of admissible orders, whether walked or sampled. */
  @Override
  public BigInteger count() {
    return set.count();
  }

  /** Estimated difference B minus A, in the unit of the values. */
  @Override
  public double estimate() {
    return estimate;
  }

  /** Information z'Wz of the ridden order. */
  @Override
  public double c() {
    return c;
  }

  /** Stint-to-stint standard deviation after drift and setup, with {@link #df()}. */
  @Override
  public double noiseSd() {
    return noiseSd;
  }

  /** Degrees of freedom of the noise: stints used less nuisance columns less 1. */
  @Override
  public int df() {
    return df;
  }

  /** Number of stints used. */
  @Override
  public int used() {
    return used;
  }

  /** True if nothing is left to vary once drift and setup are removed: no test is possible. */
  @Override
  public boolean noVariation() {
    return noVariation;
  }

  /** True if the reference set was sampled. */
  @Override
  public boolean sampled() {
    return sampled;
  }

  /** How the reference set was made. */
  @Override
  public Sampling sampling() {
    return sampling;
  }

  /** Monte-Carlo standard error of a p-value; 0 where the set was walked whole. */
  @Override
  public double pError(double p) {
    return sampled ? Math.sqrt(p * (1 - p) / sampling.draws()) : 0;
  }

  /**
   * The confidence curve. Where {@link #noVariation()} every order counts on both sides at every
   * shift and no interval is bounded.
   */
  @Override
  public ConfidenceCurve curve() {
    return curve;
  }

  /** The verdict for shifts −D and +D. */
  @Override
  public Verdict verdict(double worthwhileLow, double worthwhileHigh) {
    return noVariation ? Verdict.NO_VARIATION : Verdict.of(curve, worthwhileLow, worthwhileHigh);
  }
}
