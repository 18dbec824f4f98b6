package blindlap.stats.compare;

import blindlap.fault.RuleFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a set of admissible orders is worth before anyone rides: how many there are, the smallest p
 * they can give, the level that can be attained, the swaps, and the share of information that is
 * left after a straight trend is removed. All exact, by counting along the graph of orders.
 *
 * @param count number of admissible orders K
 * @param smallestP k!/K for k setups, 2/K for a trend
 * @param attainableLevel largest attainable level not above .05; 0 if there is none
 * @param meanSwaps mean number of stint borders at which the setup changes
 * @param minSwaps least number of such borders
 * @param maxSwaps largest number of such borders
 * @param trendEfficiency harmonic mean over the orders of c/(N/4), c = z'Wz after intercept and
 *     straight trend; null for more than two setups
 */
public record OrderSet(
    BigInteger count,
    double smallestP,
    double attainableLevel,
    double meanSwaps,
    int minSwaps,
    int maxSwaps,
    @Nullable Double trendEfficiency) {

  private static final double LEVEL = 0.05;

  /**
   * Summarises a set.
   *
   * @throws StatsException if the set is empty
   */
  public static OrderSet of(Assignments set) {
    double group = 1;
    for (int i = 2; i <= set.setups(); i++) {
      group *= i;
    }
    return of(set, group);
  }

  /**
   * The same for a trend over levels: its two-sided p counts orders in twos, whatever the number of
   * levels, so that p can be as small as 2/K.
   *
   * @throws StatsException if the set is empty
   */
  public static OrderSet ofTrend(Assignments set) {
    return of(set, 2);
  }

  /** The same orders, counted in twos. */
  public OrderSet ofTrend() {
    return new OrderSet(
        count,
        2 / count.doubleValue(),
        level(count, 2),
        meanSwaps,
        minSwaps,
        maxSwaps,
        trendEfficiency);
  }

  private static double level(BigInteger count, double group) {
    double k = count.doubleValue();
    return group * Math.floor(LEVEL * k / group + 1e-9) / k;
  }

  private static OrderSet of(Assignments set, double group) {
    if (set.count().signum() == 0) {
      throw new Unusable("rule", "admits no order.", RuleFault.NO_ORDER);
    }
    Swaps swaps = new SwapCount(set).from(0, -1);
    return new OrderSet(
        set.count(),
        group / set.count().doubleValue(),
        level(set.count(), group),
        new BigDecimal(swaps.sum)
            .divide(new BigDecimal(set.count()), MathContext.DECIMAL64)
            .doubleValue(),
        swaps.min,
        swaps.max,
        set.setups() == 2 ? TrendEfficiency.of(set) : null);
  }

  private record Swaps(BigInteger sum, int min, int max) {}

  private record At(int node, int last) {}

  private static final class SwapCount {
    private final Assignments set;
    private final Map<At, Swaps> known = new HashMap<>();

    SwapCount(Assignments set) {
      this.set = set;
    }

    Swaps from(int node, int last) {
      Swaps before = known.get(new At(node, last));
      if (before != null) {
        return before;
      }
      BigInteger sum = BigInteger.ZERO;
      int min = Integer.MAX_VALUE;
      int max = 0;
      for (int setup = 0; setup < set.setups(); setup++) {
        int to = set.next(node, setup);
        if (to < 0) {
          continue;
        }
        Swaps rest = from(to, setup);
        int here = last >= 0 && last != setup ? 1 : 0;
        sum = sum.add(rest.sum).add(BigInteger.valueOf(here).multiply(set.completions(to)));
        min = Math.min(min, rest.min + here);
        max = Math.max(max, rest.max + here);
      }
      Swaps result = new Swaps(sum, min == Integer.MAX_VALUE ? 0 : min, max);
      known.put(new At(node, last), result);
      return result;
    }
  }
}
