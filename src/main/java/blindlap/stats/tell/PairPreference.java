package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Scores from pairwise preferences: the model of Bradley &amp; Terry (1952), Biometrika 39:324, by
 * maximum likelihood.
 *
 * <p>P(i beats j) = 1/(1 + exp(s_j − s_i)); the reference has score 0. Newton's method on the
 * concave log-likelihood; standard errors from the inverse Fisher information with the reference
 * held at 0. A finite maximum exists if and only if every item is connected to every other by a
 * chain of wins (Ford 1957, Am. Math. Monthly 64:28), which is checked first.
 */
public final class PairPreference {
  private static final int MOST_STEPS = 100;

  private final double[] scores;
  private final double[] standardErrors;

  private PairPreference(double[] scores, double[] standardErrors) {
    this.scores = scores;
    this.standardErrors = standardErrors;
  }

  /**
   * @param wins square, at least 2 × 2: how often row beat column, not negative; the diagonal is
   *     ignored
   * @param reference index of the item with score 0
   * @throws StatsException if the matrix has another shape, a count is impossible, or no finite
   *     scores exist
   */
  public static PairPreference of(double[][] wins, int reference) {
    double[][] w = Require.table("wins", wins, 2, 2);
    int n = w.length;
    if (w[0].length != n) {
      throw new StatsException(
          "wins", "must be square, but has %d rows and %d columns.".formatted(n, w[0].length));
    }
    if (reference < 0 || reference >= n) {
      throw new StatsException("reference", "is none of the " + n + " items.");
    }
    for (int i = 0; i < n; i++) {
      w[i][i] = 0;
      for (int j = 0; j < n; j++) {
        if (w[i][j] < 0) {
          throw new StatsException("wins[%d][%d]".formatted(i, j), "must not be negative.");
        }
      }
    }
    requireConnected(w);
    double[] scores = maximum(w, reference);
    double[] errors = new double[n];
    RealMatrix covariance =
        new CholeskyDecomposition(information(w, scores, reference)).getSolver().getInverse();
    for (int i = 0; i < n; i++) {
      if (i != reference) {
        int at = free(i, reference);
        errors[i] = Math.sqrt(covariance.getEntry(at, at));
      }
    }
    return new PairPreference(scores, errors);
  }

  public double[] scores() {
    return scores.clone();
  }

  /** Standard errors of {@link #scores}; 0 for the reference. */
  public double[] standardErrors() {
    return standardErrors.clone();
  }

  private static double[] maximum(double[][] w, int reference) {
    int n = w.length;
    double[] scores = new double[n];
    double likelihood = logLikelihood(w, scores);
    for (int round = 0; round < MOST_STEPS; round++) {
      double[] gradient = gradient(w, scores, reference);
      double[] step =
          new CholeskyDecomposition(information(w, scores, reference))
              .getSolver()
              .solve(new ArrayRealVector(gradient))
              .toArray();
      double share = 1;
      double[] next = moved(scores, step, share, reference);
      double better = logLikelihood(w, next);
      while (better < likelihood - 1e-12 * Math.abs(likelihood) && share > 1e-6) {
        share /= 2;
        next = moved(scores, step, share, reference);
        better = logLikelihood(w, next);
      }
      scores = next;
      likelihood = better;
      // Newton converges quadratically: after a step of 1e-9 only rounding is left.
      if (share == 1 && Arrays.stream(step).map(Math::abs).max().orElse(0) < 1e-9) {
        return scores;
      }
    }
    throw new StatsException("wins", "are too lopsided: the scores did not settle.");
  }

  private static double[] moved(double[] scores, double[] step, double share, int reference) {
    double[] moved = scores.clone();
    for (int i = 0; i < scores.length; i++) {
      if (i != reference) {
        moved[i] += share * step[free(i, reference)];
      }
    }
    return moved;
  }

  private static int free(int item, int reference) {
    return item < reference ? item : item - 1;
  }

  private static double beats(double[] scores, int i, int j) {
    return 1 / (1 + Math.exp(scores[j] - scores[i]));
  }

  private static double logLikelihood(double[][] w, double[] scores) {
    double sum = 0;
    for (int i = 0; i < w.length; i++) {
      for (int j = 0; j < w.length; j++) {
        if (w[i][j] > 0) {
          double behind = scores[j] - scores[i];
          sum -= w[i][j] * (Math.max(0, behind) + Math.log1p(Math.exp(-Math.abs(behind))));
        }
      }
    }
    return sum;
  }

  private static double[] gradient(double[][] w, double[] scores, int reference) {
    int n = w.length;
    double[] gradient = new double[n - 1];
    for (int i = 0; i < n; i++) {
      if (i != reference) {
        for (int j = 0; j < n; j++) {
          // w − met·P without subtracting large numbers.
          gradient[free(i, reference)] +=
              w[i][j] * beats(scores, j, i) - w[j][i] * beats(scores, i, j);
        }
      }
    }
    return gradient;
  }

  private static RealMatrix information(double[][] w, double[] scores, int reference) {
    int n = w.length;
    RealMatrix information = new Array2DRowRealMatrix(n - 1, n - 1);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        if (i == reference || i == j) {
          continue;
        }
        // p(1 − p) written so that it is exactly the same from both sides.
        double curvature = (w[i][j] + w[j][i]) / (2 + 2 * Math.cosh(scores[j] - scores[i]));
        int row = free(i, reference);
        information.addToEntry(row, row, curvature);
        if (j != reference) {
          information.addToEntry(row, free(j, reference), -curvature);
        }
      }
    }
    return information;
  }

  /** Refuses wins in which some items cannot be reached from others by a chain of wins. */
  private static void requireConnected(double[][] w) {
    for (boolean forward : new boolean[] {true, false}) {
      boolean[] reached = new boolean[w.length];
      Deque<Integer> open = new ArrayDeque<>();
      reached[0] = true;
      open.add(0);
      while (!open.isEmpty()) {
        int from = open.remove();
        for (int to = 0; to < w.length; to++) {
          double won = forward ? w[from][to] : w[to][from];
          if (won > 0 && !reached[to]) {
            reached[to] = true;
            open.add(to);
          }
        }
      }
      for (boolean each : reached) {
        if (!each) {
          throw new StatsException(
              "wins",
              "do not connect all items: some never won, or never lost, against the others, so no "
                  + "finite scores exist.");
        }
      }
    }
  }
}
