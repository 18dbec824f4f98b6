package blindlap.stats.compare;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.ScoreCounts;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

/**
 * What a day can still show if stints are lost (docs/method.md#days-cut-short): the set of orders
 * is kept and the lost stints are masked, so that orders which agree on the remaining stints can no
 * longer be told apart. With A such orders the smallest two-sided p is g·A/K, g the number of
 * renamings.
 *
 * <p>Counted exactly along the graph of orders, for sets of any size. Nothing of the drawn order is
 * needed, so the rider may see it.
 *
 * @param smallestP smallest p that any order can still give; 1 if no test is left
 * @param share share of the orders that can still give a p of at most .05
 * @param largestP smallest p of the order that is worst off
 */
public record CutShort(double smallestP, double share, double largestP) {
  private static final double LEVEL = 0.05;

  /**
   * @param set the admissible orders
   * @param left true where the stint remains
   * @param drift what will be removed
   */
  public static CutShort of(Assignments set, boolean[] left, Drift drift) {
    DayCheck.length(set, "valid", left.length, "entries");
    if (DayCheck.count(left) - drift.columns() - (set.setups() - 1) < 1) {
      return new CutShort(1, 0, 1);
    }
    return of(set, renamings(set), classes(set, left), BigInteger.ONE);
  }

  /** The same of a trend over levels, whose p counts orders in twos. */
  public static CutShort ofTrend(Assignments set, boolean[] left, Drift drift) {
    DayCheck.length(set, "valid", left.length, "entries");
    return DayCheck.count(left) - drift.columns() - 1 < 1
        ? new CutShort(1, 0, 1)
        : of(set, 2, classes(set, left), BigInteger.ONE);
  }

  private static double renamings(Assignments set) {
    double group = 1;
    for (int i = 2; i <= set.setups(); i++) {
      group *= i;
    }
    return group;
  }

  /**
   * @param group how many orders that can be told apart a p holds at least
   * @param classes sizes of classes with their number, over all choices of what is lost
   * @param choices how many there are
   */
  private static CutShort of(
      Assignments set,
      double group,
      SortedMap<BigInteger, BigInteger> classes,
      BigInteger choices) {
    double k = set.count().doubleValue();
    BigInteger able = BigInteger.ZERO;
    for (Map.Entry<BigInteger, BigInteger> entry : classes.entrySet()) {
      if (group * entry.getKey().doubleValue() <= LEVEL * k + 1e-9) {
        able = able.add(entry.getKey().multiply(entry.getValue()));
      }
    }
    return new CutShort(
        Math.min(1, group * classes.firstKey().doubleValue() / k),
        ScoreCounts.ratio(able, set.count().multiply(choices)),
        Math.min(1, group * classes.lastKey().doubleValue() / k));
  }

  /** If the day ends after this many stints. */
  public static CutShort after(Assignments set, int stints, Drift drift) {
    return of(set, ridden(set, stints), drift);
  }

  /** The same of a trend over levels. */
  public static CutShort afterOfTrend(Assignments set, int stints, Drift drift) {
    return ofTrend(set, ridden(set, stints), drift);
  }

  private static boolean[] ridden(Assignments set, int stints) {
    if (stints < 0 || stints > set.stints()) {
      throw new StatsException(
          "stints", "must lie between 0 and " + set.stints() + ", but is " + stints + ".");
    }
    boolean[] left = new boolean[set.stints()];
    java.util.Arrays.fill(left, 0, stints, true);
    return left;
  }

  /**
   * If that many stints are lost, averaged over all choices of them.
   *
   * @param lost at most 3, so that what is kept of every choice stays small
   * @return share of orders that can still give a p of at most .05, and smallest and largest p met
   */
  public static CutShort losing(Assignments set, int lost, Drift drift) {
    return losing(set, lost, drift, () -> false);
  }

  /**
   * The same.
   *
   * @param cancelled asked before every stint
   * @throws CancellationException if cancelled
   */
  public static CutShort losing(Assignments set, int lost, Drift drift, BooleanSupplier cancelled) {
    return losing(set, lost, renamings(set), drift.columns() + set.setups() - 1, cancelled);
  }

  /**
   * The same of a trend over levels.
   *
   * @throws CancellationException if cancelled
   */
  public static CutShort losingOfTrend(
      Assignments set, int lost, Drift drift, BooleanSupplier cancelled) {
    return losing(set, lost, 2, drift.columns() + 1, cancelled);
  }

