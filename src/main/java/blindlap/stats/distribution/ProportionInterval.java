package blindlap.stats.distribution;

import blindlap.fault.Require;
import blindlap.fault.StatsException;

/**
 * Two-sided intervals of a proportion, 95 % unless said: one published procedure per constant.
 *
 * <p>The lower end is 0 when nothing was chosen, the upper end 1 when everything was.
 */
public enum ProportionInterval {
  /** Exact: Clopper &amp; Pearson (1934), Biometrika 26:404, by beta quantiles. */
  CLOPPER_PEARSON {
    @Override
    double low(int chosen, int trials) {
      return exactLow(chosen, trials, TAIL);
    }

    @Override
    double high(int chosen, int trials) {
      return exactHigh(chosen, trials, TAIL);
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

  /**
   * The exact interval of {@link #CLOPPER_PEARSON} at another confidence.
   *
   * @param chosen 0 to trials
   * @param trials at least 1
   * @param confidence two-sided, above 0 and below 1
   * @throws StatsException if a value is impossible
   */
  public static Interval exact(int chosen, int trials, double confidence) {
    CLOPPER_PEARSON.of(chosen, trials); // refuses impossible counts
    double tail = (1 - Require.innerProportion("confidence", confidence)) / 2;
    return new Interval(
        chosen == 0 ? 0 : exactLow(chosen, trials, tail),
        chosen == trials ? 1 : exactHigh(chosen, trials, tail));
  }

  private static double exactLow(int chosen, int trials, double tail) {
    return Quantiles.beta(tail, chosen, trials - chosen + 1.0);
  }

  private static double exactHigh(int chosen, int trials, double tail) {
    return Quantiles.beta(1 - tail, chosen + 1.0, trials - chosen);
  }

  abstract double low(int chosen, int trials);

  abstract double high(int chosen, int trials);
}
