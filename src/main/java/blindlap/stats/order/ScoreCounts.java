package blindlap.stats.order;

import java.math.BigInteger;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.LongPredicate;

/**
 * How many admissible orders have each value of a sum of whole-number scores, one score per stint
 * and setup. Counted along the graph of orders, so that it is exact for sets of any size.
 */
public final class ScoreCounts {
  private final SortedMap<Long, BigInteger> often;

  private ScoreCounts(SortedMap<Long, BigInteger> often) {
    this.often = often;
  }

  /**
   * @param score {@code [stint][setup]}
   */
  public static ScoreCounts of(Assignments set, long[][] score) {
    Map<Integer, Map<Long, BigInteger>> level = new HashMap<>();
    level.put(0, Map.of(0L, BigInteger.ONE));
    for (int i = 0; i < set.stints(); i++) {
      Map<Integer, Map<Long, BigInteger>> next = new HashMap<>();
      for (Map.Entry<Integer, Map<Long, BigInteger>> at : level.entrySet()) {
        for (int setup = 0; setup < set.setups(); setup++) {
          int to = set.next(at.getKey(), setup);
          if (to >= 0) {
            add(next.computeIfAbsent(to, key -> new HashMap<>()), at.getValue(), score[i][setup]);
          }
        }
      }
      level = next;
    }
    SortedMap<Long, BigInteger> total = new TreeMap<>();
    level.values().forEach(sums -> add(total, sums, 0));
    return new ScoreCounts(total);
  }

  private static void add(Map<Long, BigInteger> to, Map<Long, BigInteger> from, long score) {
    from.forEach((sum, count) -> to.merge(sum + score, count, BigInteger::add));
  }

  /** Every attained sum with its number of orders, ascending. */
  public SortedMap<Long, BigInteger> counts() {
    return often;
  }

  /** Number of orders whose sum satisfies a condition. */
  public BigInteger count(LongPredicate condition) {
    BigInteger sum = BigInteger.ZERO;
    for (Map.Entry<Long, BigInteger> entry : often.entrySet()) {
      sum = condition.test(entry.getKey()) ? sum.add(entry.getValue()) : sum;
    }
    return sum;
  }

  /** Share of orders whose sum satisfies a condition, correctly rounded. */
  public double share(Assignments set, LongPredicate condition) {
    return ratio(count(condition), set.count());
  }

  public static double ratio(BigInteger part, BigInteger whole) {
    return new java.math.BigDecimal(part)
        .divide(new java.math.BigDecimal(whole), new java.math.MathContext(20))
        .doubleValue();
  }
}
