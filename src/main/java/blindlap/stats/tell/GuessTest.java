package blindlap.stats.tell;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.ScoreCounts;
import java.math.BigInteger;
import java.util.Optional;

/**
 * Whether a rider guessed the setups better than chance, by re-randomisation
 * (docs/method.md#guesses): the guesses are held fixed and the order varies over all admissible
 * ones, so that habits such as always saying "B" or alternating count for nothing. Index per setup
 * after Bang, Ni and Davis 2004, Controlled Clinical Trials 25:143. Exact for sets of any size.
 *
 * <p>A result without sign of unblinding does not show that the blind held: few stints see little.
 *
 * @param count number of admissible orders
 * @param t right less wrong guesses
 * @param indexA (right − wrong)/stints on A, "don't know" included in the stints; NaN if none
 * @param indexB the same on B
 * @param indexMean plain mean of the two
 * @param p one-sided: share of orders with at least {@code t}
 * @param midP share with more, and half of those with as many
 * @param blockMeans right less wrong per stint of each block, NaN where a block has no guess
 */
public record GuessTest(
    BigInteger count,
    long t,
    double indexA,
    double indexB,
    double indexMean,
    double p,
    double midP,
    double[] blockMeans) {
  /** At or below this mid-p a session is flagged: missing an unblinding is the worse error. */
  public static final double FLAG = 0.10;

  private static final double TAIL = 0.025;

  /**
   * Tests the guesses of a session.
   *
   * @param set the admissible orders of two setups
   * @param order the order ridden
   * @param guesses one character per stint: A, B, '-' for "don't know", '.' for no answer
   * @param valid true where the stint counts
   * @param block length of a block, for the interval of the mean index; the stints if there is none
   * @throws StatsException if the guesses do not fit, or none is left
   */
  public static GuessTest of(
      Assignments set, int[] order, String guesses, boolean[] valid, int block) {
    DayCheck.twoSetups(set);
    DayCheck.order(set, order);
    DayCheck.length(set, "guesses", guesses.length(), "guesses");
    DayCheck.length(set, "valid", valid.length, "entries");
    int n = order.length;
    long[][] score = new long[n][2];
    long[] right = new long[2];
    int[] laps = new int[2];
    for (int i = 0; i < n; i++) {
      int guess = read(guesses, i);
      if (guesses.charAt(i) == '.' || !valid[i]) {
        continue;
      }
      score[i][0] = -guess;
      score[i][1] = guess;
      right[order[i]] += score[i][order[i]];
      laps[order[i]]++;
    }
    if (laps[0] + laps[1] == 0) {
      throw new StatsException("guesses", "hold no answer on a stint that counts.");
    }
    long t = right[0] + right[1];
    ScoreCounts sums = ScoreCounts.of(set, score);
    BigInteger more = sums.count(sum -> sum > t);
    BigInteger same = sums.count(sum -> sum == t);
    BigInteger twice = set.count().shiftLeft(1);
    double indexA = (double) right[0] / laps[0];
    double indexB = (double) right[1] / laps[1];
    return new GuessTest(
        set.count(),
        t,
        indexA,
        indexB,
        (indexA + indexB) / 2,
        ScoreCounts.ratio(more.add(same), set.count()),
        ScoreCounts.ratio(more.shiftLeft(1).add(same), twice),
        blockMeans(order, score, guesses, valid, block));
  }

  private static int read(String guesses, int i) {
    return switch (guesses.charAt(i)) {
      case 'A' -> -1;
      case 'B' -> 1;
      case '-', '.' -> 0;
      default ->
          throw new StatsException(
              "guesses",
              "must hold A, B, - (don't know) or . (no answer), but stint "
                  + (i + 1)
                  + " has '"
                  + guesses.charAt(i)
                  + "'.");
    };
  }

  private static double[] blockMeans(
      int[] order, long[][] score, String guesses, boolean[] valid, int block) {
    double[] means = new double[order.length / block];
    for (int b = 0; b < means.length; b++) {
      long sum = 0;
      int laps = 0;
      for (int i = b * block; i < (b + 1) * block; i++) {
        sum += score[i][order[i]];
        laps += guesses.charAt(i) != '.' && valid[i] ? 1 : 0;
      }
      means[b] = (double) sum / laps;
    }
    return means;
  }

  public GuessTest {
    blockMeans = blockMeans.clone();
  }

  @Override
  public double[] blockMeans() {
    return blockMeans.clone();
  }

  /** True if the mid-p is at or below .10: a sign that the rider knew more than chance. */
  public boolean flagged() {
    return midP <= FLAG;
  }

  /** 95 % t interval of the mean index over block means; empty below two blocks with guesses. */
  public Optional<Interval> meanInterval95() {
    double[] means = java.util.Arrays.stream(blockMeans).filter(m -> !Double.isNaN(m)).toArray();
    int n = means.length;
    if (n < 2) {
      return Optional.empty();
    }
    double mean = java.util.Arrays.stream(means).average().orElseThrow();
    double squares = java.util.Arrays.stream(means).map(m -> (m - mean) * (m - mean)).sum();
    double se = Math.sqrt(squares / (n - 1) / n);
    return Optional.of(Interval.around(mean, Quantiles.tUpper(TAIL, n - 1) * se));
  }
}
