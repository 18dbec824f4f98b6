package blindlap.session.day;

import blindlap.plan.Blinding;
import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Different values of one measure and lap that machines recorded without knowing of one another.
 * All of them stand in sight, whichever counts (docs/method.md#two-values).
 *
 * @param values at least two, no two alike; the first one counts
 * @param decidedBy who made the first one count although the plan's rule gave another; empty where
 *     the rule stands
 */
public record Twice(List<Value> values, String decidedBy) {
  /**
   * A value with where it comes from.
   *
   * @param value null where a machine had taken its value out
   * @param whose whose record it is; null where that was not said
   * @param notebook beginning of the id of the notebook that it was written in
   */
  public record Value(
      @Nullable BigDecimal value, Blinding.@Nullable RecordOf whose, String notebook) {
    /** True for the same number, or none in both. */
    public boolean same(@Nullable BigDecimal other) {
      BigDecimal mine = value;
      return mine == null ? other == null : other != null && mine.compareTo(other) == 0;
    }
  }

  public Twice {
    values = List.copyOf(values);
  }

  /** The value that counts. */
  public Value counts() {
    return values.get(0);
  }

  /** Those that do not count. */
  public List<Value> setAside() {
    return values.subList(1, values.size());
  }
}
