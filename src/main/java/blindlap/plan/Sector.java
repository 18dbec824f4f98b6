package blindlap.plan;

/**
 * The way between two gates of a trail.
 *
 * @param from name of the gate at its beginning
 * @param to name of the gate at its end
 */
public record Sector(String from, String to) {}
