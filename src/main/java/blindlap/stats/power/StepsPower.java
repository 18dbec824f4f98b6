package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.compare.LevelInformation;
import blindlap.stats.compare.Residuals;
import blindlap.stats.distribution.NoncentralT;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.LevelScale;
import java.util.Arrays;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * What a day over the levels of one setting can show (docs/method.md#steps-power): the difference
 * from the lowest to the highest level, with everything that {@link DayPower} answers of two
 * setups, and whether a bend could be seen.
 */
public final class StepsPower {
  private static final double LEVEL = 0.05;

  private final double range;
  private final DayPower trend;
  private final double bendError;
  private final double bendLevel;
  private final double bendDf;

  private StepsPower(
      double range, DayPower trend, double bendError, double bendLevel, double bendDf) {
    this.range = range;
    this.trend = trend;
    this.bendError = bendError;
    this.bendLevel = bendLevel;
    this.bendDf = bendDf;
  }

  /**
   * @param set the admissible orders, one setup per level
   * @param levels the number of each level, for setup A first; no two equal
   * @param drift what will be removed
   * @throws StatsException if levels are equal or there are too few stints
   */
  public static StepsPower of(Assignments set, double[] levels, Drift drift) {
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return of(set, levels, all, drift);
  }

  /** For a day of which some stints are lost. */
  public static StepsPower of(Assignments set, double[] levels, boolean[] left, Drift drift) {
    LevelScale.check(set, levels);
    LevelInformation information = LevelInformation.of(set, levels, left, drift, DayPower.PLANNED);
    DayPower trend = DayPower.ofLevels(set, levels, left, drift, information);
    double k = set.count().doubleValue();
    boolean bends =
        levels.length > 2
            && trend.formula().df() > 1
            && trend.formula().attainableLevel() > 0
            && information.bend() > 0;
    // A bend and its mirror image tie, so that orders count in twos there as well.
    double level = k > 1e15 ? LEVEL : 2 * Math.floor(LEVEL / 2 * k + 1e-9) / k;
    // One more goes to the trend itself.
    double df =
        bends
            ? OrderFreedom.of(
                    set, LevelScale.bent(LevelScale.centred(levels)), new Residuals(left, drift))
                - 1
            : Double.NaN;
    return new StepsPower(
        LevelScale.range(levels),
        trend,
        1 / Math.sqrt(trend.formula().stints() * information.bend()),
        bends ? level : 0,
        Math.max(1, Math.min(df, trend.formula().df() - 1)));
  }

  /** The trend: differences, margins and noises are from the lowest to the highest level. */
  public DayPower trend() {
    return trend;
  }

  /** A difference from the lowest to the highest level, for each unit of the levels. */
  public double perUnit(double difference) {
    return difference / range;
  }

  /** True if p of a bend can be .05 or less at all: three levels or more, and orders enough. */
  public boolean bendPossible() {
    return bendLevel > 0;
  }

  /**
   * Probability that p of the bend is .05 or less, by formula.
   *
   * @param height how far the middle of the range lies off the straight line between its ends
   * @param sd noise in the same unit, above 0
   */
  public double bendPower(double height, double sd) {
    Require.positive("sd", sd);
    Require.finite("height", height);
    return bendPossible() ? beyond(height / sd / bendError) : 0;
  }

  /**
   * The height of a bend that is seen with this power, by formula.
   *
   * @param sd noise, above 0
   * @param power above .05 and below 1
   * @return in the unit of {@code sd}; NaN if no bend can be seen
   */
  public double bend(double sd, double power) {
    Require.positive("sd", sd);
    if (!(power > LEVEL && power < 1)) {
      throw new StatsException("power", "must lie above .05 and below 1, but is " + power + ".");
    }
    if (!bendPossible()) {
      return Double.NaN;
    }
    double high = 4;
    while (beyond(high) < power) {
      high *= 2;
    }
    double shift = new BrentSolver(1e-12, 1e-12, 1e-14).solve(200, x -> beyond(x) - power, 0, high);
    return shift * bendError * sd;
  }

  private double beyond(double shift) {
    double critical = Quantiles.tUpper(bendLevel / 2, bendDf);
    NoncentralT t = NoncentralT.of(bendDf, shift);
    return t.sf(critical) + t.cdf(-critical);
  }
}
