package blindlap.stats.compare;

import java.util.Arrays;

/** The levels of one setting as columns: centred over the whole range, and bent. */
final class LevelScale {
  private LevelScale() {}

  /** Highest less lowest level. */
  static double range(double[] levels) {
    return Arrays.stream(levels).max().orElseThrow() - Arrays.stream(levels).min().orElseThrow();
  }

  /** (level − mean of the levels) over the whole range. */
  static double[] centred(double[] levels) {
    double mean = Arrays.stream(levels).average().orElseThrow();
    double range = range(levels);
    return Arrays.stream(levels).map(level -> (level - mean) / range).toArray();
  }

  /** The quadratic contrast: orthogonal to a constant and to x over the levels. */
  static double[] bent(double[] x) {
    double squares = Arrays.stream(x).map(each -> each * each).sum();
    double cubes = Arrays.stream(x).map(each -> each * each * each).sum();
    return Arrays.stream(x)
        .map(each -> each * each - squares / x.length - each * cubes / squares)
        .toArray();
  }
}
