package blindlap.review;

import blindlap.session.HelperEntry;
import java.math.BigDecimal;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * How long a stint's handling took, as its rider and its helper saw it.
 *
 * @param stint from 1; 0 = before the warm-up laps
 * @param waited seconds from the last lap of the stint before being done to the bike being handed
 *     over; null where one of the two is not known, or the clocks disagree
 * @param took seconds from the beginning of the handling to the bike being ready; null if not known
 * @param given seconds that every handling took, real or dummy alike; null without a timetable
 * @param mishap what made it longer, as the helper said, perhaps in no words; null where no mishap
 *     was declared
 */
public record Handling(
    int stint,
    @Nullable BigDecimal waited,
    @Nullable BigDecimal took,
    @Nullable BigDecimal given,
    @Nullable String mishap) {

  /** By how much it took longer than given; zero where it is no overrun. */
  public Duration overrun() {
    BigDecimal time = took;
    BigDecimal planned = given;
    return time == null || planned == null
        ? Duration.ZERO
        : HelperEntry.Timing.over(duration(planned), duration(time));
  }

  private static Duration duration(BigDecimal seconds) {
    return Duration.ofMillis(seconds.movePointRight(3).longValue());
  }
}
