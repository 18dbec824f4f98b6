package blindlap.recording;

/**
 * A gate of a trail and the way in which riders go through it.
 *
 * @param gate where
 * @param direction of {@link Crossing}
 */
public record CourseGate(Gate gate, int direction) {}
