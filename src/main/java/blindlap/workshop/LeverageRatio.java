package blindlap.workshop;

/**
 * Mean leverage ratio of a linkage: wheel travel per damper stroke.
 *
 * <p>ratio = wheel travel/stroke, both full and in the same unit. The ratio of most linkages varies
 * along the travel; this is its mean only.
 */
public final class LeverageRatio {
  private LeverageRatio() {}

  /**
   * @param wheelTravelMm full vertical wheel travel in mm, above 0
   * @param strokeMm full damper stroke in mm, above 0
   * @throws blindlap.fault.StatsException if a length is not above 0
   */
  public static double mean(double wheelTravelMm, double strokeMm) {
    return Workshop.positive("wheel_travel_mm", wheelTravelMm)
        / Workshop.positive("stroke_mm", strokeMm);
  }

  /**
   * The way back: the wheel travel of a damper stroke.
   *
   * @return wheel travel in mm
   * @throws blindlap.fault.StatsException if a value is not above 0
   */
  public static double wheelTravelMm(double ratio, double strokeMm) {
    return Workshop.positive("ratio", ratio) * Workshop.positive("stroke_mm", strokeMm);
  }

  /**
   * The other way back: the damper stroke of a wheel travel.
   *
   * @return stroke in mm
   * @throws blindlap.fault.StatsException if a value is not above 0
   */
  public static double strokeMm(double ratio, double wheelTravelMm) {
    return Workshop.positive("wheel_travel_mm", wheelTravelMm) / Workshop.positive("ratio", ratio);
  }
}
