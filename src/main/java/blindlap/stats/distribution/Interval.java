package blindlap.stats.distribution;

/**
 * A closed interval, in the unit of what it bounds; an end that does not exist is NaN.
 *
 * @param low lower end
 * @param high upper end
 */
public record Interval(double low, double high) {
  /** An interval without defined ends. */
  public static final Interval UNDEFINED = new Interval(Double.NaN, Double.NaN);

  /** centre ± 1.96·se with 1.96 = Φ⁻¹(0.975). */
  public static Interval normal95(double centre, double se) {
    return new Interval(centre - Quantiles.Z_975 * se, centre + Quantiles.Z_975 * se);
  }

  /** centre ± half. */
  public static Interval around(double centre, double half) {
    return new Interval(centre - half, centre + half);
  }

  /** Half of its width. */
  public double halfWidth() {
    return (high - low) / 2;
  }

  /** The interval of the opposite sign. */
  public Interval mirrored() {
    return new Interval(-high, -low);
  }
}
