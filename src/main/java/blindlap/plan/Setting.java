package blindlap.plan;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A named value of a setup or of the bike.
 *
 * @param name for example "rebound, clicks from closed"
 * @param value as typed; a number in its unit, or words
 * @param unit unit as typed; empty for words and plain counts
 * @param tolerance allowed difference in the same unit; null where the value is words
 * @param check when the helper checks it
 * @param equal true if it is meant to be equal between the setups (parity)
 */
public record Setting(
    String name,
    String value,
    String unit,
    @Nullable BigDecimal tolerance,
    Check check,
    boolean equal) {

  /** When a setting is checked on the day. */
  public enum Check {
    EACH_LAP,
    EACH_STINT,
    START_AND_END
  }

  /** The value as a number, or null if it is words. */
  public @Nullable BigDecimal number() {
    try {
      return new BigDecimal(value.trim().replace('−', '-'));
    } catch (NumberFormatException words) {
      return null;
    }
  }
}
