package blindlap.stats.power;

import blindlap.stats.order.Assignments;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * How many orders of a set a trend can tell apart: orders that differ only in levels which lie
 * close together give nearly the same trend, so that levels closer than {@link #CLOSE} times even
 * ones count as one here (docs/method.md#steps-power). Counted along the graph of orders.
 */
final class OrdersApart {
  /** Of three levels of which two are closer than this, days of 9 stints show 8 % less. */
  private static final double CLOSE = 0.75;

  private final Assignments set;

  /** For each setup the group of levels that it belongs to. */
  private final int[] group;

  private OrdersApart(Assignments set, int[] group) {
    this.set = set;
    this.group = group;
  }

  /**
   * @param levels the number of each level, for setup A first; no two equal
   * @param left true where the stint remains
   */
  static BigInteger count(Assignments set, double[] levels, boolean[] left) {
    return new OrdersApart(set, groups(levels)).count(left);
  }

  private static int[] groups(double[] levels) {
    double[] sorted = levels.clone();
    Arrays.sort(sorted);
    double even = (sorted[sorted.length - 1] - sorted[0]) / (sorted.length - 1);
    int[] group = new int[levels.length];
    for (int setup = 0; setup < levels.length; setup++) {
      int at = Arrays.binarySearch(sorted, levels[setup]);
      for (int i = 1; i <= at; i++) {
        group[setup] += sorted[i] - sorted[i - 1] < CLOSE * even ? 0 : 1;
      }
    }
    return group;
  }

  /** A state is where all orders may stand in the graph that read alike so far. */
  private BigInteger count(boolean[] left) {
    Map<Set<Integer>, BigInteger> states = new HashMap<>(Map.of(Set.of(0), BigInteger.ONE));
    for (boolean ridden : left) {
      Map<Set<Integer>, BigInteger> next = new HashMap<>();
      states.forEach(
          (state, often) -> {
            for (int g = 0; g <= (ridden ? last() : 0); g++) {
              Set<Integer> to = step(state, ridden ? g : -1);
              if (!to.isEmpty()) {
                next.merge(to, often, BigInteger::add);
              }
            }
          });
      states = next;
    }
    return states.values().stream().reduce(BigInteger.ZERO, BigInteger::add);
  }

  private int last() {
    return Arrays.stream(group).max().orElseThrow();
  }

  private Set<Integer> step(Set<Integer> from, int only) {
    Set<Integer> to = new TreeSet<>();
    for (int node : from) {
      for (int setup = 0; setup < group.length; setup++) {
        if (only < 0 || group[setup] == only) {
          int next = set.next(node, setup);
          if (next >= 0) {
            to.add(next);
          }
        }
      }
    }
    return to;
  }
}
