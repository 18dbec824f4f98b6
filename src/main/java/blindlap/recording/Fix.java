package blindlap.recording;

/**
 * A recorded point.
 *
 * @param at where
 * @param seconds when, on the recorder's clock
 */
public record Fix(Position at, double seconds) {}
