package blindlap.stats.power;

import blindlap.stats.compare.Residuals;
import blindlap.stats.order.Assignments;
import java.util.Arrays;

/**
 * How many degrees of freedom the draw of the order gives the test. Of the noise that is left after
 * drift, a re-randomisation test learns only what its orders mix: of pairs AB/BA only the
 * differences within pairs, however many stints there are. So the reference spread y'My, M = WΣW
 * with Σ the covariance of "B is ridden" over the set (of a trend: of the level ridden), counts as
 * a χ² on (tr M)²/tr M² degrees of freedom (Satterthwaite 1946, Biometrics Bulletin 2:110), less
 * one for the difference itself. Every order but drift being possible, this is N − nuisance columns
 * − 1.
 */
final class OrderFreedom {
  private final Assignments set;
  private final int n;

  /** Share of the orders that pass a node of the graph. */
  private final double[] share;

  /** Share of the orders of a node that go on with each setup; by node. */
  private final double[][] chance;

  /** The nodes of every stint, as far as orders pass them. */
  private final int[][] layers;

  /** What a setup counts for: 0 and 1 of two, the level of several. */
  private final double[] score;

  private OrderFreedom(Assignments set, double[] score) {
    this.set = set;
    this.score = score;
    this.n = set.stints();
    this.share = new double[set.nodes()];
    this.chance = chances(set);
    this.layers = new int[n + 1][];
    layers[0] = new int[] {0};
    share[0] = 1;
    for (int i = 0; i < n; i++) {
      layers[i + 1] = step(layers[i], share, new int[set.nodes()]);
    }
  }

  /**
   * @param set two setups, at least one order
   * @param residuals what drift leaves of the stints used
   * @return at least 1, at most N − nuisance columns − 1 wherever that is 1 or more
   */
  static double of(Assignments set, Residuals residuals) {
    return of(set, new double[] {0, 1}, residuals);
  }

  /**
   * The same of a trend.
   *
   * @param score a number for each setup
   */
  static double of(Assignments set, double[] score, Residuals residuals) {
    double[][] w = residuals.matrix();
    double[][] m = times(times(w, new OrderFreedom(set, score).covariance()), w);
    double trace = 0;
    double squares = 0;
    for (int i = 0; i < m.length; i++) {
      trace += m[i][i];
      squares += Residuals.dot(m[i], m[i]);
    }
    double df = squares > 0 ? trace * trace / squares - 1 : 1;
    return Math.max(1, df);
  }

  /** Covariance over the set of the scores in two stints. */
  private double[][] covariance() {
    double[][] both = new double[n][n];
    double[] often = new double[n];
    for (int i = 0; i < n; i++) {
      double[] mass = new double[set.nodes()];
      for (int node : layers[i]) {
        for (int setup = 0; setup < score.length; setup++) {
          int to = set.next(node, setup);
          if (to >= 0 && score[setup] != 0) {
            double part = share[node] * chance[node][setup] * score[setup];
            mass[to] += part;
            often[i] += part;
            both[i][i] += part * score[setup];
          }
        }
      }
      for (int j = i + 1; j < n; j++) {
        both[i][j] = push(layers[j], mass);
        both[j][i] = both[i][j];
      }
    }
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        both[i][j] -= often[i] * often[j];
      }
    }
    return both;
  }

  /** Moves mass on by one stint; returns its sum, weighted by the score ridden. */
  private double push(int[] layer, double[] mass) {
    double sum = 0;
    for (int node : layer) {
      if (mass[node] == 0) {
        continue;
      }
      for (int setup = 0; setup < score.length; setup++) {
        int to = set.next(node, setup);
        if (to >= 0) {
          double part = mass[node] * chance[node][setup];
          mass[to] += part;
          sum += score[setup] * part;
        }
      }
    }
    return sum;
  }

  private int[] step(int[] layer, double[] mass, int[] found) {
    int count = 0;
    for (int node : layer) {
      for (int setup = 0; setup < score.length; setup++) {
        int to = set.next(node, setup);
        if (to >= 0) {
          if (mass[to] == 0) {
            found[count++] = to;
          }
          mass[to] += mass[node] * chance[node][setup];
        }
      }
    }
    return Arrays.copyOf(found, count);
  }

  /** Once for all: the numbers are long, and every pair of stints asks for them. */
  private static double[][] chances(Assignments set) {
    double[] orders = new double[set.nodes()];
    Arrays.setAll(orders, node -> set.completions(node).doubleValue());
    double[][] chances = new double[set.nodes()][set.setups()];
    for (int node = 0; node < chances.length; node++) {
      for (int setup = 0; setup < set.setups(); setup++) {
        int to = set.next(node, setup);
        chances[node][setup] = to < 0 ? 0 : orders[to] / orders[node];
      }
    }
    return chances;
  }

  private static double[][] times(double[][] a, double[][] b) {
    int n = a.length;
    double[][] product = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < n; k++) {
        for (int j = 0; j < n; j++) {
          product[i][j] += a[i][k] * b[k][j];
        }
      }
    }
    return product;
  }
}