  private static CutShort losing(
      Assignments set, int lost, double group, int columns, BooleanSupplier cancelled) {
    if (lost < 0 || lost > Math.min(3, set.stints())) {
      throw new StatsException("lost", "must lie between 0 and 3, but is " + lost + ".");
    }
    if (set.stints() - lost - columns < 1) {
      return new CutShort(1, 0, 1);
    }
    BigInteger choices = BigInteger.ONE;
    for (int i = 0; i < lost; i++) {
      choices =
          choices.multiply(BigInteger.valueOf(set.stints() - i)).divide(BigInteger.valueOf(i + 1));
    }
    return of(set, group, classesLosing(set, lost, cancelled), choices);
  }

  /**
   * The classes of all choices at once: what choices have in common, before the first stint that is
   * lost and after the last, is gone through once. 36 stints have 630 choices of two.
   */
  private static SortedMap<BigInteger, BigInteger> classesLosing(
      Assignments set, int lost, BooleanSupplier cancelled) {
    List<Map<Map<Integer, BigInteger>, BigInteger>> levels = levels(lost);
    levels.get(0).put(Map.of(0, BigInteger.ONE), BigInteger.ONE);
    for (int i = 0; i < set.stints(); i++) {
      if (cancelled.getAsBoolean()) {
        throw new CancellationException("nobody waits for it any more");
      }
      List<Map<Map<Integer, BigInteger>, BigInteger>> next = levels(lost);
      for (int gone = 0; gone <= lost; gone++) {
        for (Map.Entry<Map<Integer, BigInteger>, BigInteger> at : levels.get(gone).entrySet()) {
          for (int setup = 0; setup < set.setups(); setup++) {
            merge(next.get(gone), step(set, at.getKey(), setup, setup), at.getValue());
          }
          if (gone < lost) {
            merge(next.get(gone + 1), step(set, at.getKey(), 0, set.setups() - 1), at.getValue());
          }
        }
      }
      levels = next;
    }
    return sizes(set, levels.get(lost));
  }

  private static List<Map<Map<Integer, BigInteger>, BigInteger>> levels(int lost) {
    List<Map<Map<Integer, BigInteger>, BigInteger>> levels = new ArrayList<>();
    for (int i = 0; i <= lost; i++) {
      levels.add(new HashMap<>());
    }
    return levels;
  }

  /** Sizes of the classes of orders that agree on the stints left, with their number. */
  private static SortedMap<BigInteger, BigInteger> classes(Assignments set, boolean[] left) {
    // A state is where the orders of one class may stand in the graph, and how many of them there.
    Map<Map<Integer, BigInteger>, BigInteger> level = new HashMap<>();
    level.put(Map.of(0, BigInteger.ONE), BigInteger.ONE);
    int last = left.length;
    while (last > 0 && !left[last - 1]) {
      last--;
    }
    for (int i = 0; i < last; i++) {
      Map<Map<Integer, BigInteger>, BigInteger> next = new HashMap<>();
      for (Map.Entry<Map<Integer, BigInteger>, BigInteger> at : level.entrySet()) {
        if (left[i]) {
          for (int setup = 0; setup < set.setups(); setup++) {
            merge(next, step(set, at.getKey(), setup, setup), at.getValue());
          }
        } else {
          merge(next, step(set, at.getKey(), 0, set.setups() - 1), at.getValue());
        }
      }
      level = next;
    }
    return sizes(set, level);
  }

  private static SortedMap<BigInteger, BigInteger> sizes(
      Assignments set, Map<Map<Integer, BigInteger>, BigInteger> level) {
    SortedMap<BigInteger, BigInteger> sizes = new TreeMap<>();
    level.forEach(
        (state, often) -> {
          BigInteger size = BigInteger.ZERO;
          for (Map.Entry<Integer, BigInteger> at : state.entrySet()) {
            size = size.add(at.getValue().multiply(set.completions(at.getKey())));
          }
          sizes.merge(size, often, BigInteger::add);
        });
    return sizes;
  }

  private static void merge(
      Map<Map<Integer, BigInteger>, BigInteger> next,
      Map<Integer, BigInteger> state,
      BigInteger often) {
    if (!state.isEmpty()) {
      next.merge(state, often, BigInteger::add);
    }
  }

  private static Map<Integer, BigInteger> step(
      Assignments set, Map<Integer, BigInteger> from, int first, int last) {
    Map<Integer, BigInteger> state = new HashMap<>();
    for (Map.Entry<Integer, BigInteger> at : from.entrySet()) {
      for (int setup = first; setup <= last; setup++) {
        int to = set.next(at.getKey(), setup);
        if (to >= 0) {
          state.merge(to, at.getValue(), BigInteger::add);
        }
      }
    }
    return state;
  }
}
