package blindlap.stats.order;

import blindlap.fault.DayFault;
import blindlap.fault.RuleFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;

/** What every calculation over admissible orders refuses, each with the argument at fault. */
public final class DayCheck {
  private DayCheck() {}

  /** The set has this many setups at most and is closed under renaming; the order is a member. */
  public static void order(Assignments set, int[] order) {
    if (set.count().signum() == 0) {
      throw new Unusable("rule", "admits no order.", RuleFault.NO_ORDER);
    }
    if (order.length != set.stints()) {
      throw new Unusable(
          "order",
          "has " + order.length + " stints, but the rule has " + set.stints() + ".",
          DayFault.ORDER_LENGTH,
          order.length,
          set.stints());
    }
    if (!set.contains(order)) {
      throw new Unusable(
          "order",
          Orders.letters(order) + " is not one of the admissible orders.",
          DayFault.ORDER_NOT_ADMISSIBLE,
          Orders.letters(order));
    }
  }

  /** Two setups, closed under swapping A and B. */
  public static void twoSetups(Assignments set) {
    if (set.setups() != 2) {
      throw new Unusable(
          "rule",
          "has " + set.setups() + " setups, but this calculation compares two.",
          DayFault.NOT_TWO_SETUPS,
          set.setups());
    }
    if (!set.closedUnderRenaming()) {
      throw new Unusable(
          "rule",
          "gives a set of orders that is not closed under swapping A and B.",
          RuleFault.NOT_CLOSED);
    }
  }

  /**
   * The stints that are used: valid and with a value.
   *
   * @param argument name of the values in a refusal
   */
  public static boolean[] used(Assignments set, String argument, double[] values, boolean[] valid) {
    length(set, argument, values.length, "values");
    length(set, "valid", valid.length, "entries");
    boolean[] use = new boolean[values.length];
    for (int i = 0; i < use.length; i++) {
      if (Double.isInfinite(values[i])) {
        throw new Unusable(
            argument + "[" + i + "]",
            "must be a finite number, but is " + values[i] + ".",
            DayFault.NOT_FINITE);
      }
      use[i] = valid[i] && !Double.isNaN(values[i]);
    }
    return use;
  }

  public static void length(Assignments set, String argument, int length, String what) {
    if (length != set.stints()) {
      throw new StatsException(
          argument, "has " + length + " " + what + " for " + set.stints() + " stints.");
    }
  }

  public static int count(boolean[] use) {
    int n = 0;
    for (boolean each : use) {
      n += each ? 1 : 0;
    }
    return n;
  }

  /**
   * The refusal of a day whose stints leave no degree of freedom.
   *
   * @param used stints with a value
   * @param setups number of setups compared
   */
  public static Unusable tooFew(String argument, int used, int setups, Nuisance nuisance) {
    if (used == 0) {
      return new Unusable(argument, "hold no value on a stint that counts.", DayFault.NO_VALUE);
    }
    return new Unusable(
        argument,
        "leave "
            + used
            + (used == 1 ? " stint" : " stints")
            + " with a value, too few for a comparison with drift "
            + nuisance.drift().text()
            + (nuisance.covariates() == 0 ? "." : " and " + nuisance.covariates() + " covariates."),
        DayFault.TOO_FEW_STINTS,
        used,
        nuisance.columns() + setups);
  }

  /**
   * True if the values do not vary once drift and setups are removed (docs/method.md#no-variation).
   */
  public static boolean noVariation(double residualSquares, double[] values, boolean[] use) {
    double largest = 0;
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (use[i]) {
        n++;
        largest = Math.max(largest, Math.abs(values[i]));
      }
    }
    return residualSquares <= 1e-18 * n * largest * largest;
  }

  /**
   * How far a sum of the centred values may be off because the values themselves were rounded to
   * doubles: what ties must forgive on a large offset (docs/method.md#ties).
   */
  public static double rounding(double[] values, boolean[] use) {
    double largest = 0;
    for (int i = 0; i < values.length; i++) {
      largest = use[i] ? Math.max(largest, Math.abs(values[i])) : largest;
    }
    return count(use) * Math.ulp(largest) / 2;
  }

  /** The used values less their mean, 0 elsewhere: ties stay ties on a large offset. */
  public static double[] centred(double[] values, boolean[] use) {
    double mean = 0;
    for (int i = 0; i < values.length; i++) {
      mean += use[i] ? values[i] : 0;
    }
    mean /= Math.max(1, count(use));
    double[] y = new double[values.length];
    for (int i = 0; i < y.length; i++) {
      y[i] = use[i] ? values[i] - mean : 0;
    }
    return y;
  }
}
