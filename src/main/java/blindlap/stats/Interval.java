package blindlap.stats;

/** A closed interval, in the unit of what it bounds. */
public record Interval(double low, double high) {
  /** Half of its width. */
  public double halfWidth() {
    return (high - low) / 2;
  }

  /** The interval of the opposite sign. */
  public Interval mirrored() {
    return new Interval(-high, -low);
  }
}
