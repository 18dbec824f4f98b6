package blindlap.stats.compare;

/**
 * Whether a trend over levels bends (docs/method.md#trend): partial t of the quadratic contrast
 * after drift and the levels themselves, with the share of orders whose |t| is as large. Exact if
 * no level matters; with a strong trend mostly on the cautious side.
 *
 * @param t signed; above 0 where the middle lies lower than the ends
 * @param p share of orders with at least this |t|
 */
public record Bend(double t, double p) {
  private static final double LEVEL = 0.05;

  /** True if p is .05 or less; it is a share of whole orders, so a little slack changes nothing. */
  public boolean real() {
    return p <= LEVEL + 1e-12;
  }

  /** Counts the orders whose bend is at least the observed one. */
  static final class Tally {
    private static final double SLACK = 1e-9;

    private final double total;
    private final int df;
    private final int columns;
    private final double observed;
    private final double threshold;
    private long orders;
    private long extreme;

    /**
     * @param total squared length of Wy
     * @param df stints used less nuisance columns less 2
     * @param observed the sums of the ridden order, see {@link TrendWalk.Visitor}
     * @param loose what the rounding of the values themselves may add to a t
     */
    Tally(double total, int df, int columns, double[] observed, double loose) {
      this.total = total;
      this.df = df;
      this.columns = columns;
      this.observed = t(observed);
      this.threshold =
          loose > SLACK
              ? Math.abs(this.observed) * (1 - loose) - loose
              : Math.abs(this.observed) * (1 - SLACK);
    }

    void order(double[] sums) {
      orders++;
      extreme += Math.abs(t(sums)) >= threshold ? 1 : 0;
    }

    Bend found() {
      return new Bend(observed, (double) extreme / orders);
    }

    /** Partial t; 0 where drift and the levels explain the contrast. */
    private double t(double[] sums) {
      double xx = TrendWalk.product(sums, columns, 4, 0, 0);
      double xu = TrendWalk.product(sums, columns, 5, 0, 1);
      double uu = TrendWalk.product(sums, columns, 6, 1, 1);
      boolean tells = xx > SLACK * sums[4];
      double own = tells ? uu - xu * xu / xx : uu;
      if (own <= SLACK * sums[6]) {
        return 0;
      }
      double left = tells ? total - sums[2] * sums[2] / xx : total;
      double along = tells ? sums[3] - sums[2] * xu / xx : sums[3];
      double explained = along * along / own;
      double noise = Math.max(left - explained, total * 1e-15) / df;
      return Math.copySign(Math.sqrt(explained / noise), along);
    }
  }
}
