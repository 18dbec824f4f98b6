package blindlap.recording;

/** How exactly a recorder tells when it went through a gate (docs/method.md#gates). */
public final class PassUncertainty {
  /** The radius of 95 % is that many standard deviations of one axis. */
  private static final double RADIUS_IN_SD = 2.45;

  /** What a rider may gain or lose of speed, m/s², between two points. */
  private static final double CHANGE = 1;

  private PassUncertainty() {}

  /**
   * The standard deviation of a time of passing, in seconds.
   *
   * @param radius95 metres within which a place lies with 95 %
   * @param step seconds between the two points
   * @param speed metres a second, square to the gate
   */
  public static double of(double radius95, double step, double speed) {
    return Math.hypot(radius95 / (RADIUS_IN_SD * speed), CHANGE * step * step / (8 * speed));
  }
}
