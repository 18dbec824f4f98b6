package blindlap.screen.ride;

import org.jspecify.annotations.Nullable;

/**
 * Where the Ride page leads on to once all laps are ridden.
 *
 * @param review once the day is closed
 * @param recording where a recording of the day is brought in; null for nowhere
 */
public record RideWays(Runnable review, @Nullable Runnable recording) {}
