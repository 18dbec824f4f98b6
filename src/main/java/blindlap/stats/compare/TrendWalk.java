package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Walks a set of orders of several levels and hands on, for every order, sums that are linear in
 * the stints or squares of such sums: of vectors that the level multiplies. With Q an orthonormal
 * basis of the nuisance columns, a'Wb is Σab on the stints used less the products of the sums Q'a
 * and Q'b, so that running sums are all that an order needs.
 */
final class TrendWalk {
  /** Takes an order's sums. */
  interface Visitor {
    /**
     * @param sums x'e, x'Wx_obs, x'Wy, u'Wy, Σx², Σxu, Σu², then Q'x and Q'u
     */
    void order(double[] sums);
  }

  /** Where the sums of the nuisance columns start. */
  static final int NUISANCE = 7;

  private final Assignments set;
  private final int n;

  /** {@code steps[stint][level]}: what riding a level on a stint adds to every sum. */
  private final double[][][] steps;

  private final double[][] sums;
  private final Visitor visitor;

  /**
   * @param x the level of each setup, centred, over the whole range
   * @param u the quadratic contrast of each level
   * @param vectors e, Wx_obs and Wy, each one number a stint
   */
  TrendWalk(
      Assignments set,
      Residuals residuals,
      boolean[] used,
      double[] x,
      double[] u,
      double[][] vectors,
      Visitor visitor) {
    this.set = set;
    this.n = set.stints();
    this.visitor = visitor;
    int columns = residuals.columns();
    this.steps = new double[n][x.length][];
    for (int i = 0; i < n; i++) {
      for (int level = 0; level < x.length; level++) {
        double[] step = new double[NUISANCE + 2 * columns];
        step[0] = vectors[0][i] * x[level];
        step[1] = vectors[1][i] * x[level];
        step[2] = vectors[2][i] * x[level];
        step[3] = vectors[2][i] * u[level];
        if (used[i]) {
          step[4] = x[level] * x[level];
          step[5] = x[level] * u[level];
          step[6] = u[level] * u[level];
        }
        for (int q = 0; q < columns; q++) {
          step[NUISANCE + q] = residuals.column(q)[i] * x[level];
          step[NUISANCE + columns + q] = residuals.column(q)[i] * u[level];
        }
        steps[i][level] = step;
      }
    }
    this.sums = new double[n + 1][NUISANCE + 2 * columns];
  }

  /**
   * A product a'Wb from an order's sums.
   *
   * @param columns nuisance columns
   * @param at place of the plain sum of products
   * @param first 0 for x, 1 for u
   * @param second the same of the other factor
   */
  static double product(double[] sums, int columns, int at, int first, int second) {
    double product = sums[at];
    for (int q = 0; q < columns; q++) {
      product -= sums[NUISANCE + first * columns + q] * sums[NUISANCE + second * columns + q];
    }
    return product;
  }

  void run() {
    walk(0, 0);
  }

  void visit(int[] order) {
    for (int i = 0; i < n; i++) {
      add(i, order[i]);
    }
    visitor.order(sums[n]);
  }

  void sample(int draws, UniformRandomProvider source) {
    int[] order = new int[n];
    for (int draw = 0; draw < draws; draw++) {
      set.random(source, order);
      visit(order);
    }
  }

  private void walk(int i, int node) {
    if (i == n) {
      visitor.order(sums[n]);
      return;
    }
    for (int level = 0; level < set.setups(); level++) {
      int to = set.next(node, level);
      if (to >= 0) {
        add(i, level);
        walk(i + 1, to);
      }
    }
  }

  private void add(int i, int level) {
    double[] step = steps[i][level];
    double[] now = sums[i];
    double[] then = sums[i + 1];
    for (int s = 0; s < step.length; s++) {
      then[s] = now[s] + step[s];
    }
  }
}
