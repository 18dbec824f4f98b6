package blindlap.stats.order;

import blindlap.fault.DayFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import java.util.Arrays;

/** The levels of one setting as columns: centred over the whole range, and bent. */
public final class LevelScale {
  private LevelScale() {}

  /**
   * Refuses levels that cannot be followed.
   *
   * @throws StatsException if there are others than setups, or two are equal
   */
  public static void check(Assignments set, double[] levels) {
    if (levels.length != set.setups()) {
      throw new StatsException(
          "levels",
          "has " + levels.length + " levels, but the rule has " + set.setups() + " setups.");
    }
    double[] sorted = levels.clone();
    Arrays.sort(sorted);
    for (int i = 1; i < sorted.length; i++) {
      if (sorted[i] == sorted[i - 1]) {
        throw new Unusable(
            "levels", "holds " + sorted[i] + " twice.", DayFault.LEVEL_TWICE, sorted[i]);
      }
    }
  }

  /** Highest less lowest level. */
  public static double range(double[] levels) {
    return Arrays.stream(levels).max().orElseThrow() - Arrays.stream(levels).min().orElseThrow();
  }

  /** (level − mean of the levels) over the whole range. */
  public static double[] centred(double[] levels) {
    double mean = Arrays.stream(levels).average().orElseThrow();
    double range = range(levels);
    return Arrays.stream(levels).map(level -> (level - mean) / range).toArray();
  }

  /** The quadratic contrast: orthogonal to a constant and to x over the levels. */
  public static double[] bent(double[] x) {
    double squares = Arrays.stream(x).map(each -> each * each).sum();
    double cubes = Arrays.stream(x).map(each -> each * each * each).sum();
    return Arrays.stream(x)
        .map(each -> each * each - squares / x.length - each * cubes / squares)
        .toArray();
  }
}
