package blindlap.stats.order;

import blindlap.fault.StatsException;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.apache.commons.rng.UniformRandomProvider;
import org.jspecify.annotations.Nullable;

/**
 * The set of admissible orders of a rule, all equally likely: as a walk, a count, a membership test
 * and a draw for reference sets. It is held as a layered graph whose paths are the orders, so that
 * counting, listing in lexicographic order and drawing never need the orders themselves.
 *
 * <p>An order is an array of setup indices (0 = A), one per stint. Immutable.
 */
public final class Assignments {
  private static final int NOWHERE = -1;

  private final int setups;
  private final int stints;

  /** {@code next[setup][node]}: where the graph goes when that setup is ridden, or NOWHERE. */
  private final int[][] next;

  private final BigInteger[] completions;

  /** The same as {@code long}, for fast draws; null for sets beyond 2^62. */
  private final long @Nullable [] ways;

  private final boolean balanced;
  private final boolean closed;

  /** Made when first asked for; two threads may both make it, and make the same. */
  private volatile @Nullable OrderTable table;

  Assignments(int setups, int stints, int[][] next, BigInteger[] completions, boolean balanced) {
    this.setups = setups;
    this.stints = stints;
    this.next = next;
    this.completions = completions;
    this.balanced = balanced;
    this.ways = completions[0].bitLength() < 63 ? longs(completions) : null;
    this.closed = isClosed();
  }

  private static long[] longs(BigInteger[] values) {
    long[] result = new long[values.length];
    for (int i = 0; i < result.length; i++) {
      result[i] = values[i].longValueExact();
    }
    return result;
  }

  /**
   * Starts a rule.
   *
   * @param setups number of setups, 2 to 26
   * @param stints number of stints, at least 1
   */
  public static AssignmentsBuilder rule(int setups, int stints) {
    return new AssignmentsBuilder(setups, stints);
  }

  /**
   * Exactly the listed orders.
   *
   * @param orders letters, all of one length; duplicates count once
   * @throws StatsException if the list is empty or uneven
   */
  public static Assignments listed(List<String> orders) {
    return AssignmentsBuilder.listed(orders);
  }

  /**
   * Sequences drawn one after the other, each on its own from the same list: the trials of a run.
   *
   * @param sequences letters, all of one length; duplicates count once
   * @param times how many are ridden, at least 1
   * @throws StatsException if the list is empty or uneven, or the order gets too long
   */
  public static Assignments repeated(List<String> sequences, int times) {
    return AssignmentsBuilder.repeated(sequences, times);
  }

  /** Number of setups. */
  public int setups() {
    return setups;
  }

  /** Number of stints in every order. */
  public int stints() {
    return stints;
  }

  /** Number of admissible orders, exact. */
  public BigInteger count() {
    return completions[0];
  }

  /** True if every order holds every setup equally often. */
  public boolean balanced() {
    return balanced;
  }

  /** True if there are at most this many orders. */
  public boolean atMost(long limit) {
    return count().compareTo(BigInteger.valueOf(limit)) <= 0;
  }

  /** True if the order is admissible. */
  public boolean contains(int[] order) {
    if (order.length != stints) {
      return false;
    }
    int node = 0;
    for (int setup : order) {
      if (setup < 0 || setup >= setups || next[setup][node] == NOWHERE) {
        return false;
      }
      node = next[setup][node];
    }
    return true;
  }

  /**
   * The order at a place of the lexicographic list.
   *
   * @param index from 0 to count() − 1
   * @throws IndexOutOfBoundsException outside that range
   */
  public int[] order(BigInteger index) {
    if (index.signum() < 0 || index.compareTo(count()) >= 0) {
      throw new IndexOutOfBoundsException("there is no order number " + index);
    }
    int[] order = new int[stints];
    BigInteger left = index;
    int node = 0;
    for (int i = 0; i < stints; i++) {
      for (int setup = 0; setup < setups; setup++) {
        int to = next[setup][node];
        if (to == NOWHERE) {
          continue;
        }
        if (left.compareTo(completions[to]) < 0) {
          order[i] = setup;
          node = to;
          break;
        }
        left = left.subtract(completions[to]);
      }
    }
    return order;
  }

