package blindlap.session.day;

import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Says of an entry that a phone gave it, and by which clock. A message of a phone may become
 * several entries, which all bear the same; a client's number is entered once, however often it is
 * sent.
 *
 * @param client id that the phone's page gave itself: 32 lower-case hexadecimal digits
 * @param number of the message among those of its client, from 1
 * @param role who holds the phone
 * @param given when it was said, by the phone's clock
 * @param sent when it was sent, by the phone's clock
 * @param offset the laptop's clock less the phone's, as the phone measured it
 * @param knew number of this notebook's last entry of the session that the phone had before it when
 *     it was said; null where the laptop answered at the time, as it does to a window
 */
public record ByPhone(
    String client,
    long number,
    PhoneRole role,
    Instant given,
    Instant sent,
    Duration offset,
    @Nullable Long knew) {
  /** What is said within this time of its arrival is said with signal. */
  public static final Duration LATE = Duration.ofSeconds(10);

  public ByPhone {
    if (!client.matches("[0-9a-f]{32}") || number < 1 || knew != null && knew < 1) {
      throw new IllegalArgumentException("not a message of a phone");
    }
  }

  /** When it was said, by the laptop's clock. */
  public Instant at() {
    return given.plus(offset);
  }

  /** True of what was said without signal and came later. */
  public boolean late() {
    return knew != null;
  }
}
