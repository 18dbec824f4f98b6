package blindlap.session;

import blindlap.session.day.LapId;
import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Of two values that two machines had recorded for one lap, another was made to count than by the
 * plan's rule, because the one that counted was a typing error. Since version 4.
 *
 * @param value the one that counts from now on, one of those recorded; null for none, where one of
 *     the machines had taken its value out
 * @param reason begins with {@link #REASON}
 * @param decidedBy who decided, having declared to know neither key nor setups
 */
public record ValueChosen(
    LapId lap, String measure, @Nullable BigDecimal value, String reason, String decidedBy)
    implements Fact.OfValues {
  /** The only reason there is. */
  public static final String REASON = "typing error";

  /** True if the reason is the one that there is, alone or with further words. */
  public static boolean reason(String typed) {
    return typed.strip().toLowerCase(Locale.ROOT).startsWith(REASON);
  }

  @Override
  public <R> R accept(FactVisitor<R> visitor) {
    return visitor.valueChosen(this);
  }
}
