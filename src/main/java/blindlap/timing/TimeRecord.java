package blindlap.timing;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a watch said: both clocks at both ends, so that a laptop that slept or whose clock was set
 * can be told apart from a slow lap.
 *
 * @param started wall clock at the start
 * @param stopped wall clock at the end
 * @param monotonicNanos elapsed time by the clock that cannot be set, in nanoseconds; 0 where it
 *     was lost because the program ended while the watch ran
 * @param timedBy who timed it
 * @param typed a time typed in instead, in seconds; null if none
 */
public record TimeRecord(
    Instant started,
    Instant stopped,
    long monotonicNanos,
    TimedBy timedBy,
    @Nullable BigDecimal typed) {

  /** Who held the watch. */
  public enum TimedBy {
    RIDER,
    STARTER,
    OTHER
  }

  /** Largest disagreement of the two clocks at which the time counts. */
  public static final Duration AGREEMENT = Duration.ofMillis(200);

  /** Elapsed time by the wall clock, in nanoseconds. */
  public long wallNanos() {
    return Duration.between(started, stopped).toNanos();
  }

  /** True if the two clocks disagree by more than 0.2 s: slept, or clock changed. */
  public boolean doubtful() {
    return Math.abs(wallNanos() - monotonicNanos) > AGREEMENT.toNanos();
  }

  /** The time that counts, in seconds; null if doubtful and nothing was typed. */
  public @Nullable BigDecimal seconds() {
    if (typed != null) {
      return typed;
    }
    return doubtful() ? null : BigDecimal.valueOf(monotonicNanos, 9);
  }
}
