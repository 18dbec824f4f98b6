package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.NoncentralT;
import blindlap.stats.distribution.Quantiles;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Power of t tests of means, by the noncentral t distribution, and what is needed for a power.
 *
 * <p>Two-sample: df = n₁ + n₂ − 2, δ = difference/(sd·√(1/n₁ + 1/n₂)); one-sample and paired: df =
 * n − 1, δ = difference·√n/sd (paired: sd of the differences). As R's {@code power.t.test}; Cohen
 * (1988), Statistical Power Analysis, ch. 2.
 */
public final class MeanPower {
  private static final double MOST_N = 1e7;
  private static final double LEAST_N = 1.1;
  private static final double LARGEST_NCP = 1e4;

  private final Kind kind;
  private final Tail tail;
  private final double level;

  private MeanPower(Kind kind, Tail tail, double level) {
    this.kind = kind;
    this.tail = tail;
    this.level = level;
  }

  /** Which t test. */
  public enum Kind {
    TWO_SAMPLE,
    ONE_SAMPLE,
    PAIRED
  }

  /** Which values of t reject. */
  public enum Tail {
    /** The upper level of t. */
    GREATER,
    /** The upper half level only: the far tail of a two-sided test is left out. */
    TWO_SIDED_NEAR,
    /** Both halves of the level. */
    TWO_SIDED_BOTH
  }

  /**
   * @param level significance level, above 0 and below 1
   * @throws StatsException if the level is impossible
   */
  public static MeanPower of(Kind kind, Tail tail, double level) {
    return new MeanPower(kind, tail, Require.innerProportion("level", level));
  }

  /**
   * @param n observations (two-sample: per group), at least 1.1, not necessarily whole
   * @param difference true difference of means; not negative with TWO_SIDED_NEAR
   * @param sd standard deviation, above 0, in the unit of the difference
   * @throws StatsException if a value is impossible
   */
  public double power(double n, double difference, double sd) {
    requireEnough("n", n);
    Require.positive("sd", sd);
    double df = kind == Kind.TWO_SAMPLE ? 2 * n - 2 : n - 1;
    double root = kind == Kind.TWO_SAMPLE ? Math.sqrt(n / 2) : Math.sqrt(n);
    return rejection(df, difference / sd * root, difference);
  }

  /**
   * Two-sample power with groups of different sizes.
   *
   * @throws StatsException if this is no two-sample test or a value is impossible
   */
  public double power(double n1, double n2, double difference, double sd) {
    if (kind != Kind.TWO_SAMPLE) {
      throw new StatsException("n", "may be a pair of numbers for a two-sample test only.");
    }
    Require.positive("n[0]", n1);
    Require.positive("n[1]", n2);
    if (n1 + n2 < 2 * LEAST_N) {
      throw new StatsException("n", "must together be at least 2.2, or no freedom is left for t.");
    }
    Require.positive("sd", sd);
    double ncp = difference / (sd * Math.sqrt(1 / n1 + 1 / n2));
    return rejection(n1 + n2 - 2, ncp, difference);
  }

  /**
   * The n (two-sample: per group) that has this power; not rounded.
   *
   * @throws StatsException if no n up to 1e7 has it
   */
  public double solveN(double power, double difference, double sd) {
    requirePower(power);
    return solve("n", power, n -> power(n, difference, sd), LEAST_N, MOST_N);
  }

  /**
   * The difference that is found with this power, above 0.
   *
   * @throws StatsException if the power is not above that of no difference
   */
  public double solveDifference(double power, double n, double sd) {
    Require.positive("sd", sd);
    requireEnough("n", n);
    requirePower(power);
    double unit = kind == Kind.TWO_SAMPLE ? Math.sqrt(2 / n) : Math.sqrt(1 / n);
    return solve("difference", power, size -> power(n, size * unit, 1), 0, LARGEST_NCP) * unit * sd;
  }

  /** As {@link #solveDifference(double, double, double)} for groups of different sizes. */
  public double solveDifference(double power, double n1, double n2, double sd) {
    Require.positive("sd", sd);
    requirePower(power);
    double unit = Math.sqrt(1 / n1 + 1 / n2);
    UnivariateFunction at = size -> power(n1, n2, size * unit, 1);
    return solve("difference", power, at, 0, LARGEST_NCP) * unit * sd;
  }

  /**
   * The standard deviation at which the difference is found with this power.
   *
   * @throws StatsException if the difference is not above 0 or the power not above that of no
   *     difference
   */
  public double solveSd(double power, double n, double difference) {
    Require.positive("difference", difference);
    return difference / solveDifference(power, n, 1);
  }

  /** As {@link #solveSd(double, double, double)} for groups of different sizes. */
  public double solveSd(double power, double n1, double n2, double difference) {
    Require.positive("difference", difference);
    return difference / solveDifference(power, n1, n2, 1);
  }

  private double rejection(double df, double ncp, double difference) {
    Require.finite("difference", difference);
    if (tail == Tail.TWO_SIDED_NEAR && difference < 0) {
      throw new StatsException(
          "difference", "must not be negative when only the near tail counts; give its size.");
    }
    if (Math.abs(ncp) > NoncentralT.LARGEST_SHIFT) {
      throw new StatsException(
          "difference",
          "is more than 100,000 standard errors of the mean; there is no doubt about it.");
    }
    double critical = Quantiles.tUpper(tail == Tail.GREATER ? level : level / 2, df);
    NoncentralT t = NoncentralT.of(df, ncp);
    double power = t.sf(critical);
    return tail == Tail.TWO_SIDED_BOTH ? power + t.cdf(-critical) : power;
  }

  private static double solve(
      String argument, double power, UnivariateFunction f, double low, double high) {
    if (f.value(low) >= power) {
      throw new StatsException(
          "power", power + " is reached already by " + argument + " = " + low + ".");
    }
    double least = low;
    double most = Math.max(1, 2 * low);
    while (f.value(most) < power) {
      least = most;
      most *= 2;
      if (most > high) {
        throw new StatsException(
            "power", power + " is not reached by any " + argument + " up to " + high + ".");
      }
    }
    return new BrentSolver(1e-14, 1e-14, 1e-17).solve(500, x -> f.value(x) - power, least, most);
  }

  private static void requireEnough(String argument, double n) {
    Require.finite(argument, n);
    if (n < LEAST_N) {
      throw new StatsException(argument, "must be at least " + LEAST_N + ", but is " + n + ".");
    }
  }

  private static void requirePower(double power) {
    Require.innerProportion("power", power);
  }
}
