package blindlap.sample;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/** A clock for invented days: each look at it is half a minute later. */
public final class SampleClock extends Clock {
  private static final Duration STEP = Duration.ofSeconds(30);

  private final ZoneId zone;
  private Instant now;

  public SampleClock(Instant start, ZoneId zone) {
    this.now = start;
    this.zone = zone;
  }

  /** Waits until then: so much is it at the next look. It never goes back. */
  void until(Instant later) {
    Instant before = later.minus(STEP);
    now = before.isAfter(now) ? before : now;
  }

  @Override
  public ZoneId getZone() {
    return zone;
  }

  @Override
  public Clock withZone(ZoneId other) {
    return new SampleClock(now, other);
  }

  @Override
  public Instant instant() {
    now = now.plus(STEP);
    return now;
  }
}
