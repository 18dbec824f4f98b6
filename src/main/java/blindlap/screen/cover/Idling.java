package blindlap.screen.cover;

import blindlap.wording.SwapWords;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.function.LongSupplier;

/** Since when nobody has touched a page that only the helper may see, and when it closes itself. */
public final class Idling {
  /** How long such a page stays open untouched, unless the helper says otherwise. */
  public static final Duration LIMIT = Duration.ofMinutes(2);

  private final Clock clock;
  private final LongSupplier monotonic;
  private Instant touched;
  private long touchedNanos;
  private Duration limit = LIMIT;

  /**
   * @param clock wall clock
   * @param monotonic nanoseconds that only ever grow
   */
  public Idling(Clock clock, LongSupplier monotonic) {
    this.clock = clock;
    this.monotonic = monotonic;
    this.touched = clock.instant();
    this.touchedNanos = monotonic.getAsLong();
  }

  /** For pages that have no other clock. */
  public Idling(Clock clock) {
    this(clock, () -> 0);
  }

  /** How long it stays open untouched. */
  public Duration limit() {
    return limit;
  }

  /** Sets how long it stays open untouched. */
  public void limit(Duration time) {
    limit = time;
  }

  /** Someone is at the page. */
  public void touch() {
    touched = clock.instant();
    touchedNanos = monotonic.getAsLong();
  }

  /** True once the page has to be closed. */
  public boolean over() {
    return time().compareTo(limit) >= 0;
  }

  /** When the page closes itself, such as "closes itself in 1:52". */
  public String words() {
    Duration left = limit.minus(time());
    return SwapWords.say("idle", SwapWords.countdown(left.isNegative() ? Duration.ZERO : left));
  }

  /**
   * By the clock that says the most: one may be set back, the other stands still while the computer
   * sleeps, and neither must keep the page open.
   */
  private Duration time() {
    Duration wall = Duration.between(touched, clock.instant()).abs();
    Duration counted = Duration.ofNanos(monotonic.getAsLong() - touchedNanos);
    return wall.compareTo(counted) > 0 ? wall : counted;
  }
}
