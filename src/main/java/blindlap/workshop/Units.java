package blindlap.workshop;

import blindlap.fault.Unusable;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Conversion between units of one kind.
 *
 * <p>Exact constants in decimal arithmetic of 34 digits, rounded once to a double, so the result is
 * the double nearest to the true value of the number as written.
 */
public final class Units {
  private static final BigDecimal ABSOLUTE_ZERO = new BigDecimal("-273.15");

  private Units() {}

  /**
   * @param value number in {@code from}
   * @return the same quantity as a number in {@code to}
   * @throws Unusable if the kinds differ, the value is not finite or a temperature lies below
   *     absolute zero
   */
  public static double convert(double value, Unit from, Unit to) {
    if (from.kind() != to.kind()) {
      throw new Unusable(
          "to",
          "\"%s\" and \"%s\" measure different things and cannot be converted."
              .formatted(from.symbol(), to.symbol()),
          WorkshopFault.OTHER_KIND,
          from.symbol(),
          to.symbol());
    }
    Workshop.finite("value", value);
    BigDecimal base = BigDecimal.valueOf(value).subtract(from.offset()).multiply(from.factor());
    if (from.kind() == Unit.Kind.TEMPERATURE
        && base.compareTo(ABSOLUTE_ZERO.multiply(Unit.DEGREE_CELSIUS.factor())) < 0) {
      throw new Unusable(
          "value",
          value + " " + from.symbol() + " is below absolute zero.",
          WorkshopFault.BELOW_ABSOLUTE_ZERO,
          value,
          from.symbol());
    }
    return base.divide(to.factor(), MathContext.DECIMAL128).add(to.offset()).doubleValue();
  }
}
