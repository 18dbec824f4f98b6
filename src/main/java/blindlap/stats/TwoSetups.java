package blindlap.stats;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * Comparison of two setups by re-randomisation over the orders that could have been drawn (METHOD 1
 * to 3): least-squares difference after drift, and its exact confidence curve. No distribution of
 * the noise is assumed (Fisher 1935, The Design of Experiments; Edgington and Onghena 2007,
 * Randomization Tests).
 *
 * <p>Use {@link #compare}; the result is immutable.
 */
public final class TwoSetups {
  private static final double NO_VARIATION = 1e-18;

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

  private TwoSetups(Assignments set, Fit fit, ConfidenceCurve curve, Sampling sampling) {
    this.set = set;
    this.estimate = fit.estimate;
    this.c = fit.c;
    this.noiseSd = fit.noiseSd;
    this.df = fit.df;
    this.used = fit.used;
    this.noVariation = fit.noVariation;
    this.sampling = sampling;
    this.sampled = !fit.noVariation && sampling.samples(set);
    this.curve = curve;
  }

  /**
   * Compares B with A.
   *
   * @param set the admissible orders, two setups, closed under swapping A and B
   * @param order the order ridden, a member of the set
   * @param values one value per stint; NaN where none
   * @param valid true where the stint counts
   * @param drift what is removed
   * @param sampling what to do with very large sets
   * @throws IllegalArgumentException if the set is not closed, the order not in it, a value is
   *     infinite, lengths differ, or too few stints are left; the message says which
   */
  public static TwoSetups compare(
      Assignments set,
      int[] order,
      double[] values,
      boolean[] valid,
      Drift drift,
      Sampling sampling) {
    check(set, order, values, valid);
    sampling.check(set);
    boolean[] use = new boolean[values.length];
    for (int i = 0; i < use.length; i++) {
      use[i] = valid[i] && !Double.isNaN(values[i]);
    }
    Fit fit = new Fit(order, values, use, drift);
    return new TwoSetups(set, fit, fit.noVariation ? flat() : curve(set, fit, sampling), sampling);
  }

  private static void check(Assignments set, int[] order, double[] values, boolean[] valid) {
    require(set.setups() == 2, "this comparison takes two setups, the set has " + set.setups());
    require(
        values.length == set.stints() && valid.length == set.stints(),
        "there are " + values.length + " values for " + set.stints() + " stints");
    require(set.contains(order), "the order is not one of the admissible orders");
    require(set.closedUnderRenaming(), "the set of orders is not closed under swapping A and B");
    for (double value : values) {
      require(!Double.isInfinite(value), "a value is infinite");
    }
  }

  private static void require(boolean condition, String message) {
    if (!condition) {
      throw new IllegalArgumentException(message);
    }
  }

  private static ConfidenceCurve flat() {
    return new ConfidenceCurve(new double[0], 1, 0, 1);
  }

  private static ConfidenceCurve curve(Assignments set, Fit fit, Sampling sampling) {
    if (!sampling.samples(set)) {
      KnotSink sink = new KnotSink(set.count().intValueExact(), fit.estimate, fit.c, fit.scale);
      new CurveWalk(set, fit.w, fit.e, fit.wz, sink).run();
      return sink.curve(fit.scale);
    }
    KnotSink sink = new KnotSink(2 * (sampling.draws() + 1), fit.estimate, fit.c, fit.scale);
    sink.observedAndMirror();
    UniformRandomProvider source = sampling.source();
    for (int draw = 0; draw < sampling.draws(); draw++) {
      double[] z = signs(set.random(source));
      sink.orderAndMirror(Residuals.dot(z, fit.e), Residuals.dot(z, fit.wz), quadratic(fit.w, z));
    }
    return sink.curve(fit.scale);
  }

  static double[] signs(int[] order) {
    double[] z = new double[order.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = order[i] - 0.5;
    }
    return z;
  }

  private static double quadratic(double[][] w, double[] z) {
    double sum = 0;
    for (int i = 0; i < z.length; i++) {
      sum += z[i] * Residuals.dot(w[i], z);
    }
    return sum;
  }

  /** Number of admissible orders, whether walked or sampled. */
  public java.math.BigInteger count() {
    return set.count();
  }

  /** Estimated difference B minus A, in the unit of the values. */
  public double estimate() {
    return estimate;
  }

  /** Information z'Wz of the ridden order. */
  public double c() {
    return c;
  }

  /** Stint-to-stint standard deviation after drift and setup, with {@link #df()}. */
  public double noiseSd() {
    return noiseSd;
  }

  /** Degrees of freedom of the noise: stints used less nuisance columns less 1. */
  public int df() {
    return df;
  }

  /** Number of stints used. */
  public int used() {
    return used;
  }

  /** True if nothing is left to vary once drift and setup are removed: no test is possible. */
  public boolean noVariation() {
    return noVariation;
  }

  /** True if the reference set was sampled. */
  public boolean sampled() {
    return sampled;
  }

  /** How the reference set was made. */
  public Sampling sampling() {
    return sampling;
  }

  /** Monte-Carlo standard error of a p-value; 0 where the set was walked whole. */
  public double pError(double p) {
    return sampled ? Math.sqrt(p * (1 - p) / sampling.draws()) : 0;
  }

  /** The confidence curve; meaningless where {@link #noVariation()}. */
  public ConfidenceCurve curve() {
    return curve;
  }

  /** The verdict for shifts −D and +D. */
  public Verdict verdict(double worthwhileLow, double worthwhileHigh) {
    return noVariation ? Verdict.NO_VARIATION : Verdict.of(curve, worthwhileLow, worthwhileHigh);
  }

  /** Least squares on the used stints; vectors have length N with zeros elsewhere. */
  private static final class Fit {
    final double[][] w;
    final double[] e;
    final double[] wz;
    final double estimate;
    final double c;
    final double noiseSd;
    final double scale;
    final int df;
    final int used;
    final boolean noVariation;

    Fit(int[] order, double[] values, boolean[] use, Drift drift) {
      Residuals residuals = new Residuals(use, drift);
      int n = 0;
      double mean = 0;
      for (int i = 0; i < use.length; i++) {
        n += use[i] ? 1 : 0;
        mean += use[i] ? values[i] : 0;
      }
      mean = n == 0 ? 0 : mean / n;
      double largest = 0;
      double[] y = new double[use.length];
      for (int i = 0; i < use.length; i++) {
        // Centring first keeps ties ties when values sit on a large offset (METHOD 2, "Ties" 1).
        y[i] = use[i] ? values[i] - mean : 0;
        largest = use[i] ? Math.max(largest, Math.abs(values[i])) : largest;
      }
      this.used = n;
      this.df = n - residuals.columns() - 1;
      require(
          df >= 1,
          "only "
              + n
              + (n == 1 ? " stint is" : " stints are")
              + " left with a value, too few for a comparison with drift "
              + drift.text());
      this.w = residuals.matrix();
      double[] z = signs(order);
      this.wz = residuals.apply(z);
      this.c = Residuals.dot(wz, wz);
      require(
          c > 1e-9 * n,
          "the stints left do not tell the setups apart: one setup has no value or follows the"
              + " drift");
      this.estimate = Residuals.dot(wz, y) / c;
      double[] rest = residuals.apply(y);
      this.e = new double[use.length];
      for (int i = 0; i < e.length; i++) {
        e[i] = rest[i] - estimate * wz[i];
      }
      double ss = Residuals.dot(e, e);
      this.noiseSd = Math.sqrt(ss / df);
      this.scale = Math.sqrt(ss / n) / Math.sqrt(c);
      this.noVariation = ss <= NO_VARIATION * n * largest * largest;
    }
  }
}
