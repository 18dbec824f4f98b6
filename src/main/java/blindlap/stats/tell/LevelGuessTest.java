package blindlap.stats.tell;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.LevelScale;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Whether a rider felt which level of a setting was ridden, by re-randomisation
 * (docs/method.md#guesses): after each stint the guess is nearer the low end, nearer the high end
 * or "don't know". With x the centred level over the whole range and g = −1, +1 or 0, T = Σx·g; the
 * guesses are held fixed and the order varies, so that habits count for nothing.
 *
 * @param t Σx·g over the stints that count
 * @param right guesses of the end that the level ridden was nearer to
 * @param wrong guesses of the other end; a level half-way between the ends is nearer to neither
 * @param unsure answers "don't know"
 * @param p one-sided: share of orders with at least {@code t}
 * @param midP share with more, and half of those with as many
 * @param sampled true if the orders were sampled
 */
public record LevelGuessTest(
    double t, int right, int wrong, int unsure, double p, double midP, boolean sampled) {
  private static final double TIE = 1e-9;

  /**
   * Tests the guesses of a session.
   *
   * @param set the admissible orders, one setup per level
   * @param levels the number of each level, for setup A first
   * @param order the order ridden
   * @param guesses one character per stint: 'L' nearer the low end, 'H' nearer the high end, '-'
   *     for "don't know", '.' for no answer
   * @param valid true where the stint counts
   * @param sampling what to do with very large sets
   * @throws StatsException if levels or guesses do not fit, or no guess is left
   */
  public static LevelGuessTest of(
      Assignments set,
      double[] levels,
      int[] order,
      String guesses,
      boolean[] valid,
      Sampling sampling) {
    LevelScale.check(set, levels);
    DayCheck.order(set, order);
    DayCheck.length(set, "guesses", guesses.length(), "guesses");
    DayCheck.length(set, "valid", valid.length, "entries");
    sampling.check(set);
    double[] x = LevelScale.centred(levels);
    double middle =
        (Arrays.stream(x).min().orElseThrow() + Arrays.stream(x).max().orElseThrow()) / 2;
    double[] g = new double[order.length];
    int[] answers = new int[3];
    for (int i = 0; i < g.length; i++) {
      int guess = read(guesses, i);
      if (guesses.charAt(i) == '.' || !valid[i]) {
        continue;
      }
      g[i] = guess;
      double away = x[order[i]] - middle;
      double side = Math.abs(away) <= TIE ? 0 : away * guess;
      answers[0] += side > 0 ? 1 : 0;
      answers[1] += side < 0 ? 1 : 0;
      answers[2] += guess == 0 ? 1 : 0;
    }
    if (none(guesses, valid)) {
      throw new StatsException("guesses", "hold no answer on a stint that counts.");
    }
    Walk walk = new Walk(set, x, g, sum(x, g, order));
    boolean sampled = sampling.samples(set);
    if (sampled) {
      walk.take(walk.observed);
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.walk(0, 0, 0);
    }
    return new LevelGuessTest(
        walk.observed,
        answers[0],
        answers[1],
        answers[2],
        (walk.more + walk.same) / walk.orders,
        (walk.more + walk.same / 2) / walk.orders,
        sampled);
  }

  private static boolean none(String guesses, boolean[] valid) {
    for (int i = 0; i < valid.length; i++) {
      if (valid[i] && guesses.charAt(i) != '.') {
        return false;
      }
    }
    return true;
  }

  private static int read(String guesses, int i) {
    return switch (guesses.charAt(i)) {
      case 'L' -> -1;
      case 'H' -> 1;
      case '-', '.' -> 0;
      default ->
          throw new StatsException(
              "guesses",
              "must hold L (nearer the low end), H (nearer the high end), - (don't know) or . (no"
                  + " answer), but stint "
                  + (i + 1)
                  + " has '"
                  + guesses.charAt(i)
                  + "'.");
    };
  }

  private static double sum(double[] x, double[] g, int[] order) {
    double sum = 0;
    for (int i = 0; i < g.length; i++) {
      sum += x[order[i]] * g[i];
    }
    return sum;
  }

  /** True if the mid-p is at or below that of the guesses of setups. */
  public boolean flagged() {
    return midP <= GuessTest.FLAG;
  }

  /** Goes through the orders. */
  private static final class Walk {
    private final Assignments set;
    private final double[] x;
    private final double[] g;
    private final double observed;
    private double more;
    private double same;
    private double orders;

    Walk(Assignments set, double[] x, double[] g, double observed) {
      this.set = set;
      this.x = x;
      this.g = g;
      this.observed = observed;
    }

    void take(double t) {
      orders++;
      more += t > observed + TIE ? 1 : 0;
      same += Math.abs(t - observed) <= TIE ? 1 : 0;
    }

    void walk(int i, int node, double t) {
      if (i == g.length) {
        take(t);
        return;
      }
      for (int setup = 0; setup < x.length; setup++) {
        int to = set.next(node, setup);
        if (to >= 0) {
          walk(i + 1, to, t + x[setup] * g[i]);
        }
      }
    }

    void sample(int draws, UniformRandomProvider source) {
      int[] order = new int[g.length];
      for (int draw = 0; draw < draws; draw++) {
        set.random(source, order);
        take(sum(x, g, order));
      }
    }
  }
}
