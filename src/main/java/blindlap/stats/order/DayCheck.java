package blindlap.stats.order;

import blindlap.fault.StatsException;

/** What every calculation over admissible orders refuses, each with the argument at fault. */
public final class DayCheck {
  private DayCheck() {}

  /** The set has this many setups at most and is closed under renaming; the order is a member. */
  public static void order(Assignments set, int[] order) {
    if (set.count().signum() == 0) {
      throw new StatsException("rule", "admits no order.");
    }
    if (order.length != set.stints()) {
      throw new StatsException(
          "order", "has " + order.length + " stints, but the rule has " + set.stints() + ".");
    }
    if (!set.contains(order)) {
      throw new StatsException(
          "order", Orders.letters(order) + " is not one of the admissible orders.");
    }
  }

  /** Two setups, closed under swapping A and B. */
  public static void twoSetups(Assignments set) {
    if (set.setups() != 2) {
      throw new StatsException(
          "rule", "has " + set.setups() + " setups, but this calculation compares two.");
    }
    if (!set.closedUnderRenaming()) {
      throw new StatsException(
          "rule", "gives a set of orders that is not closed under swapping A and B.");
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
        throw new StatsException(
            argument + "[" + i + "]", "must be a finite number, but is " + values[i] + ".");
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

  public static StatsException tooFew(String argument, int used, Drift drift) {
    return new StatsException(
        argument,
        used == 0
            ? "hold no value on a stint that counts."
            : "leave "
                + used
                + (used == 1 ? " stint" : " stints")
                + " with a value, too few for a comparison with drift "
                + drift.text()
                + ".");
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