  /**
   * A uniformly random admissible order for a reference set or a simulation. The order that will be
   * ridden is never drawn here.
   */
  public int[] random(UniformRandomProvider source) {
    int[] order = new int[stints];
    random(source, order);
    return order;
  }

  /** As {@link #random(UniformRandomProvider)}, into an array of the caller. */
  public void random(UniformRandomProvider source, int[] order) {
    if (ways == null) {
      System.arraycopy(order(below(count(), source)), 0, order, 0, stints);
      return;
    }
    long left = source.nextLong(ways[0]);
    int node = 0;
    for (int i = 0; i < stints; i++) {
      int setup = 0;
      int to = next[0][node];
      while (to == NOWHERE || left >= ways[to]) {
        left -= to == NOWHERE ? 0 : ways[to];
        setup++;
        to = next[setup][node];
      }
      order[i] = setup;
      node = to;
    }
  }

  private static BigInteger below(BigInteger bound, UniformRandomProvider source) {
    int bits = bound.bitLength();
    byte[] bytes = new byte[(bits + 7) / 8];
    while (true) {
      source.nextBytes(bytes);
      BigInteger candidate =
          new BigInteger(1, bytes).and(BigInteger.ONE.shiftLeft(bits).subtract(BigInteger.ONE));
      if (candidate.compareTo(bound) < 0) {
        return candidate;
      }
    }
  }

  /** Visits every order in lexicographic order; the array is reused, so copy what is kept. */
  public void forEach(Consumer<int[]> visitor) {
    visit(0, 0, new int[stints], visitor);
  }

  private void visit(int i, int node, int[] order, Consumer<int[]> visitor) {
    if (i == stints) {
      visitor.accept(order);
      return;
    }
    for (int setup = 0; setup < setups; setup++) {
      int to = next[setup][node];
      if (to != NOWHERE) {
        order[i] = setup;
        visit(i + 1, to, order, visitor);
      }
    }
  }

  /** True if renaming the setups in any way leads from admissible orders to admissible orders. */
  public boolean closedUnderRenaming() {
    return closed;
  }

  private boolean isClosed() {
    // Two neighbouring transpositions and so on generate all renamings.
    for (int a = 0; a + 1 < setups; a++) {
      if (!sameUnderSwap(0, 0, a, new java.util.HashSet<>())) {
        return false;
      }
    }
    return true;
  }

  private boolean sameUnderSwap(int p, int q, int a, java.util.Set<Long> seen) {
    if (!seen.add(((long) p << 32) | q)) {
      return true;
    }
    for (int setup = 0; setup < setups; setup++) {
      int image = setup == a ? a + 1 : setup == a + 1 ? a : setup;
      int to = next[setup][p];
      int toImage = next[image][q];
      if ((to == NOWHERE) != (toImage == NOWHERE)) {
        return false;
      }
      if (to != NOWHERE && !sameUnderSwap(to, toImage, a, seen)) {
        return false;
      }
    }
    return true;
  }

  /** The orders as bits, for fast draws; null for other than two setups and for large sets. */
  public @Nullable OrderTable table() {
    OrderTable known = table;
    if (known == null && OrderTable.fits(this)) {
      known = OrderTable.of(this);
      table = known;
    }
    return known;
  }

  /** Where the graph goes from a node when a setup is ridden; −1 if nowhere. The root is 0. */
  public int next(int node, int setup) {
    return next[setup][node];
  }

  /** All continuations, {@code [setup][node]}, for the inner loops of this package. */
  public int[][] graph() {
    return next;
  }

  public int nodes() {
    return completions.length;
  }

  public BigInteger completions(int node) {
    return completions[node];
  }

  @Override
  public String toString() {
    return "Assignments[" + setups + " setups, " + stints + " stints, " + count() + " orders]";
  }

  /** The orders as sorted letters; only sensible for small sets. */
  public List<String> list() {
    String[] all = new String[count().intValueExact()];
    int[] at = {0};
    forEach(order -> all[at[0]++] = Orders.letters(order));
    return Arrays.asList(all);
  }
}
