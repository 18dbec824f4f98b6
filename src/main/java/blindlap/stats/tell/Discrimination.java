package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.NormalCurve;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Tasks in which a person picks one sample among several, and how the proportion of right answers
 * follows from the distance d′ of two unit-variance normal percepts.
 *
 * <p>Formulas as in Ennis (1993), J. Sensory Studies 8:353, and Hacker &amp; Ratcliff (1979),
 * Perception &amp; Psychophysics 26:168 (cited from memory). Integrals by Gauss-Legendre panels;
 * slopes are the same integrals differentiated, which have closed forms.
 */
public enum Discrimination {
  /** Two of three samples are the same; which is the odd one? */
  TRIANGLE(1.0 / 3) {
    @Override
    double curve(double d) {
      double shift = d * Math.sqrt(2.0 / 3);
      double root3 = Math.sqrt(3);
      return 2
          * integrate(
              x ->
                  (NormalCurve.cdf(-x * root3 + shift) + NormalCurve.cdf(-x * root3 - shift))
                      * NormalCurve.density(x),
              0,
              REACH);
    }

    @Override
    double slopeOfCurve(double d) {
      return Math.sqrt(2.0 / 3)
          * NormalCurve.density(d / Math.sqrt(6))
          * (2 * NormalCurve.cdf(d / Math.sqrt(2)) - 1);
    }
  },
  /** Which of two samples is the same as the reference? */
  DUO_TRIO(0.5) {
    @Override
    double curve(double d) {
      double a = NormalCurve.cdf(d / Math.sqrt(2));
      double b = NormalCurve.cdf(d / Math.sqrt(6));
      return 1 - a - b + 2 * a * b;
    }

    @Override
    double slopeOfCurve(double d) {
      double a = d / Math.sqrt(2);
      double b = d / Math.sqrt(6);
      return NormalCurve.density(a) / Math.sqrt(2) * (2 * NormalCurve.cdf(b) - 1)
          + NormalCurve.density(b) / Math.sqrt(6) * (2 * NormalCurve.cdf(a) - 1);
    }
  },
  /** Which of two samples has more of it? */
  TWO_CHOICE(0.5) {
    @Override
    double curve(double d) {
      return NormalCurve.cdf(d / Math.sqrt(2));
    }

    @Override
    double slopeOfCurve(double d) {
      return NormalCurve.density(d / Math.sqrt(2)) / Math.sqrt(2);
    }
  },
  /** Which of three samples has more of it, the other two being the same? */
  THREE_CHOICE(1.0 / 3) {
    @Override
    double curve(double d) {
      return integrate(
          x -> NormalCurve.density(x - d) * NormalCurve.cdf(x) * NormalCurve.cdf(x),
          d - REACH,
          d + REACH);
    }

    @Override
    double slopeOfCurve(double d) {
      return Math.sqrt(2)
          * NormalCurve.density(d / Math.sqrt(2))
          * NormalCurve.cdf(d / Math.sqrt(6));
    }
  };

  /** Largest d′ that is searched; every curve is 1 there in doubles. */
  private static final double FARTHEST = 60;

  /** Where a normal density has vanished in doubles against 1. */
  private static final double REACH = 9.5;

  private static final int PANELS = 12;
  private static final GaussIntegratorFactory GAUSS = new GaussIntegratorFactory();

  private final double chance;

  Discrimination(double chance) {
    this.chance = chance;
  }

  /** Proportion of right answers by chance alone. */
  public double chance() {
    return chance;
  }

  /**
   * Proportion of right answers at d′, absolute accuracy about 1e-15.
   *
   * @param dPrime not negative
   * @throws StatsException if it is negative or not finite
   */
  public double proportion(double dPrime) {
    return dPrime == 0 ? chance : Math.min(1, curve(required(dPrime)));
  }

  /** Derivative of {@link #proportion} by d′. */
  public double slope(double dPrime) {
    return slopeOfCurve(required(dPrime));
  }

  /**
   * The d′ at which this proportion is expected: 0 at or below chance, NaN at 1 or so close to it
   * that doubles tell no finite d′.
   *
   * @throws StatsException if the proportion does not lie between 0 and 1
   */
  public double dPrime(double proportion) {
    Require.proportion("proportion", proportion);
    if (proportion <= chance) {
      return 0;
    }
    if (proportion >= proportion(FARTHEST)) {
      return Double.NaN;
    }
    BrentSolver solver = new BrentSolver(1e-15, 1e-15, 1e-18);
    return solver.solve(1000, d -> proportion(d) - proportion, 0, FARTHEST);
  }

  abstract double curve(double d);

  abstract double slopeOfCurve(double d);

  private static double required(double dPrime) {
    Require.finite("d_prime", dPrime);
    if (dPrime < 0) {
      throw new StatsException("d_prime", "must not be negative, but is " + dPrime + ".");
    }
    return dPrime;
  }

  private static double integrate(UnivariateFunction f, double from, double to) {
    double width = (to - from) / PANELS;
    double sum = 0;
    for (int i = 0; i < PANELS; i++) {
      GaussIntegrator panel = GAUSS.legendre(20, from + i * width, from + (i + 1) * width);
      sum += panel.integrate(f);
    }
    return sum;
  }
}
