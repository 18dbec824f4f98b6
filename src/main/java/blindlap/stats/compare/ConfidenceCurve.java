package blindlap.stats.compare;

import blindlap.stats.distribution.Interval;
import java.util.Optional;

/**
 * The exact confidence curve (docs/method.md#confidence-curve) for one difference (B minus A):
 * every admissible order changes sides at one knot, so counts, p-values, intervals and the verdict
 * are all read from one sorted list. Test inversion after Garthwaite 1996, Biometrics 52:1387;
 * two-sided p is twice the smaller tail, at most 1.
 *
 * <p>Ties count on both sides (conservative), with the tolerances of docs/method.md#ties.
 */
public final class ConfidenceCurve {
  private static final double TIE = 1e-9;

  private final double[] knots;
  private final long always;
  private final double estimate;
  private final double scale;

  /**
   * @param knots finite knots, ascending; taken over
   * @param always number of orders that count at every shift, the observed one included
   * @param estimate the estimated difference
   * @param scale root mean square residual in units of the difference, for tie tolerances
   */
  ConfidenceCurve(double[] knots, long always, double estimate, double scale) {
    this.knots = knots;
    this.always = always;
    this.estimate = estimate;
    this.scale = scale;
  }

  /** Number of orders in the reference set. */
  public long total() {
    return always + knots.length;
  }

  /** Number of orders that count at every shift. */
  public long always() {
    return always;
  }

  /** The estimated difference, where the curve has its top. */
  public double estimate() {
    return estimate;
  }

  /** A sorted copy of the finite knots. */
  public double[] knots() {
    return knots.clone();
  }

  /** Number of orders whose statistic at this shift is at least the observed one. */
  public long countPlus(double shift) {
    return always + firstAbove(shift + tolerance(shift));
  }

  /** Number of orders whose statistic at this shift is at most the observed one. */
  public long countMinus(double shift) {
    return always + knots.length - firstFrom(shift - tolerance(shift));
  }

  /** One-sided p for "B is greater than A by more than the shift". */
  public double pGreater(double shift) {
    return (double) countPlus(shift) / total();
  }

  /** One-sided p for "B exceeds A by less than the shift". */
  public double pLess(double shift) {
    return (double) countMinus(shift) / total();
  }

  /** Two-sided p at a shift. */
  public double p(double shift) {
    return Math.min(1, 2.0 * Math.min(countPlus(shift), countMinus(shift)) / total());
  }

  /**
   * The closed set of shifts whose two-sided p exceeds 1 − level.
   *
   * @param level for example .95
   * @return the interval, or empty if no number bounds it (too few orders)
   */
  public Optional<Interval> interval(double level) {
    long need = largestCount((1 - level) / 2) + 1;
    long j = need - always;
    if (j <= 0) {
      return Optional.empty();
    }
    return Optional.of(new Interval(knots[(int) j - 1], knots[(int) (knots.length - j)]));
  }

  /** Largest count c with c/total at most alpha: decisions compare counts, never rounded p. */
  public long largestCount(double alpha) {
    return (long) Math.floor(alpha * total() + TIE);
  }

  /** True if the one-sided test "greater than the shift" rejects at this level. */
  public boolean exceeds(double shift, double alpha) {
    return countPlus(shift) <= largestCount(alpha);
  }

  /** True if the one-sided test "less than the shift" rejects at this level. */
  public boolean fallsShortOf(double shift, double alpha) {
    return countMinus(shift) <= largestCount(alpha);
  }

  private double tolerance(double shift) {
    return TIE * Math.max(scale, Math.abs(shift - estimate));
  }

  private int firstAbove(double x) {
    int low = 0;
    int high = knots.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (knots[middle] <= x) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private int firstFrom(double x) {
    int low = 0;
    int high = knots.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (knots[middle] < x) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
