package blindlap.session;

import blindlap.seal.HelperRecord;
import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The program looked, at the end of a block that the plan declares, whether it is settled that the
 * setups differ (docs/method.md#looks). Each look is taken once, and what it used stays as it was.
 * Since version 4.
 *
 * @param record what it computed, encrypted, under {@link #number}
 * @param settled what people read: "you may stop", or else "ride on"
 * @param values of the primary measure that it used, by scored lap; a lap of its stints that is
 *     missing here was void or had no value
 */
public record LookTaken(HelperRecord record, boolean settled, SortedMap<LapId, BigDecimal> values)
    implements Fact.OfValues {
  /** Added to a look's stint, so that its record is none of a stint. */
  private static final int NUMBER = 1000;

  public LookTaken {
    values = Collections.unmodifiableSortedMap(new TreeMap<>(values));
  }

  /** The number of the record of a look after a stint. */
  public static int number(int stint) {
    return NUMBER + stint;
  }

  /** True for the number of a look's record. */
  public static boolean isNumber(int number) {
    return number > NUMBER;
  }

  /** After which stint. */
  public int stint() {
    return record.stint() - NUMBER;
  }

  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.lookTaken(this);
  }
}
