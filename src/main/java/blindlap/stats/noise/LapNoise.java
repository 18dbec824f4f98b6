package blindlap.stats.noise;

import blindlap.fault.StatsException;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.statistics.distribution.FDistribution;

/**
 * Noise that laps of one stint do not share, apart from noise that they do
 * (docs/method.md#lap-noise): a stint's mean of m laps has the variance σ_b² + σ_w²/m. Riding more
 * laps a stint takes away the second part only.
 *
 * @param lap σ_w: pooled within stints, the day's own course over the lap positions removed
 * @param stint noise SD of the stints' means, drift and setups removed
 * @param laps m: harmonic mean of the laps that a stint's mean is of
 */
public record LapNoise(RiderNoise lap, RiderNoise stint, double laps) {
  /**
   * Tells the two apart on a day.
   *
   * @param setups setup index of each stint, from 0
   * @param laps values by stint and scored lap, rows of one length; NaN where void or missing
   * @param drift what is removed from the stints
   * @return empty where no stint has two laps, or no degree of freedom is left
   * @throws StatsException if lengths differ or a value is infinite
   */
  public static Optional<LapNoise> of(int[] setups, double[][] laps, Drift drift) {
    double[] means = new double[laps.length];
    boolean[] valid = new boolean[laps.length];
    double inverse = 0;
    for (int i = 0; i < laps.length; i++) {
      if (laps[i].length != laps[0].length) {
        throw new StatsException("laps[" + i + "]", "must be as long as the first.");
      }
      means[i] = StintSummary.MEAN.of(laps[i]);
      valid[i] = !Double.isNaN(means[i]);
      inverse += valid[i] ? 1.0 / known(laps[i]).length : 0;
    }
    Optional<RiderNoise> stint = StintNoise.of(setups, means, valid, drift).noise();
    Optional<RiderNoise> lap = within(laps);
    double harmonic = DayCheck.count(valid) / inverse;
    return lap.isPresent() && stint.isPresent() && lap.get().sd() > 0
        ? Optional.of(new LapNoise(lap.get(), stint.get(), harmonic))
        : Optional.empty();
  }

  /**
   * Several days of one rider, trail and measure together: both parts pooled as √(Σdf·s²/Σdf), laps
   * weighed by the stints' degrees of freedom, so that s² is on average σ_b² + σ_w²/m also where
   * days have different numbers of laps.
   *
   * @throws StatsException if there is no day
   */
  public static LapNoise pooled(List<LapNoise> days) {
    double inverse = 0;
    int df = 0;
    for (LapNoise day : days) {
      inverse += day.stint.df() / day.laps;
      df += day.stint.df();
    }
    return new LapNoise(
        RiderNoise.pooled(days.stream().map(LapNoise::lap).toList()),
        RiderNoise.pooled(days.stream().map(LapNoise::stint).toList()),
        df / inverse);
  }

  private static double[] known(double[] laps) {
    return Arrays.stream(laps).filter(lap -> !Double.isNaN(lap)).toArray();
  }

  /** Pooled within stints by least squares with the lap positions; empty without a df. */
  private static Optional<RiderNoise> within(double[][] laps) {
    int positions = laps.length == 0 ? 0 : laps[0].length;
    int rows = 0;
    int stints = 0;
    for (double[] stint : laps) {
      int n = known(stint).length;
      rows += n;
      stints += n > 0 ? 1 : 0;
    }
    int df = rows - stints - (positions - 1);
    if (df < 1) {
      return Optional.empty();
    }
    // Everything less its stint's mean: what is left is regressed on the positions likewise.
    double[] y = new double[rows];
    double[][] x = new double[rows][positions - 1];
    int row = 0;
    for (double[] stint : laps) {
      int n = known(stint).length;
      double mean = StintSummary.MEAN.of(stint);
      for (int lap = 0; lap < positions; lap++) {
        if (Double.isNaN(stint[lap])) {
          continue;
        }
        y[row] = stint[lap] - mean;
        for (int p = 1; p < positions; p++) {
          x[row][p - 1] = (p == lap ? 1 : 0) - (Double.isNaN(stint[p]) ? 0 : 1.0 / n);
        }
        row++;
      }
    }
    QRDecomposition qr = new QRDecomposition(new Array2DRowRealMatrix(x), 1e-12);
    if (!qr.getSolver().isNonSingular()) {
      return Optional.empty();
    }
    ArrayRealVector response = new ArrayRealVector(y);
    double rss =
        new ArrayRealVector(y)
            .subtract(new Array2DRowRealMatrix(x).operate(qr.getSolver().solve(response)))
            .getNorm();
    return Optional.of(new RiderNoise(rss / Math.sqrt(df), df));
  }

