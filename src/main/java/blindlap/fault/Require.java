package blindlap.fault;

/** Checks of arguments; each throws a {@link StatsException} that names the argument. */
public final class Require {
  private static final double LARGEST = 1e150;

  private Require() {}

  public static double finite(String argument, double value) {
    if (!Double.isFinite(value)) {
      throw new StatsException(argument, "must be a finite number, but is " + value + ".");
    }
    return value;
  }

  public static double positive(String argument, double value) {
    finite(argument, value);
    if (value <= 0) {
      throw new StatsException(argument, "must be above 0, but is " + value + ".");
    }
    return value;
  }

  /** A share from 0 to 1, ends included. */
  public static double proportion(String argument, double value) {
    finite(argument, value);
    if (value < 0 || value > 1) {
      throw new StatsException(argument, "must lie between 0 and 1, but is " + value + ".");
    }
    return value;
  }

  /** A share above 0 and below 1. */
  public static double innerProportion(String argument, double value) {
    finite(argument, value);
    if (value <= 0 || value >= 1) {
      throw new StatsException(argument, "must be above 0 and below 1, but is " + value + ".");
    }
    return value;
  }

  public static int countUpTo(String argument, int count, String wholeName, int whole) {
    if (count < 0) {
      throw new StatsException(argument, "must not be negative, but is " + count + ".");
    }
    if (count > whole) {
      throw new StatsException(
          argument, count + " is more than the " + whole + " of \"" + wholeName + "\".");
    }
    return count;
  }

  /** A copy of at least {@code least} finite values whose squares do not overflow. */
  public static double[] sample(String argument, double[] values, int least) {
    if (values.length < least) {
      throw new StatsException(
          argument, "has " + values.length + " values, but at least " + least + " are needed.");
    }
    for (int i = 0; i < values.length; i++) {
      if (Math.abs(finite(argument + "[" + i + "]", values[i])) > LARGEST) {
        throw new StatsException(
            argument + "[" + i + "]", values[i] + " is too large: squares would overflow.");
      }
    }
    return values.clone();
  }

  /** A copy of at least two groups, each of at least {@code least} finite values. */
  public static double[][] groups(String argument, double[][] groups, int least) {
    if (groups.length < 2) {
      throw new StatsException(
          argument, "has " + groups.length + " groups, but at least 2 are needed.");
    }
    double[][] copy = new double[groups.length][];
    for (int g = 0; g < groups.length; g++) {
      copy[g] = sample(argument + "[" + g + "]", groups[g], least);
    }
    return copy;
  }

  /** A copy of a table of finite values with rows of one length. */
  public static double[][] table(
      String argument, double[][] rows, int leastRows, int leastColumns) {
    if (rows.length < leastRows) {
      throw new StatsException(
          argument, "has " + rows.length + " rows, but at least " + leastRows + " are needed.");
    }
    double[][] copy = new double[rows.length][];
    for (int r = 0; r < rows.length; r++) {
      copy[r] = sample(argument + "[" + r + "]", rows[r], leastColumns);
      if (copy[r].length != copy[0].length) {
        throw new StatsException(
            argument + "[" + r + "]",
            "has " + copy[r].length + " columns, but the first row has " + copy[0].length + ".");
      }
    }
    return copy;
  }
}
