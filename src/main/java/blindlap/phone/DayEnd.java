package blindlap.phone;

import blindlap.desk.day.PhoneDays;
import blindlap.session.day.SessionId;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/** When phones are no longer served: the day is over, and those that still send were told so. */
final class DayEnd {
  /** How often the day is looked at. */
  private static final long EVERY = TimeUnit.SECONDS.toNanos(1);

  /** Long enough for a page that is open to ask once more. */
  private static final long GRACE = TimeUnit.SECONDS.toNanos(15);

  /** Nobody waits longer for a phone that keeps answers. */
  private static final long MOST = TimeUnit.MINUTES.toNanos(10);

  private final PhoneDays days;
  private final SessionId id;
  private final LongSupplier nanos;
  private long looked;
  private long version = Long.MIN_VALUE;
  private @Nullable Long over;

  DayEnd(PhoneDays days, SessionId id, LongSupplier nanos) {
    this.days = days;
    this.id = id;
    this.nanos = nanos;
    looked = nanos.getAsLong() - EVERY;
  }

  /** True once it is over and nobody is left to be told. */
  boolean reached(List<Phones.Known> phones) {
    long now = nanos.getAsLong();
    if (now - looked < EVERY) {
      return false;
    }
    looked = now;
    long latest = days.version();
    if (latest != version) {
      version = latest;
      boolean day = days.day(id).filter(seen -> seen.day().step().day()).isPresent();
      over = day ? null : over == null ? Long.valueOf(now) : over;
    }
    Long since = over;
    boolean unsent = phones.stream().anyMatch(phone -> phone.in() && phone.unsent() > 0);
    return since != null && now - since > (unsent ? MOST : GRACE);
  }
}
