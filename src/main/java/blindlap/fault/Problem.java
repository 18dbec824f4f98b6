package blindlap.fault;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One thing that is wrong: what, and where. Turned into a sentence by {@code wording}.
 *
 * @param fault the kind of problem
 * @param where field, line or place it was found in, as the user knows it; may be empty
 * @param details values that the sentence needs, as typed or written out
 */
public record Problem(Fault fault, String where, List<String> details) {
  public Problem {
    details = List.copyOf(details);
  }

  /** A problem with its place and details. */
  public static Problem of(Fault fault, String where, @Nullable Object... details) {
    return new Problem(
        fault, where, java.util.Arrays.stream(details).map(Problem::written).toList());
  }

  /** A double that is a whole number is written as one. */
  private static String written(@Nullable Object detail) {
    return detail instanceof Double number && Double.isFinite(number) && Math.rint(number) == number
        ? new BigDecimal(number).toPlainString()
        : String.valueOf(detail);
  }
}
