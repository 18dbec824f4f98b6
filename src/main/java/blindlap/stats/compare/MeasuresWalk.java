package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.Nuisance;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Depth-first walk over half of a two-setup set that hands on R of every measure; the mirror image
 * of an order has the same R. Measures from which the same is removed share their part of z'Wz.
 */
final class MeasuresWalk {
  private final Assignments set;
  private final int n;
  private final int[] toA;
  private final int[] toB;
  private final List<MeasureColumn> columns;
  private final MeasuresTally tally;
  private final double[][][] w;
  private final int[] projection;
  private final double[][][] partial;
  private final double[][] a;
  private final double[][] c;
  private final double[] r;

  MeasuresWalk(Assignments set, List<MeasureColumn> columns, MeasuresTally tally) {
    this.set = set;
    this.n = set.stints();
    this.toA = set.graph()[0];
    this.toB = set.graph()[1];
    this.columns = List.copyOf(columns);
    this.tally = tally;
    List<Nuisance> removed = new ArrayList<>();
    List<double[][]> matrices = new ArrayList<>();
    this.projection = new int[columns.size()];
    for (int m = 0; m < projection.length; m++) {
      Residuals residuals = columns.get(m).residuals;
      if (!removed.contains(residuals.nuisance())) {
        removed.add(residuals.nuisance());
        matrices.add(residuals.matrix());
      }
      projection[m] = removed.indexOf(residuals.nuisance());
    }
    this.w = matrices.toArray(new double[0][][]);
    this.partial = new double[w.length][n + 1][n];
    this.a = new double[n + 1][columns.size()];
    this.c = new double[n + 1][w.length];
    this.r = new double[columns.size()];
  }

  void run() {
    int to = toA[0];
    if (to >= 0) {
      add(0, -0.5);
      walk(1, to);
    }
  }

  /** Hands on one order. */
  void visit(int[] order) {
    for (int i = 0; i < n; i++) {
      add(i, order[i] - 0.5);
    }
    leaf();
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
      leaf();
      return;
    }
    if (toA[node] >= 0) {
      add(i, -0.5);
      walk(i + 1, toA[node]);
    }
    if (toB[node] >= 0) {
      add(i, 0.5);
      walk(i + 1, toB[node]);
    }
  }

  private void leaf() {
    for (int m = 0; m < r.length; m++) {
      r[m] = columns.get(m).share(a[n][m], c[n][projection[m]]);
    }
    tally.order(r);
  }

  private void add(int i, double z) {
    for (int m = 0; m < r.length; m++) {
      a[i + 1][m] = a[i][m] + z * columns.get(m).residual[i];
    }
    for (int p = 0; p < w.length; p++) {
      double[] row = w[p][i];
      double[] now = partial[p][i];
      double[] then = partial[p][i + 1];
      c[i + 1][p] = c[i][p] + z * (z * row[i] + 2 * now[i]);
      for (int j = i + 1; j < n; j++) {
        then[j] = now[j] + z * row[j];
      }
    }
  }
}
