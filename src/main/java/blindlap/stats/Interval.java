package blindlap.stats;

/**
 * A closed interval; an end that does not exist is NaN.
 *
 * @param low lower end
 * @param high upper end
 */
public record Interval(double low, double high) {
  /** An interval without defined ends. */
  public static final Interval UNDEFINED = new Interval(Double.NaN, Double.NaN);

  /** centre ± 1.96·se with 1.96 = Φ⁻¹(0.975). */
  static Interval normal95(double centre, double se) {
    return new Interval(centre - Quantiles.Z_975 * se, centre + Quantiles.Z_975 * se);
  }

  /** centre ± half. */
  static Interval around(double centre, double half) {
    return new Interval(centre - half, centre + half);
  }
}
