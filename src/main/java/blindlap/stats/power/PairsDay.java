package blindlap.stats.power;

import blindlap.stats.compare.ManyWalk;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.SetupContrasts;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import java.util.Arrays;

/**
 * One simulated day of several setups after the other, each tested for a ladder of true differences
 * at once: every statistic is made of sums that are linear in the difference.
 */
final class PairsDay {
  private static final double SLACK = 1e-9;
  private static final double ROUNDING = 1e-12;
  private static final double LEVEL = 0.05;

  private final int k;
  private final int n;
  private final double[][] basis;
  private final double[] differences;
  private final int df;
  private final SetupContrasts contrasts;

  private final double[] noise;
  private final double[] shift;
  private final double[] total;

  /** Squares of the thresholds of t. */
  private final double[][] tThreshold;

  private final double[] fThreshold;
  private final long[][] pairCounts;
  private final long[] fCounts;
  private long orders;
  private boolean observing;

  private final double[] sums;
  private final double[] noiseAt;
  private final double[] shiftAt;
  private final double[] shiftSums;

  /** Differences of the pairs over the root of their unit variance. */
  private final double[] noisePairs;

  private final double[] shiftPairs;
  private final int[] often;
  private final double[][] projected;
  private final long[][] tally;

  PairsDay(Assignments set, Drift drift, double[] differences) {
    this.k = set.setups();
    this.n = set.stints();
    this.differences = differences.clone();
    boolean[] all = new boolean[n];
    Arrays.fill(all, true);
    Residuals residuals = new Residuals(all, drift);
    this.basis = new double[residuals.columns()][];
    for (int q = 0; q < basis.length; q++) {
      basis[q] = residuals.column(q);
    }
    this.df = n - basis.length - (k - 1);
    this.contrasts = new SetupContrasts(k);
    int steps = differences.length;
    int pairs = contrasts.pairs();
    this.noise = new double[n];
    this.shift = new double[n];
    this.total = new double[steps];
    this.tThreshold = new double[steps][pairs];
    this.fThreshold = new double[steps];
    this.pairCounts = new long[steps][pairs];
    this.fCounts = new long[steps];
    this.sums = new double[k + k * (k + 1) / 2];
    this.shiftSums = new double[k];
    this.noiseAt = new double[k];
    this.shiftAt = new double[k];
    this.noisePairs = new double[pairs];
    this.shiftPairs = new double[pairs];
    this.often = new int[k];
    this.projected = new double[basis.length][k];
    this.tally = new long[5][steps];
  }

  /** Takes the order ridden and its noise; setup 0 is the one that differs. */
  void begin(int[] order, double[] values) {
    for (int i = 0; i < n; i++) {
      noise[i] = values[i];
      shift[i] = order[i] == 0 ? 1 : 0;
    }
    remove(noise);
    remove(shift);
    double own = Residuals.dot(noise, noise);
    double cross = Residuals.dot(noise, shift);
    double moved = Residuals.dot(shift, shift);
    for (int step = 0; step < total.length; step++) {
      double d = differences[step];
      total[step] = own + d * (2 * cross + d * moved);
      Arrays.fill(pairCounts[step], 0);
    }
    Arrays.fill(fCounts, 0);
    orders = 0;
    observing = true;
    count(order);
    observing = false;
    orders = 0;
  }

  private void remove(double[] x) {
    for (double[] q : basis) {
      double overlap = Residuals.dot(q, x);
      for (int i = 0; i < n; i++) {
        x[i] -= overlap * q[i];
      }
    }
  }

