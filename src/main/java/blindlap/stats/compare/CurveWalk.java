package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.OrderTable;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Depth-first walk over half of a two-setup set (the first stint on A; the mirror image gives the
 * other half) that hands on the sums z'x, z'y and z'Wz of every order (docs/method.md#walk).
 *
 * <p>With Q an orthonormal basis of the nuisance columns, W = I − QQ' on the stints used, so that
 * z'Wz is a quarter of their number less the squares of the sums Q'z: a few running sums are all
 * that an order needs. They live on the stack, so there is no accumulated rounding and the cost per
 * order is constant on average. Large sets can be sampled with the same sums. Days with covariates
 * have up to two more columns and a walk of their own, so that the others do not pay for them.
 */
public final class CurveWalk {
  private final Assignments set;
  private final int n;
  private final int[] toA;
  private final int[] toB;
  private final double[] x;
  private final double[] y;
  private final double[] q0;
  private final double[] q1;
  private final double[] q2;

  /** The columns beyond the third; empty without covariates. */
  private final double[][] more;

  private final double quarter;
  private final PairSums sink;

  public CurveWalk(Assignments set, Residuals residuals, double[] x, double[] y, PairSums sink) {
    this.set = set;
    this.n = set.stints();
    this.toA = set.graph()[0];
    this.toB = set.graph()[1];
    this.x = halved(x);
    this.y = halved(y);
    this.q0 = halved(residuals.column(0));
    this.q1 = halved(residuals.column(1));
    this.q2 = halved(residuals.column(2));
    this.more = new double[Math.max(0, residuals.columns() - 3)][];
    for (int i = 0; i < more.length; i++) {
      more[i] = halved(residuals.column(3 + i));
    }
    this.quarter = residuals.used() / 4.0;
    this.sink = sink;
  }

  private static double[] halved(double[] full) {
    double[] half = new double[full.length];
    for (int i = 0; i < half.length; i++) {
      half[i] = full[i] / 2;
    }
    return half;
  }

  public void run() {
    int to = toA[0];
    if (to < 0) {
      return;
    }
    if (more.length == 0) {
      onA(0, to, 0, 0, 0, 0, 0);
    } else {
      double[][] sums = new double[n + 1][5 + more.length];
      add(0, -1, sums);
      wide(1, to, sums);
    }
  }

  private void wide(int i, int node, double[][] sums) {
    if (i == n) {
      leaf(sums[n]);
      return;
    }
    if (toA[node] >= 0) {
      add(i, -1, sums);
      wide(i + 1, toA[node], sums);
    }
    if (toB[node] >= 0) {
      add(i, 1, sums);
      wide(i + 1, toB[node], sums);
    }
  }

  private void add(int i, int sign, double[][] sums) {
    double[] now = sums[i];
    double[] then = sums[i + 1];
    then[0] = now[0] + sign * x[i];
    then[1] = now[1] + sign * y[i];
    then[2] = now[2] + sign * q0[i];
    then[3] = now[3] + sign * q1[i];
    then[4] = now[4] + sign * q2[i];
    for (int q = 0; q < more.length; q++) {
      then[5 + q] = now[5 + q] + sign * more[q][i];
    }
  }

  private void leaf(double[] sums) {
    double c = quarter;
    for (int q = 2; q < sums.length; q++) {
      c -= sums[q] * sums[q];
    }
    sink.orderAndMirror(sums[0], sums[1], c);
  }

  /** Random orders, each with its mirror image, in place of the walk. */
  public void sample(int draws, UniformRandomProvider source) {
    OrderTable table = set.table();
    if (table != null && more.length == 0) {
      sample(draws, source, table);
      return;
    }
    int[] order = new int[n];
    double[][] sums = new double[n + 1][5 + more.length];
    for (int draw = 0; draw < draws; draw++) {
      set.random(source, order);
      for (int i = 0; i < n; i++) {
        add(i, 2 * order[i] - 1, sums);
      }
      leaf(sums[n]);
    }
  }

  private void sample(int draws, UniformRandomProvider source, OrderTable table) {
    double[] ofX = table.sums(x);
    double[] ofY = table.sums(y);
    double[] of0 = table.sums(q0);
    double[] of1 = table.sums(q1);
    double[] of2 = table.sums(q2);
    for (int draw = 0; draw < draws; draw++) {
      long order = table.random(source);
      double s0 = table.sum(of0, order);
      double s1 = table.sum(of1, order);
      double s2 = table.sum(of2, order);
      sink.orderAndMirror(
          table.sum(ofX, order), table.sum(ofY, order), quarter - s0 * s0 - s1 * s1 - s2 * s2);
    }
  }

  private void walk(int i, int node, double a, double b, double s0, double s1, double s2) {
    if (i == n) {
      sink.orderAndMirror(a, b, quarter - s0 * s0 - s1 * s1 - s2 * s2);
      return;
    }
    int nodeA = toA[node];
    int nodeB = toB[node];
    if (nodeA >= 0) {
      onA(i, nodeA, a, b, s0, s1, s2);
    }
    if (nodeB >= 0) {
      walk(i + 1, nodeB, a + x[i], b + y[i], s0 + q0[i], s1 + q1[i], s2 + q2[i]);
    }
  }

  private void onA(int i, int to, double a, double b, double s0, double s1, double s2) {
    walk(i + 1, to, a - x[i], b - y[i], s0 - q0[i], s1 - q1[i], s2 - q2[i]);
  }
}
