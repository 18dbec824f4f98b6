package blindlap.review;

import blindlap.session.LookTaken;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.Collections;
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
}
