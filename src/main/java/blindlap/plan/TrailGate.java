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
  public record Point(BigDecimal latitude, BigDecimal longitude) {}
}
