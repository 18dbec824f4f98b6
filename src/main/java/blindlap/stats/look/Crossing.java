package blindlap.stats.look;

import blindlap.stats.distribution.NormalCurve;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Brownian motion over the information, stopped where it first crosses a bound at a look: the
 * density of what goes on is carried from look to look by numerical integration (Armitage,
 * McPherson and Rowe 1969, Journal of the Royal Statistical Society A 132:235-244). Sums are on the
 * scale of Z·√t, whose steps are independent.
 */
final class Crossing {
  private static final GaussIntegrator RULE = new GaussIntegratorFactory().legendre(400);

  /** Beyond so many standard deviations nothing is left that a double could hold. */
  private static final double FAR = 9;

  private final boolean bothSides;
  private double time;
  private double[] at = {0};
  private double[] mass = {1};

  /**
   * @param bothSides true if a sum also stops below minus the bound
   */
  Crossing(boolean bothSides) {
    this.bothSides = bothSides;
  }

  /** Probability of going on to time t and being beyond the bound z there. */
  double beyond(double t, double z) {
    double step = Math.sqrt(t - time);
    double bound = z * Math.sqrt(t);
    double sum = 0;
    for (int i = 0; i < at.length; i++) {
      sum += mass[i] * NormalCurve.upper((bound - at[i]) / step);
      sum += bothSides ? mass[i] * NormalCurve.upper((bound + at[i]) / step) : 0;
    }
    return sum;
  }

  /** The bound beyond which a share lies at time t; infinite where no bound is far enough. */
  double bound(double t, double share) {
    if (share <= beyond(t, 38)) {
      return Double.POSITIVE_INFINITY;
    }
    double high = FAR;
    while (beyond(t, high) > share) {
      high += 1;
    }
    double low = -1;
    while (beyond(t, low) < share) {
      // With two sides nothing lies below 0; the level is below what goes on, so that this ends.
      low -= 1;
    }
    return new BrentSolver(1e-14, 1e-13, 1e-300)
        .solve(1000, z -> Math.log(beyond(t, z)) - Math.log(share), low, high);
  }

  /** Goes on to time t with what lies within the bound there. */
  void pass(double t, double z) {
    double most = FAR * Math.sqrt(t);
    double high = Math.min(z * Math.sqrt(t), most);
    double low = bothSides ? -high : -most;
    double step = Math.sqrt(t - time);
    int n = RULE.getNumberOfPoints();
    double[] next = new double[n];
    double[] weights = new double[n];
    for (int i = 0; i < n; i++) {
      double x = (low + high) / 2 + RULE.getPoint(i) * (high - low) / 2;
      double density = 0;
      for (int j = 0; j < at.length; j++) {
        density += mass[j] * NormalCurve.density((x - at[j]) / step) / step;
      }
      next[i] = x;
      weights[i] = density * RULE.getWeight(i) * (high - low) / 2;
    }
    at = next;
    mass = weights;
    time = t;
  }
}
