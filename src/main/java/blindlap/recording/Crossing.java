package blindlap.recording;

/**
 * A track went through a gate.
 *
 * @param seconds on the recorder's clock
 * @param direction +1 from the left to the right of the line from the gate's first end to its
 *     second, −1 the other way
 * @param fix index of the point at the end of the straight line that went through, or that leaves
 *     the gate after a rest on it
 */
public record Crossing(double seconds, int direction, int fix) {}
