package blindlap.plan;

import java.math.BigDecimal;
import java.time.LocalTime;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/**
 * The day against the clock; durations in minutes.
 *
 * @param zone time zone of the trail
 * @param start when the first handling starts
 * @param daylightEnd when riding must be over; on the next day if not after the start
 * @param lap one lap down
 * @param climb back up, by pedal or shuttle
 * @param swap a swap, real or dummy alike
 * @param scoring filling in the score sheet
 * @param restEvery a rest after this many stints; 0 for none
 * @param rest length of a rest
 * @param coolDown waiting for brakes or damper before a swap
 * @param lapBudget most laps the rider agrees to ride, warm-up included; null if none was set
 * @param practised swaps that were practised and timed before the day
 */
public record Timetable(
    ZoneId zone,
    LocalTime start,
    LocalTime daylightEnd,
    BigDecimal lap,
    BigDecimal climb,
    BigDecimal swap,
    BigDecimal scoring,
    int restEvery,
    BigDecimal rest,
    BigDecimal coolDown,
    @Nullable Integer lapBudget,
    Practised practised) {

  /** The same day without rests. */
  public Timetable withoutRests() {
    return new Timetable(
        zone,
        start,
        daylightEnd,
        lap,
        climb,
        swap,
        scoring,
        0,
        rest,
        coolDown,
        lapBudget,
        practised);
  }
}
