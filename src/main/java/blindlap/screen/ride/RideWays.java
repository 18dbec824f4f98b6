package blindlap.screen.ride;

import blindlap.screen.part.PhonesDoor;
import org.jspecify.annotations.Nullable;

/**
 * Where the Ride page leads: on once all laps are ridden, and to the phones of the day at any time.
 *
 * @param review once the day is closed
 * @param recording where a recording of the day is brought in; null for nowhere
 * @param phones the phones of the day; null where none can come
 */
public record RideWays(Runnable review, @Nullable Runnable recording, @Nullable PhonesDoor phones) {
  /** Ways of a page to which no phone comes. */
  public RideWays(Runnable review, @Nullable Runnable recording) {
    this(review, recording, null);
  }
}
