package blindlap.recording;

/**
 * A recorder went through one of several gates.
 *
 * @param gate index of the gate, from 0
 * @param seconds after the first point, on the recorder's clock; interpolated
 * @param direction +1 from left to right, see {@link Gate}
 * @param speed metres a second, square to the gate
 * @param uncertainty standard deviation of the time, in seconds (docs/method.md#gates)
 * @param gap true if the recorder stopped or lost its way within five seconds
 * @param within true if the time itself lies in such a gap, so that it is a guess
 */
public record Pass(
    int gate,
    double seconds,
    int direction,
    double speed,
    double uncertainty,
    boolean gap,
    boolean within) {
  private static final double SLOW = 2;

  /** Slower than 2 m/s across the gate: whoever stands about there makes passes of noise. */
  public boolean slow() {
    return speed < SLOW;
  }
}
