package blindlap.stats.power;

import blindlap.fault.Require;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import java.util.Arrays;

/**
 * Simulated days of white normal noise of standard deviation 1 without any difference, each kept as
 * its estimate and the ends of its 95 and 90 per cent intervals. A true difference only shifts a
 * day's confidence curve, so that these answer for all differences, margins and noises at once.
 * Noise and set are symmetric, so every day also counts as its mirror image.
 */
public final class SimulatedDays {
  private final double[] estimate;
  private final double[] low95;
  private final double[] high95;
  private final double[] low90;
  private final double[] high90;

  /**
   * {@code −low95} and {@code high95} of all days, sorted: the difference each needs to be seen.
   */
  private final double[] needed;

  SimulatedDays(double[][] ends) {
    this.estimate = ends[0];
    this.low95 = ends[1];
    this.high95 = ends[2];
    this.low90 = ends[3];
    this.high90 = ends[4];
    int n = estimate.length;
    this.needed = new double[2 * n];
    for (int day = 0; day < n; day++) {
      needed[day] = -low95[day];
      needed[n + day] = high95[day];
    }
    Arrays.sort(needed);
  }

  /** Number of days. */
  public int days() {
    return estimate.length;
  }

  /** These days and others of the same plan, to refine an answer that is on screen already. */
  public SimulatedDays and(SimulatedDays more) {
    return new SimulatedDays(
        new double[][] {
          joined(estimate, more.estimate),
          joined(low95, more.low95),
          joined(high95, more.high95),
          joined(low90, more.low90),
          joined(high90, more.high90)
        });
  }

  private static double[] joined(double[] a, double[] b) {
    double[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  /**
   * Share of days on which the two-sided test at 5 % rejects.
   *
   * @param difference true difference
   * @param sd noise, above 0, in the same unit
   */
  public double power(double difference, double sd) {
    double shift = Math.abs(difference) / Require.positive("sd", sd);
    return (double) (below(shift) + below(-shift)) / needed.length;
  }

  /** Standard error of a simulated share. */
  public double error(double share) {
    return Math.sqrt(share * (1 - share) / days());
  }

  private int below(double shift) {
    int at = Arrays.binarySearch(needed, shift);
    int low = at < 0 ? -at - 1 : at;
    while (low > 0 && needed[low - 1] == shift) {
      low--;
    }
    return low;
  }

  /**
   * The difference that is seen on this share of days.
   *
   * @param sd noise, above 0
   * @param power wanted, above 0 and below 1
   * @return in the unit of {@code sd}; NaN if it is never reached
   */
  public double difference(double sd, double power) {
    Require.positive("sd", sd);
    return sd * quantile(Require.innerProportion("power", power));
  }

  /** 95 % interval of {@link #difference} over repetitions of the simulation. */
  public Interval differenceError95(double sd, double power) {
    double half = Quantiles.Z_975 * error(power);
    return new Interval(
        sd * quantile(Math.max(0, power - half)), sd * quantile(Math.min(1, power + half)));
  }

  private double quantile(double share) {
    int at = (int) Math.ceil(share * needed.length) - 1;
    double value = needed[Math.min(needed.length - 1, Math.max(0, at))];
    return Double.isInfinite(value) ? Double.NaN : value;
  }

  /**
   * Shares of the verdicts.
   *
   * @param difference true difference
   * @param margin worthwhile difference, above 0, in the same unit
   * @param sd noise, above 0, in the same unit
   */
  public VerdictOdds odds(double difference, double margin, double sd) {
    double shift = Require.finite("difference", difference) / Require.positive("sd", sd);
    double size = Require.positive("worthwhile", margin) / sd;
    long[] often = new long[Verdict.values().length];
    for (int day = 0; day < estimate.length; day++) {
      often[verdict(day, shift, size).ordinal()]++;
      often[verdict(day, -shift, size).ordinal()]++;
    }
    double[] share = new double[often.length];
    double error = 0;
    for (int i = 0; i < share.length; i++) {
      share[i] = often[i] / (2.0 * days());
      error = Math.max(error, error(share[i]));
    }
    return new VerdictOdds(
        share[Verdict.REAL_AND_WORTHWHILE.ordinal()],
        share[Verdict.REAL_BUT_SMALL.ordinal()],
        share[Verdict.NO_WORTHWHILE_DIFFERENCE.ordinal()],
        share[Verdict.DIRECTION_KNOWN.ordinal()],
        share[Verdict.NOT_SETTLED.ordinal()],
        error);
  }

  private Verdict verdict(int day, double shift, double margin) {
    boolean real = low95[day] + shift > 0 || high95[day] + shift < 0;
    boolean big =
        estimate[day] + shift > 0 ? low90[day] + shift > margin : high90[day] + shift < -margin;
    boolean within = high90[day] + shift < margin && low90[day] + shift > -margin;
    if (real && big) {
      return Verdict.REAL_AND_WORTHWHILE;
    }
    if (within) {
      return real ? Verdict.REAL_BUT_SMALL : Verdict.NO_WORTHWHILE_DIFFERENCE;
    }
    return real ? Verdict.DIRECTION_KNOWN : Verdict.NOT_SETTLED;
  }
}
