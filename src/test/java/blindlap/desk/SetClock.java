package blindlap.desk;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** A clock that stands still until it is moved, and a monotonic one beside it. */
public final class SetClock extends Clock {
  private static final ZoneId ZONE = ZoneId.of("Europe/Vienna");

  private Instant now;
  private long nanos = 1;

  /** A clock that stands at an instant. */
  public SetClock(Instant start) {
    now = start;
  }

  /** Time goes by, on both clocks. */
  public void move(Duration by) {
    now = now.plus(by);
    nanos += by.toNanos();
  }

  /** Someone sets the wall clock, forwards or back; the monotonic one is not moved by that. */
  public void set(Duration by) {
    now = now.plus(by);
  }

  /** Nanoseconds of the monotonic clock. */
  public long nanos() {
    return nanos;
  }

  @Override
  public ZoneId getZone() {
    return ZONE;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return this;
  }

  @Override
  public Instant instant() {
    return now;
  }
}
