package blindlap.stats;

import org.apache.commons.rng.UniformRandomProvider;

/**
 * Depth-first walk over half of a two-setup set (the first stint on A; the mirror image gives the
 * other half) that hands on the sums z'x, z'y and z'Wz of every order (METHOD 2.1). Partial sums
 * live on the stack, so there is no accumulated rounding and the cost per order is constant on
 * average. Large sets can be sampled with the same sums.
 */
final class CurveWalk {
  private final Assignments set;
  private final int n;
  private final int[] toA;
  private final int[] toB;
  private final double[][] w;
  private final double[] e;
  private final double[] wz;
  private final double[][] partial;
  private final PairSums sink;

  CurveWalk(Assignments set, double[][] w, double[] e, double[] wz, PairSums sink) {
    this.set = set;
    this.n = set.stints();
    this.toA = set.graph()[0];
    this.toB = set.graph()[1];
    this.w = w;
    this.e = e;
    this.wz = wz;
    this.partial = new double[n + 1][n];
    this.sink = sink;
  }

  void run() {
    int to = toA[0];
    if (to >= 0) {
      take(0, to, -0.5, 0, 0, 0);
    }
  }

  /** Random orders, each with its mirror image, in place of the walk. */
  void sample(int draws, UniformRandomProvider source) {
    int[] order = new int[n];
    double[] v = new double[n];
    for (int draw = 0; draw < draws; draw++) {
      set.random(source, order);
      double a = 0;
      double b = 0;
      double c = 0;
      java.util.Arrays.fill(v, 0);
      for (int i = 0; i < n; i++) {
        double z = order[i] - 0.5;
        double[] row = w[i];
        a += z * e[i];
        b += z * wz[i];
        c += z * (z * row[i] + 2 * v[i]);
        for (int j = i + 1; j < n; j++) {
          v[j] += z * row[j];
        }
      }
      sink.orderAndMirror(a, b, c);
    }
  }

  private void walk(int i, int node, double a, double b, double c) {
    if (i == n) {
      sink.orderAndMirror(a, b, c);
      return;
    }
    int nodeA = toA[node];
    int nodeB = toB[node];
    if (nodeA >= 0) {
      take(i, nodeA, -0.5, a, b, c);
    }
    if (nodeB >= 0) {
      take(i, nodeB, 0.5, a, b, c);
    }
  }

  private void take(int i, int to, double z, double a, double b, double c) {
    double[] now = partial[i];
    double[] then = partial[i + 1];
    double[] row = w[i];
    for (int j = i + 1; j < n; j++) {
      then[j] = now[j] + row[j] * z;
    }
    walk(i + 1, to, a + z * e[i], b + z * wz[i], c + z * z * row[i] + 2 * z * now[i]);
  }
}
