package blindlap.stats.order;

import java.util.HashMap;
import java.util.Map;

/**
 * How much of an order is foreseen by someone who knows every setup ridden so far and the rule: a
 * stint is foreseen where only one setup can follow (docs/method.md#blind-levels).
 */
public final class Foreseen {
  private Foreseen() {}

  /**
   * Expected number of stints foreseen, over all orders of a set, each equally likely.
   *
   * @return between 0 and the number of stints; 0 for an empty set
   */
  public static double stints(Assignments set) {
    double expected = 0;
    Map<Integer, Double> at = new HashMap<>(Map.of(0, 1.0));
    for (int stint = 0; stint < set.stints(); stint++) {
      Map<Integer, Double> next = new HashMap<>();
      for (Map.Entry<Integer, Double> node : at.entrySet()) {
        expected += step(set, node.getKey(), node.getValue(), next) == 1 ? node.getValue() : 0;
      }
      at = next;
    }
    return expected;
  }

  /** Goes one stint on from a node and says how many setups can follow there. */
  private static int step(
      Assignments set, int node, double probability, Map<Integer, Double> next) {
    int ways = 0;
    double all = set.completions(node).doubleValue();
    for (int setup = 0; setup < set.setups(); setup++) {
      int to = set.next(node, setup);
      if (to >= 0 && set.completions(to).signum() > 0) {
        ways++;
        next.merge(to, probability * set.completions(to).doubleValue() / all, Double::sum);
      }
    }
    return ways;
  }
}
