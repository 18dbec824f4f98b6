package blindlap.stats.compare;

import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import blindlap.stats.distribution.StudentizedRange;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * The mean of every level of one setting after drift, whatever its shape over the levels
 * (docs/method.md#trend), with Tukey's and Kramer's intervals between levels. Normal theory, and so
 * approximate, unlike the trend beside it.
 *
 * <p>A level without a stint that counts has no mean; the others stand.
 */
public final class LevelMeans {
  private static final double TAIL = 0.05;
  private static final double TOGETHER = 0.95;

  private final double[] levels;
  private final List<Mean> means;
  private final List<Pair> pairs;
  private final double noiseSd;
  private final int df;

  /**
   * A level.
   *
   * @param setup its setup's index
   * @param level its number
   * @param stints stints that count
   * @param mean at the day's average drift and covariates, in the unit of the values
   * @param standardError of the mean, on {@link LevelMeans#df()}
   */
  public record Mean(int setup, double level, int stints, double mean, double standardError) {}

  /**
   * Two levels.
   *
   * @param first setup of the lower level
   * @param second setup of the higher level
   * @param estimate mean of the second less that of the first
   * @param standardError of the estimate, on {@link LevelMeans#df()}
   */
  public record Pair(int first, int second, double estimate, double standardError) {}

  /**
   * The levels between the ends against the straight line from end to end.
   *
   * @param estimate their mean less the line's mean at their places, in the unit of the values
   * @param standardError of the estimate, on {@link LevelMeans#df()}
   */
  public record Middle(double estimate, double standardError) {}

  private LevelMeans(double[] levels, List<Mean> means, List<Pair> pairs, double noiseSd, int df) {
    this.levels = levels;
    this.means = means;
    this.pairs = pairs;
    this.noiseSd = noiseSd;
    this.df = df;
  }

  /**
   * The means of a fit; empty if no noise is left, or the levels ridden follow drift or covariates.
   */
  static Optional<LevelMeans> of(
      Assignments set, double[] levels, int[] order, double[] values, boolean[] use, SetupFit fit) {
    SetupContrasts contrasts = new SetupContrasts(levels.length);
    new ManyWalk(set, fit.residuals.matrix(), fit.wy, (sums, at, seen) -> contrasts.solve(sums, at))
        .visit(order);
    int[] stints = new int[levels.length];
    for (int i = 0; i < order.length; i++) {
      stints[order[i]] += use[i] ? 1 : 0;
    }
    int ridden = (int) Arrays.stream(stints).filter(each -> each > 0).count();
    int df = fit.used - fit.residuals.columns() - contrasts.rank();
    double left = Math.max(0, Residuals.dot(fit.wy, fit.wy) - contrasts.explained());
    if (contrasts.rank() < ridden - 1 || df < 1 || DayCheck.noVariation(left, values, use)) {
      return Optional.empty();
    }
    double noiseSd = Math.sqrt(left / df);
    Table table = new Table(contrasts, stints, fit.used);
    List<Integer> rising =
        IntStream.range(0, levels.length)
            .boxed()
            .filter(setup -> stints[setup] > 0)
            .sorted((a, b) -> Double.compare(levels[a], levels[b]))
            .toList();
    double average = 0;
    for (int i = 0; i < values.length; i++) {
      average += use[i] ? values[i] / fit.used : 0;
    }
    List<Mean> means = new ArrayList<>();
    List<Pair> pairs = new ArrayList<>();
    for (int at = 0; at < rising.size(); at++) {
      int first = rising.get(at);
      means.add(
          new Mean(
              first,
              levels[first],
              stints[first],
              average + table.aboveAverage(first),
              noiseSd * Math.sqrt(table.variance(first))));
      for (int second : rising.subList(at + 1, rising.size())) {
        pairs.add(
            new Pair(
                first,
                second,
                table.difference[first][second],
                noiseSd * Math.sqrt(table.variance[first][second])));
      }
    }
    return Optional.of(
        new LevelMeans(levels.clone(), List.copyOf(means), List.copyOf(pairs), noiseSd, df));
  }

  /** Differences of all levels with their variances for noise of variance 1. */
  private static final class Table {
    private final double[][] difference;
    private final double[][] variance;
    private final double[] share;
    private final int used;

    Table(SetupContrasts contrasts, int[] stints, int used) {
      int k = stints.length;
      this.difference = new double[k][k];
      this.variance = new double[k][k];
      this.share = Arrays.stream(stints).mapToDouble(each -> (double) each / used).toArray();
      this.used = used;
      for (int pair = 0; pair < contrasts.pairs(); pair++) {
        int a = contrasts.first(pair);
        int b = contrasts.second(pair);
        if (stints[a] > 0 && stints[b] > 0) {
          difference[a][b] = contrasts.difference(pair);
          difference[b][a] = -difference[a][b];
          variance[a][b] = contrasts.unitVariance(pair);
          variance[b][a] = variance[a][b];
        }
      }
    }

    /** A level's mean less the average of the day, in which every stint has the same weight. */
    double aboveAverage(int level) {
      double sum = 0;
      for (int other = 0; other < share.length; other++) {
        sum += share[other] * difference[other][level];
      }
      return sum;
    }

    /**
     * Variance of a mean. The day's average and the differences after drift are independent, and
     * weights that add up to 1 give Σw·v less half of Σww'·v for the differences.
     */
    double variance(int level) {
      double sum = 1.0 / used;
      for (int a = 0; a < share.length; a++) {
        sum += share[a] * variance[level][a];
        for (int b = 0; b < share.length; b++) {
          sum -= share[a] * share[b] * variance[a][b] / 2;
        }
      }
      return Math.max(0, sum);
    }
  }

  /** The levels ridden, lowest first. */
  public List<Mean> means() {
    return means;
  }

  /** All pairs of levels ridden, in the order of the levels. */
  public List<Pair> pairs() {
    return pairs;
  }

  /** Stint-to-stint standard deviation after drift and levels, with {@link #df()}. */
  public double noiseSd() {
    return noiseSd;
  }

  /** Stints used less nuisance columns less levels ridden, plus 1. */
  public int df() {
    return df;
  }

  /**
   * Student's interval of one mean, by itself.
   *
   * @param level for example .95
   */
  public Interval interval(Mean mean, double level) {
    return Interval.around(
        mean.mean(), Quantiles.tUpper((1 - level) / 2, df) * mean.standardError());
  }

  /**
   * Tukey's and Kramer's interval of a pair: all pairs together hold their true differences with
   * this probability if stints behave normally.
   *
   * @param level for example .95
   */
  public Interval interval(Pair pair, double level) {
    double reach = StudentizedRange.of(means.size(), df).quantile(level) / Math.sqrt(2);
    return Interval.around(pair.estimate(), reach * pair.standardError());
  }

  /** How far the levels between the ends lie off the line; empty with fewer than three ridden. */
  public Optional<Middle> middle() {
    int last = means.size() - 1;
    if (last < 2) {
      return Optional.empty();
    }
    double[] weights = new double[levels.length];
    Mean low = means.get(0);
    Mean high = means.get(last);
    for (Mean each : means.subList(1, last)) {
      double place = (each.level() - low.level()) / (high.level() - low.level());
      weights[each.setup()] += 1.0 / (last - 1);
      weights[low.setup()] -= (1 - place) / (last - 1);
      weights[high.setup()] -= place / (last - 1);
    }
    double estimate = 0;
    for (Mean each : means) {
      estimate += weights[each.setup()] * each.mean();
    }
    // Weights that add up to 0 leave half of the differences' variances, and nothing of the means'.
    double variance = 0;
    for (Pair pair : pairs) {
      variance -=
          weights[pair.first()] * weights[pair.second()] * Math.pow(pair.standardError(), 2);
    }
    return Optional.of(new Middle(estimate, Math.sqrt(Math.max(0, variance))));
  }

  /**
   * Student's interval of the levels between the ends, by itself.
   *
   * @param level for example .95
   */
  public Interval interval(Middle middle, double level) {
    return Interval.around(
        middle.estimate(), Quantiles.tUpper((1 - level) / 2, df) * middle.standardError());
  }

  /** The setup with the best mean. */
  public int best(boolean lowerIsBetter) {
    return best(0, means.size(), lowerIsBetter);
  }

  private int best(int from, int to, boolean lowerIsBetter) {
    int best = from;
    for (int at = from + 1; at < to; at++) {
      double ahead = means.get(best).mean() - means.get(at).mean();
      best = (lowerIsBetter ? ahead > 0 : ahead < 0) ? at : best;
    }
    return means.get(best).setup();
  }

  /**
   * The setup between the ends that beats both of them: of three levels by two one-sided 5 % t
   * tests, which both must hold; of more, the best between the ends by the intervals of all pairs.
   * Empty if none does, or if an end was not ridden. It takes a bend besides to say so, see {@link
   * Trend#middleBetter}.
   */
  OptionalInt beatsBothEnds(boolean lowerIsBetter) {
    int last = means.size() - 1;
    if (last < 2
        || means.get(0).level() > Arrays.stream(levels).min().orElseThrow()
        || means.get(last).level() < Arrays.stream(levels).max().orElseThrow()) {
      return OptionalInt.empty();
    }
    int middle = best(1, last, lowerIsBetter);
    double reach =
        levels.length == 3
            ? Quantiles.tUpper(TAIL, df)
            : StudentizedRange.of(means.size(), df).quantile(TOGETHER) / Math.sqrt(2);
    boolean beats =
        ahead(middle, means.get(0).setup(), lowerIsBetter) > reach
            && ahead(middle, means.get(last).setup(), lowerIsBetter) > reach;
    return beats ? OptionalInt.of(middle) : OptionalInt.empty();
  }

  /** By how many standard errors one level is better than another. */
  private double ahead(int setup, int end, boolean lowerIsBetter) {
    for (Pair pair : pairs) {
      if (pair.first() == setup && pair.second() == end) {
        return (lowerIsBetter ? 1 : -1) * pair.estimate() / pair.standardError();
      }
      if (pair.first() == end && pair.second() == setup) {
        return (lowerIsBetter ? -1 : 1) * pair.estimate() / pair.standardError();
      }
    }
    throw new IllegalArgumentException("two levels that were not both ridden");
  }
}
