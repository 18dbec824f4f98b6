package blindlap.workshop;

/**
 * Sag: how far a damper or fork is compressed under the standing rider.
 *
 * <p>percent = 100·sag/stroke; both in the same length unit. Closed form.
 */
public final class Sag {
  private Sag() {}

  /**
   * @param strokeMm full stroke in mm, above 0
   * @param sagMm compression in mm, 0 to the stroke
   * @return sag in per cent of the stroke
   * @throws blindlap.fault.StatsException if a length is impossible
   */
  public static double percent(double strokeMm, double sagMm) {
    Workshop.positive("stroke_mm", strokeMm);
    Workshop.between("sag_mm", sagMm, 0, strokeMm);
    return 100 * sagMm / strokeMm;
  }

  /**
   * The way back.
   *
   * @param sagPercent sag in per cent of the stroke, 0 to 100
   * @return compression in mm
   * @throws blindlap.fault.StatsException if a value is impossible
   */
  public static double millimetres(double strokeMm, double sagPercent) {
    Workshop.positive("stroke_mm", strokeMm);
    Workshop.between("sag_percent", sagPercent, 0, 100);
    return sagPercent * strokeMm / 100;
  }
}
