package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Quantiles;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How often a day would end in each verdict (docs/method.md#verdict) if the true difference were
 * known.
 *
 * @param worthwhile share of days "real and worthwhile"
 * @param small share "real but small"
 * @param none share "no worthwhile difference"
 * @param direction share "not settled: direction known"
 * @param open share "not settled"
 * @param error largest standard error of these shares if they were simulated, 0 by formula
 */
public record VerdictOdds(
    double worthwhile, double small, double none, double direction, double open, double error) {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final double VANISHED = -40;

  /** Share of days on which the setups are shown to differ, whatever is known of the size. */
  public double real() {
    return worthwhile + small + direction;
  }

  /** The share of a verdict; 0 for those that no simulated day has. */
  public double of(Verdict verdict) {
    return switch (verdict) {
      case REAL_AND_WORTHWHILE -> worthwhile;
      case REAL_BUT_SMALL -> small;
      case NO_WORTHWHILE_DIFFERENCE -> none;
      case DIRECTION_KNOWN -> direction;
      case NOT_SETTLED -> open;
      case NO_VARIATION, COULD_NOT_SHOW -> 0;
    };
  }

  /**
   * By normal theory: the estimate is normal, its standard error χ-distributed on df degrees of
   * freedom, and every test is a t test at the level that the set of orders attains. Integrated
   * over the standard error by the trapezoidal rule in its logarithm.
   *
   * @param day the day
   * @param difference true difference
   * @param margin worthwhile difference, above 0, in the same unit
   * @param sd noise, above 0, in the same unit
   */
  public static VerdictOdds approximate(
      Detectable day, double difference, double margin, double sd) {
    Require.finite("difference", difference);
    Require.positive("worthwhile", margin);
    Require.positive("sd", sd);
    Regions regions = new Regions(day, difference / sd, margin / sd);
    double df = day.orderDf();
    double step = Math.min(0.1, 0.25 / Math.sqrt(2 * df));
    double[] sums = new double[6];
    for (int direction = -1; direction <= 1; direction += 2) {
      for (int i = direction < 0 ? 1 : 0; ; i++) {
        double u = direction * i * step;
        double exponent = df * (u - Math.expm1(2 * u) / 2);
        if (exponent < VANISHED) {
          break;
        }
        regions.add(Math.exp(u), Math.exp(exponent), sums);
      }
    }
    double all = sums[5];
    return new VerdictOdds(
        sums[0] / all, sums[1] / all, sums[2] / all, sums[3] / all, sums[4] / all, 0);
  }

  /** Where the estimate has to lie for each verdict, given its standard error. */
  private static final class Regions {
    private final double unit;
    private final double difference;
    private final double margin;
    private final double real;
    private final double size;

    Regions(Detectable day, double difference, double margin) {
      this.unit = day.unitError();
      this.difference = difference;
      this.margin = margin;
      this.real = critical(day.attainableLevel() / 2, day.orderDf());
      this.size = critical(day.oneSidedLevel(), day.orderDf());
    }

    private static double critical(double tail, double df) {
      return tail == 0 ? Double.POSITIVE_INFINITY : Quantiles.tUpper(tail, df);
    }

    void add(double s, double weight, double[] sums) {
      double reach = real * s * unit;
      double beyond = margin + size * s * unit;
      double within = margin - size * s * unit;
      double isReal = outside(reach);
      double worthwhile = outside(Math.max(reach, beyond));
      double small = within > reach ? isReal - outside(within) : 0;
      double none = within > 0 ? 1 - outside(Math.min(reach, within)) : 0;
      sums[0] += weight * worthwhile;
      sums[1] += weight * small;
      sums[2] += weight * none;
      sums[3] += weight * Math.max(0, isReal - worthwhile - small);
      sums[4] += weight * Math.max(0, 1 - isReal - none);
      sums[5] += weight;
    }

    /** Probability that the estimate is farther from 0 than this. */
    private double outside(double x) {
      if (x == Double.POSITIVE_INFINITY) {
        return 0;
      }
      return NORMAL.cumulativeProbability((-x - difference) / unit)
          + NORMAL.survivalProbability((x - difference) / unit);
    }
  }
}
