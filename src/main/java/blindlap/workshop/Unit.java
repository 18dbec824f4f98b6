package blindlap.workshop;

import blindlap.fault.Unusable;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * Units of the workshop, defined by exact constants: pound 0.45359237 kg and inch 25.4 mm
 * (international yard and pound agreement, 1959), standard gravity 9.80665 m/s² (3rd CGPM, 1901).
 */
public enum Unit {
  NEWTON("N", Kind.FORCE, "1"),
  POUND_FORCE("lbf", Kind.FORCE, "4.4482216152605"),
  KILOGRAM_FORCE("kgf", Kind.FORCE, "9.80665"),
  NEWTON_PER_MILLIMETRE("N/mm", Kind.RATE, "25.4"),
  POUND_FORCE_PER_INCH("lbf/in", Kind.RATE, "4.4482216152605"),
  KILOPASCAL("kPa", Kind.PRESSURE, "645.16"),
  BAR("bar", Kind.PRESSURE, "64516"),
  POUND_PER_SQUARE_INCH("psi", Kind.PRESSURE, "4448.2216152605"),
  KILOGRAM("kg", Kind.MASS, "1"),
  POUND("lb", Kind.MASS, "0.45359237"),
  MILLIMETRE("mm", Kind.LENGTH, "1"),
  METRE("m", Kind.LENGTH, "1000"),
  KILOMETRE("km", Kind.LENGTH, "1000000"),
  INCH("in", Kind.LENGTH, "25.4"),
  FOOT("ft", Kind.LENGTH, "304.8"),
  MILE("mi", Kind.LENGTH, "1609344"),
  METRE_PER_SECOND("m/s", Kind.SPEED, "3600"),
  KILOMETRE_PER_HOUR("km/h", Kind.SPEED, "1000"),
  MILE_PER_HOUR("mph", Kind.SPEED, "1609.344"),
  DEGREE_CELSIUS("degC", Kind.TEMPERATURE, "1.8"),
  DEGREE_FAHRENHEIT("degF", Kind.TEMPERATURE, "1"),
  NEWTON_METRE("N.m", Kind.TORQUE, "1"),
  POUND_FORCE_FOOT("lbf.ft", Kind.TORQUE, "1.3558179483314004");

  /** What a unit measures; only units of one kind convert into each other. */
  public enum Kind {
    FORCE,
    RATE,
    PRESSURE,
    MASS,
    LENGTH,
    SPEED,
    TEMPERATURE,
    TORQUE
  }

  private final String symbol;
  private final Kind kind;
  private final BigDecimal factor;

  /**
   * @param factor size of the unit as an exact decimal, in a unit of the kind chosen so that all
   *     units of the kind have one (rate: N/25.4 mm; pressure: mN/in²; speed: m/h)
   */
  Unit(String symbol, Kind kind, String factor) {
    this.symbol = symbol;
    this.kind = kind;
    this.factor = new BigDecimal(factor);
  }

  /** The symbol in files and requests, such as {@code lbf/in}. */
  public String symbol() {
    return symbol;
  }

  public Kind kind() {
    return kind;
  }

  BigDecimal factor() {
    return factor;
  }

  /** Where the scale has its zero, in this unit above the zero of degC: 32 for degF, else 0. */
  BigDecimal offset() {
    return this == DEGREE_FAHRENHEIT ? BigDecimal.valueOf(32) : BigDecimal.ZERO;
  }

  /**
   * The unit of a symbol.
   *
   * @param argument name of the argument, for the refusal
   * @throws Unusable if no unit has this symbol
   */
  public static Unit ofSymbol(String argument, String symbol) {
    for (Unit unit : values()) {
      if (unit.symbol.equals(symbol)) {
        return unit;
      }
    }
    String known = Arrays.stream(values()).map(Unit::symbol).collect(Collectors.joining(", "));
    throw new Unusable(
        argument,
        "\"" + symbol + "\" is none of the units " + known + ".",
        WorkshopFault.UNKNOWN_UNIT,
        symbol,
        known);
  }
}
