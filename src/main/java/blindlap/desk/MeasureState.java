package blindlap.desk;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.Fact;
import blindlap.session.SessionState;
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

  /** What stands there in a session. */
  public static MeasureState of(SessionState state, LapId lap, String measure) {
    return state.lap(lap).map(known -> of(known, measure)).orElse(NOTHING);
  }

  private static MeasureState of(LapState lap, String measure) {
    return new MeasureState(
        lap.values().get(measure), lap.running().get(measure), lap.times().get(measure));
  }

  /** The fact that puts this back. */
  Fact putBack(LapId lap, String measure, Plan plan) {
    boolean timed =
        plan.measures().stream()
            .filter(each -> each.name().equals(measure))
            .map(Measure::kind)
            .anyMatch(Measure.Kind::timed);
    if (!timed) {
      return new Fact.ScoreCorrected(lap, measure, value, "undone");
    }
    if (running != null) {
      return new Fact.WatchStarted(lap, measure, running);
    }
    return time == null
        ? new Fact.WatchReset(lap, measure)
        : new Fact.TimeTaken(lap, measure, time);
  }
}
