package blindlap.workshop;

import blindlap.fault.Unusable;

/** Checks of the arguments of workshop arithmetic; each refusal names the argument. */
final class Workshop {
  private Workshop() {}

  static double finite(String argument, double value) {
    if (!Double.isFinite(value)) {
      throw new Unusable(
          argument,
          "must be a finite number, but is " + value + ".",
          WorkshopFault.NOT_FINITE,
          name(argument));
    }
    return value;
  }

  static double positive(String argument, double value) {
    finite(argument, value);
    if (value <= 0) {
      throw new Unusable(
          argument,
          "must be above 0, but is " + value + ".",
          WorkshopFault.NOT_POSITIVE,
          name(argument),
          value);
    }
    return value;
  }

  static double between(String argument, double value, double low, double high) {
    finite(argument, value);
    if (value < low || value > high) {
      throw new Unusable(
          argument,
          "must lie between %s and %s, but is %s.".formatted(low, high, value),
          WorkshopFault.OUTSIDE,
          name(argument),
          low,
          high,
          value);
    }
    return value;
  }

  /** The number without its place in a list. */
  private static String name(String argument) {
    return argument.replaceFirst("\\[.*", "");
  }
}
