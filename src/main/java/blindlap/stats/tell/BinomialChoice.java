package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import java.util.Arrays;
import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/**
 * Exact binomial tests of a count of choices against chance, their least significant counts and
 * their power.
 *
 * <p>X ~ Binomial(trials, chance). Two-sided p is the sum of all probabilities that are at most (1
 * + 1e-7) times that of the observed count, as R's {@code binom.test}. A tail that equals the level
 * within a relative 1e-12 counts as reaching it, so that exact ties are not lost to rounding.
 */
public final class BinomialChoice {
  /** Most trials that are accepted: all probabilities are held in memory. */
  public static final int MOST_TRIALS = 1_000_000;

  private static final double SAME_PROBABILITY = 1 + 1e-7;
  private static final double TIE = 1 + 1e-12;

  private final int trials;
  private final double chance;
  private final BinomialDistribution distribution;

  private BinomialChoice(int trials, double chance) {
    this.trials = trials;
    this.chance = chance;
    this.distribution = BinomialDistribution.of(trials, chance);
  }

  /** Which counts speak against chance. */
  public enum Tail {
    GREATER,
    LESS,
    TWO_SIDED
  }

  /**
   * @param trials number of trials, 1 to {@value #MOST_TRIALS}
   * @param chance probability of the choice by chance alone, above 0 and below 1
   * @throws StatsException if a value is impossible
   */
  public static BinomialChoice of(int trials, double chance) {
    if (trials < 1 || trials > MOST_TRIALS) {
      throw new StatsException(
          "trials", "must lie between 1 and " + MOST_TRIALS + ", but is " + trials + ".");
    }
    return new BinomialChoice(trials, Require.innerProportion("chance", chance));
  }

  /**
   * p of {@code chosen} or more extreme.
   *
   * @throws StatsException if chosen is negative or more than the trials
   */
  public double p(int chosen, Tail tail) {
    Require.countUpTo("chosen", chosen, "trials", trials);
    return switch (tail) {
      case GREATER -> upper(chosen);
      case LESS -> distribution.cumulativeProbability(chosen);
      case TWO_SIDED -> twoSided()[chosen];
    };
  }

  /**
   * The least count with p ≤ level; with TWO_SIDED the least count above trials·chance from which
   * on every count has a two-sided p ≤ level. Empty if not even all trials reach the level.
   *
   * @param level above 0 and below 1
   * @param tail GREATER or TWO_SIDED
   * @throws StatsException if a value is impossible or the tail is LESS
   */
  public OptionalInt minimum(double level, Tail tail) {
    Require.innerProportion("level", level);
    return switch (tail) {
      case GREATER -> leastUpper(level);
      case TWO_SIDED -> leastTwoSided(level);
      case LESS -> throw new StatsException("tail", "must be greater or two-sided here.");
    };
  }

  /**
   * Power of the one-sided (greater) test.
   *
   * @param trueProportion 0 to 1
   * @return P(X ≥ minimum) at the true proportion, 0 if there is no minimum
   * @throws StatsException if a value is impossible
   */
  public double power(double level, double trueProportion) {
    Require.proportion("true_proportion", trueProportion);
    OptionalInt least = minimum(level, Tail.GREATER);
    if (least.isEmpty()) {
      return 0;
    }
    return BinomialDistribution.of(trials, trueProportion)
        .survivalProbability(least.getAsInt() - 1);
  }

  private double upper(int count) {
    return distribution.survivalProbability(count - 1);
  }

  private OptionalInt leastUpper(double level) {
    if (upper(trials) > level * TIE) {
      return OptionalInt.empty();
    }
    int fails = 0;
    int reaches = trials;
    while (reaches - fails > 1) {
      int middle = (fails + reaches) >>> 1;
      if (upper(middle) <= level * TIE) {
        reaches = middle;
      } else {
        fails = middle;
      }
    }
    return OptionalInt.of(reaches);
  }

  private OptionalInt leastTwoSided(double level) {
    double[] p = twoSided();
    int least = trials + 1;
    while (least - 1 > trials * chance && p[least - 1] <= level * TIE) {
      least--;
    }
    return least > trials ? OptionalInt.empty() : OptionalInt.of(least);
  }

  /** The two-sided p of every count from 0 to trials. */
  private double[] twoSided() {
    double[] probability = new double[trials + 1];
    Arrays.setAll(probability, distribution::probability);
    double[] sorted = probability.clone();
    Arrays.sort(sorted);
    double[] summed = sorted.clone();
    Arrays.parallelPrefix(summed, Double::sum);
    double[] p = new double[trials + 1];
    for (int k = 0; k <= trials; k++) {
      int last = lastAtMost(sorted, probability[k] * SAME_PROBABILITY);
      p[k] = Math.min(1, summed[last]);
    }
    return p;
  }

  private static int lastAtMost(double[] sorted, double bound) {
    int low = 0;
    int high = sorted.length;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (sorted[middle] <= bound) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