  /** Counts an order of the reference set. */
  void count(int[] order) {
    gram(order);
    project(order);
    double own = Residuals.dot(noiseAt, noiseAt);
    double cross = Residuals.dot(noiseAt, shiftAt);
    double moved = Residuals.dot(shiftAt, shiftAt);
    orders++;
    for (int step = 0; step < total.length; step++) {
      double d = differences[step];
      double explained = own + d * (2 * cross + d * moved);
      double variance = Math.max(total[step] - explained, total[step] * 1e-15) / df;
      double f = explained / (k - 1) / variance;
      if (observing) {
        observe(step, f, variance);
      } else {
        fCounts[step] += f >= fThreshold[step] ? 1 : 0;
        compare(step, variance);
      }
    }
  }

  private void compare(int step, double variance) {
    double d = differences[step];
    double largest = 0;
    for (int pair = 0; pair < noisePairs.length; pair++) {
      double root = noisePairs[pair] + d * shiftPairs[pair];
      largest = Math.max(largest, root * root);
    }
    long[] counts = pairCounts[step];
    double[] thresholds = tThreshold[step];
    for (int pair = 0; pair < counts.length; pair++) {
      counts[pair] += largest >= thresholds[pair] * variance ? 1 : 0;
    }
  }

  private void observe(int step, double f, double variance) {
    fThreshold[step] = f * (1 - SLACK) - ROUNDING * ROUNDING;
    for (int pair = 0; pair < noisePairs.length; pair++) {
      double t =
          Math.abs(noisePairs[pair] + differences[step] * shiftPairs[pair]) / Math.sqrt(variance);
      double threshold = Math.max(0, t * (1 - SLACK) - ROUNDING);
      tThreshold[step][pair] = threshold * threshold;
    }
  }

  /** D'WD = D'D − (Q'D)'(Q'D) for the orthonormal basis Q of what is removed. */
  private void gram(int[] order) {
    Arrays.fill(often, 0);
    for (double[] row : projected) {
      Arrays.fill(row, 0);
    }
    for (int i = 0; i < n; i++) {
      often[order[i]]++;
      for (int q = 0; q < basis.length; q++) {
        projected[q][order[i]] += basis[q][i];
      }
    }
    for (int a = 0; a < k; a++) {
      for (int b = 0; b <= a; b++) {
        double sum = a == b ? often[a] : 0;
        for (double[] row : projected) {
          sum -= row[a] * row[b];
        }
        sums[ManyWalk.place(k, a, b)] = sum;
      }
    }
  }

  private void project(int[] order) {
    Arrays.fill(sums, 0, k, 0);
    Arrays.fill(shiftSums, 0);
    for (int i = 0; i < n; i++) {
      sums[order[i]] += noise[i];
      shiftSums[order[i]] += shift[i];
    }
    contrasts.solve(sums, 0);
    contrasts.coordinates(noiseAt);
    keep(noisePairs);
    contrasts.resolve(shiftSums);
    contrasts.coordinates(shiftAt);
    keep(shiftPairs);
  }

  private void keep(double[] pairs) {
    for (int pair = 0; pair < pairs.length; pair++) {
      pairs[pair] = contrasts.difference(pair) / Math.sqrt(contrasts.unitVariance(pair));
    }
  }

  /** Books the day's decisions. */
  void end() {
    double most = LEVEL * orders + 1e-9;
    for (int step = 0; step < total.length; step++) {
      int apart = 0;
      boolean wrong = false;
      for (int pair = 0; pair < noisePairs.length; pair++) {
        boolean seen = pairCounts[step][pair] <= most;
        boolean differs = contrasts.first(pair) == 0 && differences[step] > 0;
        apart += seen && differs ? 1 : 0;
        wrong |= seen && !differs;
      }
      tally[0][step] += fCounts[step] <= most ? 1 : 0;
      tally[1][step] += apart;
      tally[2][step] += apart == k - 1 ? 1 : 0;
      tally[3][step] += wrong ? 1 : 0;
      tally[4][step] += apart > 0 ? 1 : 0;
    }
  }

  /**
   * Days that found a difference at all; pairs told apart; days with all of them; wrong days; days
   * with any of them.
   */
  long[][] tally() {
    return tally;
  }
}