  /** F = m·s²/σ_w², 1 on average where laps of a stint share no noise. */
  private double f() {
    return laps * stint.sd() * stint.sd() / (lap.sd() * lap.sd());
  }

  private double fQuantile(double p) {
    return FDistribution.of(stint.df(), lap.df()).inverseCumulativeProbability(p);
  }

  /** λ = σ_b²/σ_w², not below 0. */
  public double ratio() {
    return Math.max(0, (f() - 1) / laps);
  }

  /** 95 % interval of λ, not below 0; right if laps behave normally. */
  public Interval ratio95() {
    return new Interval(
        Math.max(0, (f() / fQuantile(.975) - 1) / laps),
        Math.max(0, (f() / fQuantile(.025) - 1) / laps));
  }

  /** ρ = σ_b²/(σ_b² + σ_w²): the share of one lap's noise variance that its stint has. */
  public double share() {
    return ratio() / (1 + ratio());
  }

  /** 95 % interval of ρ: that of λ. */
  public Interval share95() {
    Interval ratio = ratio95();
    return new Interval(
        ratio.low() / (1 + ratio.low()),
        Double.isInfinite(ratio.high()) ? 1 : ratio.high() / (1 + ratio.high()));
  }

  /** What turns the noise of these stints' means into that of stints of other numbers of laps. */
  public LapSplit split() {
    return new LapSplit(laps, share95());
  }

  /** σ_b. */
  public double shared() {
    return Math.sqrt(sharedVariance());
  }

  /** Interval of σ_b, from that of its square. */
  public Interval shared95() {
    Interval variance = sharedVariance95();
    return new Interval(Math.sqrt(variance.low()), Math.sqrt(variance.high()));
  }

  /** σ_b², not below 0. */
  public double sharedVariance() {
    return Math.max(0, stint.sd() * stint.sd() - lap.sd() * lap.sd() / laps);
  }

  /** Interval of σ_b² after Williams (1962) and Tukey (1951), both ends at 2.5 %. */
  public Interval sharedVariance95() {
    double squares = stint.df() * stint.sd() * stint.sd();
    double low = squares / Quantiles.chiSquared(.975, stint.df()) * (1 - fQuantile(.975) / f());
    double high = squares / Quantiles.chiSquared(.025, stint.df()) * (1 - fQuantile(.025) / f());
    return new Interval(Math.max(0, low), Math.max(0, high));
  }

  /**
   * SD of a stint of so many laps at the estimated λ.
   *
   * @param planned scored laps of the stint
   * @param summary how they become its value
   */
  public double stintSd(int planned, StintSummary summary) {
    return stint.sd() * split().factor(share(), planned, summary);
  }

  /** The same at both ends of λ's interval, the smaller first. */
  public Interval stintSdRange(int planned, StintSummary summary) {
    Interval factor = split().factor(planned, summary);
    return new Interval(stint.sd() * factor.low(), stint.sd() * factor.high());
  }

  /**
   * The range where only one lap a stint was ever ridden, from laps that share no noise to laps
   * that share all of it.
   *
   * @param sd of stints of one lap
   */
  public static Interval unknownSplit(double sd, int planned, StintSummary summary) {
    return new Interval(sd * Math.sqrt(share(planned, summary)), sd);
  }

  /**
   * Variance of a stint's summary over σ_w²: 1/m for the mean; for the median of normal laps.
   *
   * @param laps m, at least 1
   */
  public static double share(int laps, StintSummary summary) {
    return LapSplit.variance(laps, summary);
  }
}
