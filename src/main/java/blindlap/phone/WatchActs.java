package blindlap.phone;

import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;

/** What a watch on a phone says, told in the laptop's clock. */
final class WatchActs {
  private static final BigDecimal NANOS = BigDecimal.valueOf(1_000_000);

  private WatchActs() {}

  static Act read(String word, Given act, Duration offset, Day day) throws Turned {
    LapId lap = act.lap();
    String measure = act.measure(day.plan(), true);
    if (word.equals("watch-reset")) {
      return (days, id) -> days.watchReset(id, lap, measure);
    }
    if (word.equals("time")) {
      TimeRecord time = time(act, offset);
      boolean knows = act.yes("knows_key");
      return (days, id) -> days.time(id, lap, measure, time, knows);
    }
    Instant at = at(act, "at", offset);
    return (days, id) -> days.watchStarted(id, lap, measure, at);
  }

  private static Instant at(Given act, String field, Duration offset) throws Turned {
    return Instant.ofEpochMilli(act.millis(field)).plus(offset);
  }

  private static TimeRecord time(Given act, Duration offset) throws Turned {
    BigDecimal elapsed = act.decimal("elapsed_ms");
    BigDecimal typed = act.maybeDecimal("typed");
    if (elapsed.signum() < 0 || typed != null && typed.signum() <= 0) {
      throw Turned.form();
    }
    return new TimeRecord(
        at(act, "started", offset),
        at(act, "stopped", offset),
        elapsed.multiply(NANOS).longValue(),
        act.one(TimeRecord.TimedBy.class, "by"),
        typed);
  }
}
