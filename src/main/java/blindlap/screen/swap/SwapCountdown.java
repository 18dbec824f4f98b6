package blindlap.screen.swap;

import blindlap.session.HelperEntry;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * How long a handling has taken. It counts by a clock that cannot be set, so that setting the wall
 * clock makes no handling shorter or longer than another. Only what lies before a start of the
 * program is taken from the wall clock, which alone survives it.
 */
final class SwapCountdown {
  private final Clock wall;
  private final LongSupplier monotonic;
  private int stint = -1;
  private @Nullable Instant begun;
  private Duration before = Duration.ZERO;
  private long from;

  SwapCountdown(Clock wall, LongSupplier monotonic) {
    this.wall = wall;
    this.monotonic = monotonic;
  }

  /** Takes up a stint; one that this countdown follows already goes on. */
  void follow(HelperEntry entry) {
    Instant at = entry.begun();
    if (entry.stint() == stint && at != null && at.equals(begun)) {
      return;
    }
    stint = entry.stint();
    begun = at;
    from = monotonic.getAsLong();
    Duration past = at == null ? Duration.ZERO : Duration.between(at, wall.instant());
    before = past.isNegative() ? Duration.ZERO : past;
  }

  /** What is left of a time; all of it before the handling begins. */
  Duration left(Duration whole) {
    if (begun == null) {
      return whole;
    }
    Duration left = whole.minus(gone());
    return left.isNegative() ? Duration.ZERO : left;
  }

  /** How long the handling has taken so far; zero before it begins. */
  Duration gone() {
    return begun == null ? Duration.ZERO : before.plusNanos(monotonic.getAsLong() - from);
  }
}
