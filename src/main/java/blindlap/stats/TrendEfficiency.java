package blindlap.stats;

import java.math.BigInteger;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/**
 * Harmonic mean of c/(N/4) over a two-setup set, c = z'Wz with an intercept and a straight trend.
 * For balanced sets c depends on an order only through the sum of B's positions, whose distribution
 * is counted exactly along the graph; other sets are walked.
 */
final class TrendEfficiency {
  private TrendEfficiency() {}

  static double of(Assignments set) {
    return set.balanced() ? counted(set) : walked(set, Drift.LINE);
  }

  /** The same for any drift, by visiting every order. */
  static double walked(Assignments set, Drift drift) {
    int n = set.stints();
    boolean[] all = new boolean[n];
    java.util.Arrays.fill(all, true);
    Residuals residuals = new Residuals(all, drift);
    double[] sum = {0};
    set.forEach(
        order -> {
          double[] z = TwoSetups.signs(order);
          sum[0] += n / 4.0 / Residuals.dot(z, residuals.apply(z));
        });
    return set.count().doubleValue() / sum[0];
  }

  private static double counted(Assignments set) {
    double n = set.stints();
    double spread = n * (n * n - 1) / 12;
    double sum = 0;
    for (Map.Entry<Integer, BigInteger> entry : positionSums(set).entrySet()) {
      double overlap = (2.0 * entry.getKey() - n * (n - 1) / 2) / 2;
      double c = n / 4 - (spread == 0 ? 0 : overlap * overlap / spread);
      sum += entry.getValue().doubleValue() * (n / 4) / c;
    }
    return set.count().doubleValue() / sum;
  }

  /** How many orders have each sum of positions (from 0) of setup B. */
  private static Map<Integer, BigInteger> positionSums(Assignments set) {
    Map<Integer, Map<Integer, BigInteger>> level = new HashMap<>();
    level.put(0, new TreeMap<>(Map.of(0, BigInteger.ONE)));
    for (int i = 0; i < set.stints(); i++) {
      Map<Integer, Map<Integer, BigInteger>> next = new HashMap<>();
      for (Map.Entry<Integer, Map<Integer, BigInteger>> at : level.entrySet()) {
        for (int setup = 0; setup < 2; setup++) {
          int to = set.next(at.getKey(), setup);
          if (to < 0) {
            continue;
          }
          int step = setup == 1 ? i : 0;
          Map<Integer, BigInteger> sums = next.computeIfAbsent(to, key -> new TreeMap<>());
          at.getValue().forEach((sum, often) -> sums.merge(sum + step, often, BigInteger::add));
        }
      }
      level = next;
    }
    Map<Integer, BigInteger> total = new TreeMap<>();
    level
        .values()
        .forEach(m -> m.forEach((sum, often) -> total.merge(sum, often, BigInteger::add)));
    return total;
  }
}
