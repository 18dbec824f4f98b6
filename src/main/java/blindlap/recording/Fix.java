package blindlap.recording;

/**
 * A recorded point.
 *
 * @param at where
 * @param seconds when, after the first point of the track
 * @param radius95 metres within which the place lies with 95 %
 * @param resumes true if the recorder had stopped in front of it
 * @param height metres above the sea as recorded; NaN where it is not
 */
public record Fix(Position at, double seconds, double radius95, boolean resumes, double height) {
  /** Common practice, no source: what a recorder that tells nothing is taken to hold. */
  public static final double USUAL_RADIUS = 3;

  public Fix(Position at, double seconds) {
    this(at, seconds, USUAL_RADIUS, false, Double.NaN);
  }
}
