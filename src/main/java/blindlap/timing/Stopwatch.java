package blindlap.timing;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * A watch for one lap. It looks at two clocks at both ends: the wall clock, which survives a
 * restart of the program but may be set, and a monotonic one, which cannot be set but stops when
 * the machine sleeps. It never shows a running time, because the rider scores before he learns it.
 */
public final class Stopwatch {
  /** What a watch does. */
  public enum Running {
    READY,
    RUNNING,
    STOPPED
  }

  private final Clock wall;
  private final LongSupplier monotonic;
  private @Nullable Instant started;
  private long startedNanos;
  private boolean nanosLost;
  private @Nullable TimeRecord taken;

  /**
   * A watch at nought.
   *
   * @param wall the wall clock
   * @param monotonic nanoseconds that only ever grow while the program runs
   */
  public Stopwatch(Clock wall, LongSupplier monotonic) {
    this.wall = wall;
    this.monotonic = monotonic;
  }

  /** What it does. */
  public Running running() {
    if (started == null) {
      return Running.READY;
    }
    return taken == null ? Running.RUNNING : Running.STOPPED;
  }

  /**
   * Starts the watch, or starts it again.
   *
   * @return wall clock at the start
   */
  public Instant start() {
    Instant now = wall.instant();
    startedNanos = monotonic.getAsLong();
    started = now;
    nanosLost = false;
    taken = null;
    return now;
  }

  /**
   * Takes up a watch that ran when the program ended. Its monotonic start is lost, so the time it
   * takes is doubtful.
   */
  public void takeUp(Instant startedThen) {
    started = startedThen;
    nanosLost = true;
    taken = null;
  }

  /**
   * Stops the watch.
   *
   * @throws IllegalStateException if it does not run
   */
  public TimeRecord stop(TimeRecord.TimedBy by) {
    long nanos = monotonic.getAsLong();
    Instant begun = started;
    if (begun == null || taken != null) {
      throw new IllegalStateException("a watch that does not run cannot be stopped");
    }
    TimeRecord record =
        new TimeRecord(begun, wall.instant(), nanosLost ? 0 : nanos - startedNanos, by, null);
    taken = record;
    return record;
  }

  /** Lets a stopped watch run on as if it had not been stopped; its start, or nothing. */
  public @Nullable Instant undoStop() {
    if (taken == null) {
      return null;
    }
    taken = null;
    return started;
  }

  /** A watch that does what this one does now, whatever becomes of this one. */
  public Stopwatch copy() {
    Stopwatch copy = new Stopwatch(wall, monotonic);
    copy.started = started;
    copy.startedNanos = startedNanos;
    copy.nanosLost = nanosLost;
    copy.taken = taken;
    return copy;
  }

  /** Back to nought after a false start. */
  public void reset() {
    started = null;
    taken = null;
  }

  /** A typed time in place of a watch, written down now. */
  public static TimeRecord typed(BigDecimal seconds, TimeRecord.TimedBy by, Clock wall) {
    Instant now = wall.instant();
    return new TimeRecord(now, now, 0, by, seconds);
  }
}
