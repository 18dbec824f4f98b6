package blindlap.stats.distribution;

import blindlap.fault.Require;
import blindlap.fault.StatsException;

/**
 * Two-sided 95 % intervals of a proportion: one published procedure per constant.
 *
 * <p>The lower end is 0 when nothing was chosen, the upper end 1 when everything was.
 */
public enum ProportionInterval {
  /** Exact: Clopper &amp; Pearson (1934), Biometrika 26:404, by beta quantiles. */
  CLOPPER_PEARSON {
    @Override
    double low(int chosen, int trials) {
      return Quantiles.beta(TAIL, chosen, trials - chosen + 1.0);
    }

    @Override
    double high(int chosen, int trials) {
      return Quantiles.beta(1 - TAIL, chosen + 1.0, trials - chosen);
    }
  },
  /** Score interval without continuity correction: Wilson (1927), J. Am. Stat. Assoc. 22:209. */
  WILSON {
    @Override
    double low(int chosen, int trials) {
      return centre(chosen, trials) - half(chosen, trials);
    }

    @Override
    double high(int chosen, int trials) {
      return centre(chosen, trials) + half(chosen, trials);
    }

    private static double centre(int chosen, int trials) {
      double z2 = Quantiles.Z_975 * Quantiles.Z_975;
      return (chosen + z2 / 2) / (trials + z2);
    }

    private static double half(int chosen, int trials) {
      double z = Quantiles.Z_975;
      double p = (double) chosen / trials;
      return z * Math.sqrt(trials * p * (1 - p) + z * z / 4) / (trials + z * z);
    }
  };

  private static final double TAIL = 0.025;

  /**
   * @param chosen 0 to trials
   * @param trials at least 1
   * @throws StatsException if a count is impossible
   */
  public Interval of(int chosen, int trials) {
    if (trials < 1) {
      throw new StatsException("trials", "must be at least 1, but is " + trials + ".");
    }
    Require.countUpTo("chosen", chosen, "trials", trials);
    return new Interval(
        chosen == 0 ? 0 : low(chosen, trials), chosen == trials ? 1 : high(chosen, trials));
  }

  abstract double low(int chosen, int trials);

  abstract double high(int chosen, int trials);
}
