package blindlap.plan;

import org.jspecify.annotations.Nullable;

/**
 * Where the time of a measure comes from, and on which way.
 *
 * @param by what counts
 * @param sector the way between two gates of the plan's trail version; null for the whole lap, and
 *     where no recording is used
 */
public record Timing(TimedBy by, @Nullable Sector sector) {
  /** As usual: a watch, from start to finish. */
  public static final Timing WATCH = new Timing(TimedBy.WATCH, null);
}
