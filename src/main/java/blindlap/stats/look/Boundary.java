package blindlap.stats.look;

import blindlap.fault.StatsException;
import java.util.Arrays;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Bounds for Z at each look, so that a process without a difference crosses any of them with the
 * probability of the level (docs/method.md#looks). Z has independent increments on the information
 * scale.
 */
public final class Boundary {
  /** Shapes whose bounds follow from one constant at equally spaced looks, two-sided. */
  public enum Shape {
    /** The same bound at every look (Pocock 1977, Biometrika 64:191-199). */
    POCOCK {
      @Override
      double factor(int look, int looks) {
        return 1;
      }
    },
    /** C·√(looks/look): far out early (O'Brien and Fleming 1979, Biometrics 35:549-556). */
    OBRIEN_FLEMING {
      @Override
      double factor(int look, int looks) {
        return Math.sqrt((double) looks / look);
      }
    };

    abstract double factor(int look, int looks);

    /**
     * The constant C for so many equally spaced looks.
     *
     * @param looks their number, 1 to 100
     * @param level two-sided, between 0 and 1
     * @throws StatsException if either is impossible
     */
    public double constant(int looks, double level) {
      Looks.level(level);
      Looks.number(looks);
      double high = 1;
      while (crossed(looks, high) > level) {
        high *= 2;
      }
      return new BrentSolver(1e-14, 1e-12).solve(1000, c -> crossed(looks, c) - level, 1e-12, high);
    }

    /** Bounds at each look. */
    public double[] bounds(int looks, double constant) {
      double[] bounds = new double[looks];
      Arrays.setAll(bounds, i -> constant * factor(i + 1, looks));
      return bounds;
    }

    private double crossed(int looks, double constant) {
      Crossing crossing = new Crossing(true);
      double sum = 0;
      for (int look = 1; look <= looks; look++) {
        double t = (double) look / looks;
        double z = constant * factor(look, looks);
        sum += crossing.beyond(t, z);
        if (look < looks) {
          crossing.pass(t, z);
        }
      }
      return sum;
    }
  }

  private Boundary() {}

  /**
   * Bounds that spend the error as given.
   *
   * @param looks shares of the information, rising, above 0 and at most 1
   * @param spent cumulative error up to each look, as {@link Spending#spent} gives it
   * @param bothSides true if the error is the total of both sides and |Z| is compared; false if it
   *     is that of the upper side alone
   * @return one bound a look; infinite where nothing may be spent
   * @throws StatsException if lengths differ or a look is impossible
   */
  public static double[] spending(double[] looks, double[] spent, boolean bothSides) {
    if (spent.length != looks.length) {
      throw new StatsException("spent", "must have one entry per look.");
    }
    Looks.check(0.5, looks);
    Crossing crossing = new Crossing(bothSides);
    double[] bounds = new double[looks.length];
    double before = 0;
    for (int i = 0; i < bounds.length; i++) {
      bounds[i] = crossing.bound(looks[i], spent[i] - before);
      before = spent[i];
      if (i + 1 < bounds.length) {
        crossing.pass(looks[i], bounds[i]);
      }
    }
    return bounds;
  }
}
