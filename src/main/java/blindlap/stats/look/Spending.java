package blindlap.stats.look;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.NormalCurve;
import blindlap.stats.distribution.Quantiles;

/**
 * How much of the level may be spent by a look at a share t of the information
 * (docs/method.md#looks; Lan and DeMets 1983, Biometrika 70:659-663). Cumulative; all of it at t =
 * 1.
 */
public enum Spending {
  /** 2 − 2Φ(Φ⁻¹(1 − level/2)/√t): next to nothing early. */
  OBRIEN_FLEMING {
    @Override
    double share(double level, double t) {
      return 2 * NormalCurve.upper(-Quantiles.normal(level / 2) / Math.sqrt(t));
    }
  },
  /** level·ln(1 + (e − 1)t): nearly evenly. */
  POCOCK {
    @Override
    double share(double level, double t) {
      return level * Math.log1p((Math.E - 1) * t);
    }
  };

  abstract double share(double level, double t);

  /**
   * The error spent up to each look.
   *
   * @param level between 0 and 1
   * @param looks shares of the information, rising, above 0 and at most 1
   * @return as many values as looks, rising, none above the level
   * @throws StatsException if the level or a look is impossible
   */
  public double[] spent(double level, double[] looks) {
    Looks.check(level, looks);
    double[] spent = new double[looks.length];
    for (int i = 0; i < spent.length; i++) {
      spent[i] = share(level, looks[i]);
    }
    return spent;
  }
}
