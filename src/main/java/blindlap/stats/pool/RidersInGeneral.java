package blindlap.stats.pool;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;

/**
 * A difference for riders in general, from one estimate per rider
 * (docs/method.md#riders-in-general). Primary: the plain mean with its t interval on k − 1 degrees
 * of freedom, which asks nothing of the riders' noises. Where the number of stints or the noise
 * differs more than threefold between riders: the modified interval of Hartung and Knapp (Röver,
 * Knapp and Friede 2015, BMC Med. Res. Methodol. 15:99).
 *
 * <p>Simulated level .04 to .05 for the mean, at most .05 for the other (docs/pooling.md). With
 * three riders or fewer the interval is wider than 1.2 noise SD, so that no verdict is given.
 *
 * @param method how
 * @param estimate mean over riders, equal weights or by REML weights
 * @param interval95 95 % interval
 * @param interval90 90 % interval: one-sided 5 % tests
 * @param riders number of riders
 */
public record RidersInGeneral(
    Method method, double estimate, Interval interval95, Interval interval90, int riders) {
  /** Least number of riders for a verdict. */
  public static final int LEAST_RIDERS = 4;

  private static final double UNEVEN = 3;
  private static final double TAIL_95 = 0.025;
  private static final double TAIL_90 = 0.05;

  /** How the interval was made. */
  public enum Method {
    EQUAL_WEIGHT_T,
    MODIFIED_HARTUNG_KNAPP
  }

  /**
   * Pools riders.
   *
   * @param estimates one per rider, at least two
   * @param standardErrors of the estimates
   * @param stints mean number of stints of a rider's session
   * @param noiseSds noise SD of each rider
   * @throws StatsException if there are fewer than two riders, lists differ in length, or hold
   *     impossible values
   */
  public static RidersInGeneral of(
      double[] estimates, double[] standardErrors, double[] stints, double[] noiseSds) {
    int k = Require.sample("estimates", estimates, 2).length;
    if (standardErrors.length != k || stints.length != k || noiseSds.length != k) {
      throw new StatsException("estimates", "must have one entry per rider, as the other lists.");
    }
    double t95 = Quantiles.tUpper(TAIL_95, k - 1.0);
    double t90 = Quantiles.tUpper(TAIL_90, k - 1.0);
    if (uneven(stints) || uneven(noiseSds)) {
      double[] variances = new double[k];
      for (int i = 0; i < k; i++) {
        variances[i] = standardErrors[i] * standardErrors[i];
      }
      RiderPooling.Reml reml = RiderPooling.reml(estimates, variances);
      Interval wide = reml.modifiedHartungKnapp95();
      return new RidersInGeneral(
          Method.MODIFIED_HARTUNG_KNAPP,
          reml.estimate(),
          wide,
          Interval.around(reml.estimate(), wide.halfWidth() * t90 / t95),
          k);
    }
    RiderPooling.Mean mean = RiderPooling.mean(estimates);
    return new RidersInGeneral(
        Method.EQUAL_WEIGHT_T,
        mean.estimate(),
        mean.interval95(),
        Interval.around(mean.estimate(), mean.interval95().halfWidth() * t90 / t95),
        k);
  }

  private static boolean uneven(double[] values) {
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (double value : values) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
    return most > UNEVEN * least * (1 + 1e-9);
  }

  /** True if there are too few riders for a verdict on riders in general. */
  public boolean tooFew() {
    return riders < LEAST_RIDERS;
  }

  /**
   * The verdict as in docs/method.md#verdict, from the two intervals; limits that touch decide
   * nothing.
   *
   * @param worthwhile D on the scale of the estimates, above 0
   * @throws IllegalStateException if there are too few riders
   */
  public Verdict verdict(double worthwhile) {
    if (tooFew()) {
      throw new IllegalStateException("too few riders for a verdict");
    }
    Require.positive("worthwhile", worthwhile);
    if (interval95.halfWidth() == 0) {
      return Verdict.NO_VARIATION;
    }
    boolean real = interval95.low() > 0 || interval95.high() < 0;
    boolean big = interval90.low() > worthwhile || interval90.high() < -worthwhile;
    boolean within = interval90.low() > -worthwhile && interval90.high() < worthwhile;
    if (real && big) {
      return Verdict.REAL_AND_WORTHWHILE;
    }
    if (within) {
      return real ? Verdict.REAL_BUT_SMALL : Verdict.NO_WORTHWHILE_DIFFERENCE;
    }
    return real ? Verdict.DIRECTION_KNOWN : Verdict.NOT_SETTLED;
  }
}
