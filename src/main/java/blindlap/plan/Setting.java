package blindlap.plan;

import blindlap.fault.TypedNumber;
import blindlap.fault.Unusable;
import blindlap.workshop.Unit;
import blindlap.workshop.Units;
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
 * @param range positions of the dial or end of the scale, as found on this unit; null if unknown
 * @param step smallest step of the dial, such as 0.5 of a turn; null if it has none
 * @param readings how many readings the helper takes the mean of; 1 for a plain value
 */
public record Setting(
    String name,
    String value,
    String unit,
    @Nullable BigDecimal tolerance,
    Check check,
    boolean equal,
    @Nullable BigDecimal range,
    @Nullable BigDecimal step,
    int readings) {

  /** A setting without a dial, read once. */
  public Setting(
      String name,
      String value,
      String unit,
      @Nullable BigDecimal tolerance,
      Check check,
      boolean equal) {
    this(name, value, unit, tolerance, check, equal, null, null, 1);
  }

  /** When a setting is checked on the day. */
  public enum Check {
    EACH_LAP,
    EACH_STINT,
    START_AND_END
  }

  /** True if this is the setting's name, whatever its case and the spaces around it. */
  public boolean isCalled(String other) {
    return key(name).equals(key(other));
  }

  static String key(String name) {
    return name.strip().toLowerCase(java.util.Locale.ROOT).replaceAll("\\s+", " ");
  }

  /** The value as a number, or null if it is words. */
  public @Nullable BigDecimal number() {
    return TypedNumber.number(value).orElse(null);
  }

  /** The value with its unit, as typed. */
  public String shown() {
    return unit.isBlank() ? value : value + " " + unit;
  }

  /**
   * True if another setting has the same value within an allowed difference. Numbers in units of
   * one kind are converted into this setting's unit; anything else must be the same words.
   *
   * @param allowed allowed difference in this setting's unit, not negative
   */
  public boolean within(Setting other, BigDecimal allowed) {
    BigDecimal mine = number();
    BigDecimal theirs = other.number();
    if (mine == null || theirs == null) {
      return key(value).equals(key(other.value)) && key(unit).equals(key(other.unit));
    }
    if (key(unit).equals(key(other.unit))) {
      return mine.subtract(theirs).abs().compareTo(allowed) <= 0;
    }
    try {
      double converted =
          Units.convert(
              theirs.doubleValue(),
              Unit.ofSymbol("unit", other.unit.strip()),
              Unit.ofSymbol("unit", unit.strip()));
      // A value typed in another unit is rounded there: one part in a thousand is no difference.
      double slack = Math.abs(mine.doubleValue()) * 1e-3;
      return Math.abs(mine.doubleValue() - converted) <= allowed.doubleValue() + slack;
    } catch (Unusable otherKind) {
      return false;
    }
  }
}
