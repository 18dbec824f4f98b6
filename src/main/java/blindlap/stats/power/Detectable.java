package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.fault.RuleFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.compare.CutShort;
import blindlap.stats.compare.LevelInformation;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.TrendEfficiency;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.NoncentralT;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.LevelScale;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * The difference a two-setup day can detect, by formula: power of the two-sided t test on the
 * information that is left after drift, at the level that the set of orders can attain and with the
 * degrees of freedom that the set gives the test (docs/method.md#detectable-difference; {@link
 * OrderFreedom}). All degrees of freedom of the residuals would be up to 9 % too hopeful for pairs.
 *
 * @param count number of admissible orders K
 * @param attainableLevel a* = 2⌊.025·K⌋/K, 0 if no p of .05 or less can come out
 * @param oneSidedLevel ⌊.05·K⌋/K, the level of the tests against the worthwhile difference
 * @param efficiency harmonic mean over the orders of c/(N/4), c = z'Wz under the drift
 * @param stints stints used, N
 * @param df degrees of freedom of the residuals, N − nuisance columns − 1
 * @param orderDf degrees of freedom of the test, at most df, not necessarily whole
 */
public record Detectable(
    BigInteger count,
    double attainableLevel,
    double oneSidedLevel,
    double efficiency,
    int stints,
    int df,
    double orderDf) {
  /** From this many orders on the formula agrees with simulation within 3 %. */
  public static final int FORMULA_FROM = 200;

  private static final double LEVEL = 0.05;

  /**
   * @param set the admissible orders of two setups
   * @param drift what will be removed
   * @param sampling what to do with sets beyond 2^22 under a curve; every other case is exact
   * @throws StatsException if the set has other than two setups or too few stints
   */
  public static Detectable of(Assignments set, Drift drift, Sampling sampling) {
    DayCheck.twoSetups(set);
    if (set.count().signum() == 0) {
      throw new Unusable("rule", "admits no order.", RuleFault.NO_ORDER);
    }
    int df = set.stints() - drift.columns() - 1;
    if (df < 1) {
      throw DayCheck.tooFew("rule", set.stints(), 2, Nuisance.of(drift));
    }
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return new Detectable(
        set.count(),
        level(set, LEVEL / 2, 2),
        level(set, LEVEL, 1),
        TrendEfficiency.of(set, drift, sampling),
        set.stints(),
        df,
        OrderFreedom.of(set, new Residuals(all, drift)));
  }

  /**
   * A day's trend over levels (docs/method.md#trend): the same of the difference from the lowest to
   * the highest level. Every other figure keeps its meaning, so that the efficiency is again the
   * information over a quarter of the stints, which is what two levels would give.
   *
   * @param levels the number of each level, for setup A first
   * @param use true where the stint remains
   * @param sampling what to do with large sets
   * @throws StatsException if levels are equal or too few stints are left
   */
  public static Detectable ofLevels(
      Assignments set, double[] levels, boolean[] use, Drift drift, Sampling sampling) {
    return ofLevels(
        set, levels, use, drift, () -> LevelInformation.of(set, levels, use, drift, sampling));
  }

  static Detectable ofLevels(
      Assignments set,
      double[] levels,
      boolean[] use,
      Drift drift,
      Supplier<LevelInformation> information) {
    LevelScale.check(set, levels);
    DayCheck.length(set, "valid", use.length, "entries");
    int n = DayCheck.count(use);
    int df = n - drift.columns() - 1;
    if (df < 1) {
      throw DayCheck.tooFew("rule", n, 2, Nuisance.of(drift));
    }
    boolean possible =
        n == set.stints() || CutShort.ofTrend(set, use, drift).smallestP() <= LEVEL + 1e-12;
    return new Detectable(
        set.count(),
        possible ? level(set, LEVEL / 2, 2) : 0,
        level(set, LEVEL, 1),
        4 * information.get().trend(),
        n,
        df,
        OrderFreedom.of(set, LevelScale.centred(levels), new Residuals(use, drift)));
  }

  /** True if the efficiency for this set and drift comes from a sample. */
  public static boolean sampled(Assignments set, Drift drift, Sampling sampling) {
    return TrendEfficiency.sampled(set, drift, sampling);
  }

  /**
   * As {@link #of(Assignments, Drift, Sampling)}, on the stints marked only; the rest is lost.
   *
   * @param use true where the stint remains
   */
  public static Detectable of(Assignments set, boolean[] use, Drift drift, Sampling sampling) {
    DayCheck.twoSetups(set);
    DayCheck.length(set, "valid", use.length, "entries");
    int n = DayCheck.count(use);
    if (n == set.stints()) {
      return of(set, drift, sampling);
    }
    int df = n - drift.columns() - 1;
    CutShort left = CutShort.of(set, use, drift);
    if (df < 1) {
      throw DayCheck.tooFew("valid", n, 2, Nuisance.of(drift));
    }
    boolean possible = left.smallestP() <= LEVEL + 1e-12;
    return new Detectable(
        set.count(),
        possible ? level(set, LEVEL / 2, 2) : 0,
        level(set, LEVEL, 1),
        TrendEfficiency.walked(set, use, drift, sampling),
        n,
        df,
        OrderFreedom.of(set, new Residuals(use, drift)));
  }

  /**
   * The same with all degrees of freedom of the residuals, as docs/method.md#figures-of-the-formula
   * has it.
   */
  public Detectable onResidualDf() {
    return new Detectable(count, attainableLevel, oneSidedLevel, efficiency, stints, df, df);
  }

  /**
   * The same day tested at a stricter level, as one of several measures is: the two-sided level,
   * and half of it a side, rounded down to what the set of orders attains.
   *
   * @param level above 0, at most .05
   */
  public Detectable at(double level) {
    if (!(level > 0 && level <= LEVEL)) {
      throw new StatsException("level", "must be above 0 and at most .05, but is " + level + ".");
    }
    return new Detectable(
        count,
        attainableLevel == 0 ? 0 : level(count, level / 2, 2),
        level(count, level, 1),
        efficiency,
        stints,
        df,
        orderDf);
  }

  /**
   * The same for several days alike, pooled as a series is (docs/method.md#several-days): the
   * product of their sets of orders, and information and degrees of freedom added up.
   *
   * @param days at least 1
   */
  public Detectable days(int days) {
    if (days < 1) {
      throw new StatsException("days", "must be at least 1, but is " + days + ".");
    }
    BigInteger orders = count.pow(days);
    return days == 1
        ? this
        : new Detectable(
            orders,
            level(orders, LEVEL / 2, 2),
            level(orders, LEVEL, 1),
            efficiency,
            stints * days,
            df * days,
            orderDf * days);
  }

  /**
   * Several days that need not be alike, pooled as a series is (docs/method.md#several-days).
   *
   * @param days at least one
   */
  public static Detectable together(List<Detectable> days) {
    if (days.isEmpty()) {
      throw new StatsException("days", "must hold at least one day.");
    }
    BigInteger orders = BigInteger.ONE;
    double information = 0;
    int stints = 0;
    int df = 0;
    double orderDf = 0;
    for (Detectable day : days) {
      orders = orders.multiply(day.count);
      information += day.stints * day.efficiency;
      stints += day.stints;
      df += day.df;
      orderDf += day.orderDf;
    }
    return new Detectable(
        orders,
        level(orders, LEVEL / 2, 2),
        level(orders, LEVEL, 1),
        information / stints,
        stints,
        df,
        orderDf);
  }

  private static double level(Assignments set, double tail, int sides) {
    return level(set.count(), tail, sides);
  }

  private static double level(BigInteger count, double tail, int sides) {
    double k = count.doubleValue();
    // Beyond whole numbers of a double the step of the level is far below its last digit.
    return k > 1e15 ? sides * tail : sides * Math.floor(tail * k + 1e-9) / k;
  }

  /** True if the set is large enough for the formula; below, simulate. */
  public boolean formulaHolds() {
    return count.compareTo(BigInteger.valueOf(FORMULA_FROM)) >= 0;
  }

  /** Standard error of the estimate for noise of standard deviation 1. */
  public double unitError() {
    return 1 / Math.sqrt(stints * efficiency / 4);
  }

  /**
   * Probability that the two-sided test rejects.
   *
   * @param difference true difference
   * @param sd noise in the same unit, above 0
   */
  public double power(double difference, double sd) {
    Require.positive("sd", sd);
    Require.finite("difference", difference);
    if (attainableLevel == 0) {
      return 0;
    }
    return beyond(difference / sd / unitError(), Quantiles.tUpper(attainableLevel / 2, orderDf));
  }

  private double beyond(double shift, double critical) {
    NoncentralT t = NoncentralT.of(orderDf, shift);
    return t.sf(critical) + t.cdf(-critical);
  }

  /**
   * The difference found with this power.
   *
   * @param sd noise, above 0
   * @param power above the attainable level and below 1
   * @return in the unit of {@code sd}; NaN if nothing can be detected
   * @throws StatsException if the power is impossible
   */
  public double difference(double sd, double power) {
    Require.positive("sd", sd);
    Require.innerProportion("power", power);
    if (attainableLevel == 0) {
      return Double.NaN;
    }
    if (power <= attainableLevel) {
      throw new StatsException(
          "power", "must be above the level of the test, " + attainableLevel + ".");
    }
    double critical = Quantiles.tUpper(attainableLevel / 2, orderDf);
    // For many degrees of freedom the shift is the critical value plus a normal quantile.
    double guess = critical + Quantiles.normal(power);
    double low = Math.max(0, guess - 1);
    double high = Math.max(1, guess + 1);
    while (low > 0 && beyond(low, critical) >= power) {
      low = low < 1 ? 0 : low / 2;
    }
    while (beyond(high, critical) < power) {
      high *= 2;
      if (high > 1e5) {
        throw new StatsException("power", power + " is too close to 1.");
      }
    }
    double shift =
        new BrentSolver(1e-12, 1e-12, 1e-15)
            .solve(200, x -> beyond(x, critical) - power, low, high);
    return shift * unitError() * sd;
  }

  /** The differences for both ends of an interval of the noise. */
  public Interval difference(Interval sd, double power) {
    return new Interval(difference(sd.low(), power), difference(sd.high(), power));
  }
}
