package blindlap.stats.compare;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.LevelScale;
import blindlap.stats.order.Sampling;

/**
 * How much a day's orders tell of a trend over levels and of its bend before anyone rides: harmonic
 * means over the set, since variances are what is averaged. Sets too large to walk are sampled.
 *
 * @param trend of x'Wx a stint, x the centred level over the whole range: the variance of the
 *     difference from the lowest to the highest level is 1/(stints · trend) for noise of variance 1
 * @param bend of the same for the quadratic contrast after drift and x, by which a height is told:
 *     how far the middle of the range lies off the straight line between its ends; 0 for two levels
 */
public record LevelInformation(double trend, double bend) {
  private static final double NOTHING = 1e-12;

  /**
   * A parabola of height 1 over the straight line between the ends is 1 − 4·s² with s from −½ to ½
   * over the range; s² and x² have the same quadratic part.
   */
  private static final double OF_HEIGHT = 16;

  /**
   * @param levels the number of each level, for setup A first
   * @param use true where the stint remains
   */
  public static LevelInformation of(
      Assignments set, double[] levels, boolean[] use, Drift drift, Sampling sampling) {
    sampling.check(set);
    Residuals residuals = new Residuals(use, drift);
    double[] x = LevelScale.centred(levels);
    double[] u = LevelScale.bent(x);
    double[][] zero = new double[3][set.stints()];
    double most = DayCheck.count(use);
    double[] sum = new double[3];
    int columns = residuals.columns();
    TrendWalk walk =
        new TrendWalk(
            set,
            residuals,
            use,
            x,
            u,
            zero,
            sums -> {
              double xx = TrendWalk.product(sums, columns, 4, 0, 0);
              double xu = TrendWalk.product(sums, columns, 5, 0, 1);
              double uu = TrendWalk.product(sums, columns, 6, 1, 1);
              boolean tells = xx > NOTHING * most;
              double own = tells ? uu - xu * xu / xx : 0;
              sum[0]++;
              sum[1] += tells ? most / xx : Double.POSITIVE_INFINITY;
              sum[2] += own > NOTHING * most ? most / own : Double.POSITIVE_INFINITY;
            });
    if (sampling.samples(set)) {
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.run();
    }
    return new LevelInformation(sum[0] / sum[1], OF_HEIGHT * sum[0] / sum[2]);
  }
}
