package blindlap.plot;

/**
 * An interval.
 *
 * @param low lower limit; negative infinity when it is not bounded
 * @param high upper limit, not below the lower; positive infinity when it is not bounded
 */
public record Limits(double low, double high) {
  /** Checks the order. */
  public Limits {
    if (!(low <= high)) {
      throw new IllegalArgumentException("An interval cannot go from " + low + " to " + high);
    }
  }
}
