package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Depth-first walk over the orders of a set of several setups that hands on, for every order, the
 * sums of the residuals per setup and the matrix D'WD of the setups' indicators. If the set is
 * closed under renaming, one order stands for all its renamings: setups appear in alphabetical
 * order.
 */
public final class ManyWalk {
  /** Takes an order's sums. */
  interface Visitor {
    /**
     * @param sums sum of Wy over the stints of each setup, then the lower triangle of D'WD row by
     *     row
     * @param at where in {@code sums} they start
     * @param seen number of setups that appear
     */
    void order(double[] sums, int at, int seen);
  }

  private final Assignments set;
  private final int n;
  private final int k;
  private final int width;
  private final boolean closed;
  private final double[][] w;
  private final double[] residual;
  private final Visitor visitor;

  /** Row i holds the sums of the first i stints. */
  private final double[][] sums;

  /** {@code partial[setup][j]}: Σ W over the stints of a setup so far, after j of them. */
  private final double[][][] partial;

  private final int[] often;

  ManyWalk(Assignments set, double[][] w, double[] residual, Visitor visitor) {
    this.set = set;
    this.n = set.stints();
    this.k = set.setups();
    this.closed = set.closedUnderRenaming();
    this.w = w;
    this.residual = residual;
    this.visitor = visitor;
    this.width = k + k * (k + 1) / 2;
    this.sums = new double[n + 1][width];
    this.partial = new double[k][n + 1][n];
    this.often = new int[k];
  }

  /** True if one visit stands for all renamings of an order. */
  boolean closed() {
    return closed;
  }

  void run() {
    walk(0, 0, 0);
  }

  /** Visits one order, as it is named. */
  void visit(int[] order) {
    int seen = 0;
    for (int i = 0; i < n; i++) {
      seen = Math.max(seen, order[i] + 1);
      add(i, order[i]);
    }
    visitor.order(sums[n], 0, seen);
    java.util.Arrays.fill(often, 0);
  }

  /** Visits random orders. */
  void sample(int draws, UniformRandomProvider source) {
    int[] order = new int[n];
    for (int draw = 0; draw < draws; draw++) {
      set.random(source, order);
      visit(order);
    }
  }

  private void walk(int i, int node, int seen) {
    if (i == n) {
      visitor.order(sums[n], 0, seen);
      return;
    }
    int last = closed ? Math.min(seen, k - 1) : k - 1;
    for (int setup = 0; setup <= last; setup++) {
      int to = set.next(node, setup);
      if (to >= 0) {
        add(i, setup);
        walk(i + 1, to, Math.max(seen, setup + 1));
        often[setup]--;
      }
    }
  }

  private void add(int i, int setup) {
    double[] row = w[i];
    double[] now = sums[i];
    double[] then = sums[i + 1];
    System.arraycopy(now, 0, then, 0, width);
    then[setup] += residual[i];
    double[] own = partial[setup][often[setup]];
    for (int other = 0; other < k; other++) {
      if (other != setup && often[other] > 0) {
        then[place(setup, other)] += partial[other][often[other]][i];
      }
    }
    boolean first = often[setup] == 0;
    then[place(setup, setup)] += row[i] + (first ? 0 : 2 * own[i]);
    double[] next = partial[setup][++often[setup]];
    for (int j = i + 1; j < n; j++) {
      next[j] = (first ? 0 : own[j]) + row[j];
    }
  }

  private int place(int a, int b) {
    return place(k, a, b);
  }

  /** Where the element (a, b) of D'WD stands among the sums of k setups. */
  public static int place(int k, int a, int b) {
    int row = Math.max(a, b);
    return k + row * (row + 1) / 2 + Math.min(a, b);
  }
}
