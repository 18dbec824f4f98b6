package blindlap.stats.pool;

import blindlap.stats.compare.HarmTest;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.noise.Spread;
import java.util.Optional;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * A measure beside the primary one, for riders in general: the plain mean of the riders' estimates
 * with its t on k − 1 degrees of freedom (docs/method.md#measures-of-a-series).
 *
 * @param estimate mean of the riders' estimates
 * @param standardError of the mean, above 0
 * @param riders number of riders, at least {@link RidersInGeneral#LEAST_RIDERS}
 */
public record RidersMean(double estimate, double standardError, int riders) {
  private static final double LEVEL = 0.05;

  /**
   * @param estimates one per rider
   * @return empty with too few riders, or where all of them agree to the last digit
   */
  public static Optional<RidersMean> of(double[] estimates) {
    int k = estimates.length;
    if (k < RidersInGeneral.LEAST_RIDERS) {
      return Optional.empty();
    }
    Spread spread = Spread.of(estimates);
    double error = spread.sd() / Math.sqrt(k);
    return error > 1e-12 * Math.abs(spread.mean())
        ? Optional.of(new RidersMean(spread.mean(), error, k))
        : Optional.empty();
  }

  /**
   * @param level such as .95, between 0 and 1
   */
  public Interval interval(double level) {
    return Interval.around(
        estimate, Quantiles.tUpper((1 - level) / 2, riders - 1.0) * standardError);
  }

  /** One-sided p of "the mean is above the shift". */
  private double pGreater(double shift) {
    return TDistribution.of(riders - 1.0).survivalProbability((estimate - shift) / standardError);
  }

  private double pLess(double shift) {
    return TDistribution.of(riders - 1.0).cumulativeProbability((estimate - shift) / standardError);
  }

  /** Two-sided p at a shift. */
  public double p(double shift) {
    return Math.min(1, 2 * Math.min(pGreater(shift), pLess(shift)));
  }

  /**
   * A watched harm, not yet adjusted: as docs/method.md#watched-harm with the t of the riders in
   * place of counts.
   *
   * @param less the shift −D, below 0
   * @param more the shift D, above 0
   */
  public HarmTest harm(double less, double more, HarmTest.Direction direction) {
    double up = pGreater(more);
    double down = pLess(less);
    return HarmTest.of(
        direction,
        up <= down,
        Math.min(1, 2 * Math.min(up, down)),
        pLess(more) <= LEVEL,
        pGreater(less) <= LEVEL);
  }
}
