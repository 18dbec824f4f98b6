package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.LookTaken;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A look that was taken before the end of a day, with what it used.
 *
 * @param stint after which stint
 * @param settled what people read: "you may stop", or else "ride on"
 * @param values of the primary measure by scored lap, as they were then; laps of its stints that
 *     are missing were void or had no value
 */
public record TakenLook(int stint, boolean settled, SortedMap<LapId, BigDecimal> values) {
  public TakenLook {
    values = Collections.unmodifiableSortedMap(new TreeMap<>(values));
  }

  /** Of a session's entry. */
  public static TakenLook of(LookTaken look) {
    return new TakenLook(look.stint(), look.settled(), look.values());
  }

  /** One value per stint of the plan on the scale of the analysis; NaN where none was used. */
  public double[] stints(Plan plan, Measure measure) {
    return StintValues.of(plan, id -> lap(id, measure), measure, StintValues.Laps.NOT_VOID)
        .values();
  }

  private Optional<DayRecord.Lap> lap(LapId id, Measure measure) {
    return Optional.ofNullable(values.get(id))
        .map(
            value ->
                new DayRecord.Lap(id, true, Map.of(measure.name(), value), Optional.empty(), ""));
  }
}
