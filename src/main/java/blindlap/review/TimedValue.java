package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.Recorded;
import blindlap.session.RecordedTime;
import blindlap.session.day.LapState;
import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What a recording and a watch say of one time; one of the two counts, as the plan says, and the
 * other stands beside it.
 *
 * @param recording seconds as recorded; null where a pass is missing
 * @param uncertainty standard deviation of that, in seconds; null where there is no recording
 * @param watch seconds by a watch, or as typed; null where there are none
 * @param voided true if a sector on the way is void
 */
public record TimedValue(
    @Nullable BigDecimal recording,
    @Nullable BigDecimal uncertainty,
    @Nullable BigDecimal watch,
    boolean voided) {
  /** Of a lap, by measure: what a recording times, and what it timed beside a watch. */
  static Map<String, TimedValue> of(Plan plan, Recorded recorded, LapState lap) {
    Map<String, TimedValue> all = new TreeMap<>();
    for (Measure measure : plan.measures()) {
      Optional<RecordedTime> time = recorded.time(plan, measure, lap.id());
      BigDecimal watch = lap.values().get(measure.name());
      if (time.isPresent() || measure.recorded() && watch != null) {
        all.put(
            measure.name(),
            new TimedValue(
                time.map(RecordedTime::seconds).orElse(null),
                time.map(RecordedTime::uncertainty).orElse(null),
                watch,
                time.filter(RecordedTime::voided).isPresent()));
      }
    }
    return all;
  }
}
