package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.List;

/**
 * The largest share that an order explains of the residuals of any piece, over half of a two-setup
 * set (mirror images explain as much): of the pieces themselves and of their running sums.
 */
final class AlongWalk {
  private final Assignments set;
  private final int n;
  private final int pieces;
  private final int columns;
  private final double quarter;
  private final int df;

  /** {@code steps[stint]}: half of each piece's residual, then of each nuisance column. */
  private final double[][] steps;

  /** Squared lengths of the residuals; 0 for a piece that is left out. */
  private final double[] lengths;

  private final double[] runningLengths;
  private final double[][] sums;
  private double[] largest = new double[0];
  private double[] largestRunning = new double[0];
  private int size;

  AlongWalk(Assignments set, Residuals residuals, List<SetupFit> fits) {
    this.set = set;
    this.n = set.stints();
    this.pieces = fits.size();
    this.columns = residuals.columns();
    this.quarter = residuals.used() / 4.0;
    this.df = fits.get(0).df;
    this.steps = new double[n][pieces + columns];
    this.lengths = new double[pieces];
    this.runningLengths = new double[pieces];
    double[] running = new double[n];
    boolean varies = false;
    for (int piece = 0; piece < pieces; piece++) {
      SetupFit fit = fits.get(piece);
      varies |= !fit.noVariation;
      for (int i = 0; i < n; i++) {
        steps[i][piece] = fit.e[i] / 2;
        running[i] += fit.e[i];
      }
      lengths[piece] = fit.noVariation ? 0 : Residuals.dot(fit.e, fit.e);
      runningLengths[piece] = varies ? Residuals.dot(running, running) : 0;
    }
    for (int q = 0; q < columns; q++) {
      for (int i = 0; i < n; i++) {
        steps[i][pieces + q] = residuals.column(q)[i] / 2;
      }
    }
    this.sums = new double[n + 1][pieces + columns];
  }

  /**
   * Half-widths in standard errors that all pieces, and all running sums, exceed on a share of
   * orders.
   *
   * @param level for example .05
   * @return of the pieces, of the running sums; NaN where nothing varies
   */
  double[] limits(int[] order, double level, Sampling sampling) {
    boolean sampled = sampling.samples(set);
    int capacity = sampled ? sampling.draws() + 1 : set.count().intValueExact() / 2;
    largest = new double[capacity];
    largestRunning = new double[capacity];
    if (sampled) {
      visit(order);
      int[] drawn = new int[n];
      var source = sampling.source();
      for (int draw = 0; draw < sampling.draws(); draw++) {
        set.random(source, drawn);
        visit(drawn);
      }
    } else {
      int to = set.next(0, 0);
      add(0, -1);
      walk(1, to);
    }
    return new double[] {limit(largest, level), limit(largestRunning, level)};
  }

  /** Every share stands for an order and its mirror image. */
  private double limit(double[] shares, double level) {
    Arrays.sort(shares, 0, size);
    int rank = (int) Math.floor(level * 2 * size + 1e-9) + 1;
    double share = shares[size - (rank + 1) / 2];
    return share > 0 ? Math.sqrt(df * share / (1 - share)) : Double.NaN;
  }

  private void visit(int[] order) {
    for (int i = 0; i < n; i++) {
      add(i, order[i] == 0 ? -1 : 1);
    }
    leaf();
  }

  private void walk(int i, int node) {
    if (i == n) {
      leaf();
      return;
    }
    for (int setup = 0; setup < 2; setup++) {
      int to = set.next(node, setup);
      if (to >= 0) {
        add(i, setup == 0 ? -1 : 1);
        walk(i + 1, to);
      }
    }
  }

  private void add(int i, int sign) {
    double[] step = steps[i];
    double[] now = sums[i];
    double[] then = sums[i + 1];
    for (int s = 0; s < step.length; s++) {
      then[s] = now[s] + sign * step[s];
    }
  }

  private void leaf() {
    double[] order = sums[n];
    double c = quarter;
    for (int q = pieces; q < order.length; q++) {
      c -= order[q] * order[q];
    }
    double own = 0;
    double all = 0;
    if (c > 1e-9 * quarter) {
      double running = 0;
      for (int piece = 0; piece < pieces; piece++) {
        running += order[piece];
        own = larger(own, order[piece], c * lengths[piece]);
        all = larger(all, running, c * runningLengths[piece]);
      }
    }
    largest[size] = own;
    largestRunning[size] = all;
    size++;
  }

  private static double larger(double so, double sum, double length) {
    return length > 0 ? Math.max(so, sum * sum / length) : so;
  }
}
