package blindlap.stats.power;

import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.LevelInformation;
import blindlap.stats.compare.Trend;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.RiderNoise;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;
import org.apache.commons.rng.simple.RandomSource;
import org.jspecify.annotations.Nullable;

/**
 * What a day of a plan can show (docs/method.md#detectable-difference,
 * docs/method.md#verdict-odds): detectable difference and verdict odds, at once by formula and, as
 * fine as one has patience, by simulating days with the test that will be used.
 */
public final class DayPower {
  /** Sets up to this size are walked whole on a simulated day; of larger ones orders are drawn. */
  static final long WHOLE_UP_TO = 4096;

  private static final int DRAWS = 999;

  /** Of levels even the information takes a walk; 9 999 orders settle it to one part in 1 000. */
  static final Sampling PLANNED = new Sampling(false, 9_999, Sampling.PREFERRED.seed(), 1 << 16);

  private final Assignments set;
  private final boolean[] left;
  private final Drift drift;
  private final Detectable formula;

  /** The levels of a trend; null where two setups are compared. */
  private final double @Nullable [] levels;

  private DayPower(
      Assignments set,
      boolean[] left,
      Drift drift,
      Detectable formula,
      double @Nullable [] levels) {
    this.levels = levels == null ? null : levels.clone();
    this.set = set;
    this.left = left;
    this.drift = drift;
    this.formula = formula;
  }

  /** How an answer was found. */
  public enum Source {
    FORMULA,
    SIMULATION
  }

  /**
   * A difference with its source.
   *
   * @param difference in the unit asked for; NaN if it cannot be detected
   * @param source how it was found
   * @param error95 95 % interval over repetitions of the simulation; null by formula
   */
  public record Answer(double difference, Source source, @Nullable Interval error95) {}

  /**
   * @param set the admissible orders of two setups
   * @param drift what will be removed
   * @throws StatsException if the set has other than two setups or too few stints
   */
  public static DayPower of(Assignments set, Drift drift) {
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return of(set, all, drift);
  }

  /**
   * For a day of which some stints are lost.
   *
   * @param left true where the stint remains
   */
  public static DayPower of(Assignments set, boolean[] left, Drift drift) {
    return new DayPower(
        set, left.clone(), drift, Detectable.of(set, left, drift, Sampling.PREFERRED), null);
  }

  /**
   * For a trend over levels: every difference is that from the lowest to the highest.
   *
   * @param levels the number of each level, for setup A first
   * @param left true where the stint remains
   * @throws StatsException if levels are equal or too few stints are left
   */
  public static DayPower ofLevels(Assignments set, double[] levels, boolean[] left, Drift drift) {
    return new DayPower(
        set, left.clone(), drift, Detectable.ofLevels(set, levels, left, drift, PLANNED), levels);
  }

  /** The same, with what the orders tell worked out already. */
  static DayPower ofLevels(
      Assignments set, double[] levels, boolean[] left, Drift drift, LevelInformation information) {
    return new DayPower(
        set,
        left.clone(),
        drift,
        Detectable.ofLevels(set, levels, left, drift, () -> information),
        levels);
  }

  /** The formula, with the figures it rests on. */
  public Detectable formula() {
    return formula;
  }

  /**
   * True if the set is large enough for the formula, else days are simulated: at least 200 orders,
   * and of levels at least so many that the trend tells apart, over two stints a level.
   */
  public boolean formulaHolds() {
    if (levels == null) {
      return formula.formulaHolds();
    }
    return formula.stints() >= 2 * levels.length
        && OrdersApart.count(set, levels, left)
                .compareTo(BigInteger.valueOf(Detectable.FORMULA_FROM))
            >= 0;
  }

  /** Verdict odds by normal theory; see {@link SimulatedDays#odds} for the refinement. */
  public VerdictOdds odds(double difference, double margin, double sd) {
    return VerdictOdds.approximate(formula, difference, margin, sd);
  }

  /**
   * The difference found with a power: by formula where it {@link #formulaHolds holds}, else
   * simulated.
   *
   * @param sd noise, above 0
   * @param power such as .8
   * @param days simulated days, if any have to be
   * @param seed of the simulation
   * @param cancelled asked before every day
   * @throws CancellationException if cancelled
   */
  public Answer difference(
      double sd, double power, int days, long seed, BooleanSupplier cancelled) {
    if (formulaHolds() || formula.attainableLevel() == 0) {
      return new Answer(formula.difference(sd, power), Source.FORMULA, null);
    }
    SimulatedDays simulated = simulate(days, seed, cancelled);
    return new Answer(
        simulated.difference(sd, power), Source.SIMULATION, simulated.differenceError95(sd, power));
  }

  /** By formula, over the 95 % interval of a noise that is itself estimated. */
  public Interval differenceRange(RiderNoise noise, double power) {
    return formula.difference(noise.interval95IfNormal(), power);
  }

  /**
   * Simulates days of white normal noise. Every day has an order of its own, and draws of its own
   * where the set has more than 4096 orders.
   *
   * @param days at least 1
   * @param seed the same seed gives the same days
   * @param cancelled asked before every day
   * @throws CancellationException if cancelled or the thread is interrupted
   */
  public SimulatedDays simulate(int days, long seed, BooleanSupplier cancelled) {
    if (days < 1) {
      throw new StatsException("days", "must be at least 1, but is " + days + ".");
    }
    UniformRandomProvider source = RandomSource.XO_RO_SHI_RO_128_PP.create(seed);
    ZigguratSampler.NormalizedGaussian normal = ZigguratSampler.NormalizedGaussian.of(source);
    double[][] ends = new double[5][days];
    double[] y = new double[set.stints()];
    for (int day = 0; day < days; day++) {
      if (cancelled.getAsBoolean() || Thread.currentThread().isInterrupted()) {
        throw new CancellationException("simulation stopped after " + day + " days");
      }
      for (int i = 0; i < y.length; i++) {
        y[i] = normal.sample();
      }
      simulate(day, set.random(source), y, source.nextLong(), ends);
    }
    return new SimulatedDays(ends);
  }

  private void simulate(int day, int[] order, double[] y, long seed, double[][] ends) {
    Sampling sampling = new Sampling(false, DRAWS, seed, WHOLE_UP_TO);
    ends[1][day] = Double.NEGATIVE_INFINITY;
    ends[2][day] = Double.POSITIVE_INFINITY;
    ends[3][day] = Double.NEGATIVE_INFINITY;
    ends[4][day] = Double.POSITIVE_INFINITY;
    double estimate;
    ConfidenceCurve curve;
    try {
      if (levels == null) {
        TwoSetups found = TwoSetups.compare(set, order, y, left, drift, sampling);
        estimate = found.estimate();
        curve = found.curve();
      } else {
        Trend found = Trend.of(set, levels, order, y, left, Nuisance.of(drift), sampling);
        estimate = found.estimate();
        curve = found.curve();
      }
    } catch (Unusable nothingLeft) {
      // Only on a day cut so short that one setup was never ridden: it shows nothing.
      return;
    }
    ends[0][day] = estimate;
    curve.interval(0.95).ifPresent(interval -> keep(interval, ends, 1, day));
    curve.interval(0.90).ifPresent(interval -> keep(interval, ends, 3, day));
  }

  private static void keep(Interval interval, double[][] ends, int at, int day) {
    ends[at][day] = interval.low();
    ends[at + 1][day] = interval.high();
  }
}
