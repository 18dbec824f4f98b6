package blindlap.plan;

import java.math.BigDecimal;

/**
 * A short line across a trail where the clock starts, is read or stops.
 *
 * @param name what people call the place
 * @param first one end
 * @param second the other
 * @param direction +1 if riders come from the left of the line from the first end to the second, −1
 *     if they come from its right
 */
public record TrailGate(String name, Point first, Point second, int direction) {
  /** A place on WGS 84, in degrees with at most seven decimals (about a centimetre). */
  public record Point(BigDecimal latitude, BigDecimal longitude) {
    /** True for the same place, 47.1 being 47.10. */
    public boolean sameAs(Point other) {
      return latitude.compareTo(other.latitude) == 0 && longitude.compareTo(other.longitude) == 0;
    }
  }

  /** True for a gate of the same name at the same place, passed in the same direction. */
  public boolean sameAs(TrailGate other) {
    return name.equals(other.name)
        && direction == other.direction
        && first.sameAs(other.first)
        && second.sameAs(other.second);
  }
}
