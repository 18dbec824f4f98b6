package blindlap.desk.day;

import blindlap.session.day.Day;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.timing.TimeRecord;
import java.math.BigDecimal;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What stands on a lap's sheet for one measure.
 *
 * @param value the value; null if none
 * @param running start of a watch that runs; null if none does
 * @param time what the watch took; null if nothing
 */
public record MeasureState(
    @Nullable BigDecimal value, @Nullable Instant running, @Nullable TimeRecord time) {
  private static final MeasureState NOTHING = new MeasureState(null, null, null);

  /** What stands there on a day. */
  public static MeasureState of(Day day, LapId lap, String measure) {
    return day.lap(lap).map(known -> of(known, measure)).orElse(NOTHING);
  }

  private static MeasureState of(LapState lap, String measure) {
    return new MeasureState(
        lap.values().get(measure), lap.running().get(measure), lap.times().get(measure));
  }
}
