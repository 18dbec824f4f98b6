package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.Arrays;

/**
 * Ratio of two setups' counts per stint, with an interval by inversion of the re-randomisation test
 * on scaled counts (docs/method.md#counts-and-ratings): a ratio θ is kept if the two-sided p of the
 * test applied to y·θ^(−z), z = 1 for B, is above .05, nothing but a constant being removed.
 * Approximate except at θ = 1.
 *
 * <p>In u = 1/θ every statistic is linear, so each order changes sides at one u at most; the
 * interval is found from these, outwards from the crude ratio, without bisection.
 *
 * @param count number of admissible orders
 * @param ratio mean of B / mean of A; infinite or NaN if A counted nothing
 * @param interval95 the ratios kept; an end that no positive finite ratio bounds is NaN
 * @param sampled true if the reference set was sampled
 * @param meanCount mean count per stint used
 */
public record CountRatio(
    BigInteger count, double ratio, Interval interval95, boolean sampled, double meanCount) {
  private static final double TAIL = 0.025;

  /**
   * @param set the admissible orders of two setups
   * @param order the order ridden
   * @param values counts per stint, not negative; NaN where none
   * @param valid true where the stint counts
   * @param sampling what to do with very large sets
   * @throws StatsException if a count is negative, or a setup has no count
   */
  public static CountRatio of(
      Assignments set, int[] order, double[] values, boolean[] valid, Sampling sampling) {
    DayCheck.twoSetups(set);
    DayCheck.order(set, order);
    boolean[] use = DayCheck.used(set, "values", values, valid);
    double[] sum = new double[2];
    double[][] y = new double[2][values.length];
    int[] laps = new int[2];
    for (int i = 0; i < values.length; i++) {
      if (use[i]) {
        if (values[i] < 0) {
          throw new Unusable(
              "values[" + i + "]",
              "must not be negative: it is a count.",
              DayFault.NEGATIVE_COUNT,
              values[i]);
        }
        sum[order[i]] += values[i];
        y[order[i]][i] = values[i];
        laps[order[i]]++;
      }
    }
    for (int setup = 0; setup < 2; setup++) {
      if (laps[setup] == 0) {
        throw new Unusable(
            "values",
            "hold no count on setup " + Orders.letter(setup) + ".",
            DayFault.NO_COUNT_ON_SETUP,
            Orders.letter(setup));
      }
    }
    sampling.check(set);
    double ratio = sum[1] / laps[1] / (sum[0] / laps[0]);
    Turns turns = turns(set, order, y, use, sampling);
    return new CountRatio(
        set.count(),
        ratio,
        turns.interval(ratio),
        sampling.samples(set),
        (sum[0] + sum[1]) / (laps[0] + laps[1]));
  }

  private static Turns turns(
      Assignments set, int[] order, double[][] y, boolean[] use, Sampling sampling) {
    Residuals residuals = new Residuals(use, Drift.NONE);
    double[] wa = residuals.apply(y[0]);
    double[] wb = residuals.apply(y[1]);
    double[] z = SetupFit.signs(order);
    double c = Residuals.dot(z, residuals.apply(z));
    Turns turns =
        new Turns(
            Residuals.dot(z, wa) / Math.sqrt(c),
            Residuals.dot(z, wb) / Math.sqrt(c),
            Math.sqrt(Residuals.dot(wa, wa)),
            Math.sqrt(Residuals.dot(wb, wb)),
            sampling.samples(set) ? 2 * (sampling.draws() + 1) : set.count().intValueExact());
    CurveWalk walk = new CurveWalk(set, residuals, wa, wb, turns);
    if (sampling.samples(set)) {
      turns.orderAndMirror(Residuals.dot(z, wa), Residuals.dot(z, wb), c);
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.run();
    }
    return turns;
  }

  /** Collects where orders change sides: plus counts while f(u) = p + q·u ≥ 0, minus while ≤ 0. */
  private static final class Turns implements PairSums {
    private static final double TIE = 1e-9;

    private final double observedA;
    private final double observedB;
    private final double tieA;
    private final double tieB;
    private final double[] falling;
    private final double[] rising;
    private int falls;
    private int rises;
    private long plus;
    private long minus;
    private long total;

    Turns(double observedA, double observedB, double sizeA, double sizeB, int capacity) {
      this.observedA = observedA;
      this.observedB = observedB;
      this.tieA = TIE * sizeA;
      this.tieB = TIE * sizeB;
      this.falling = new double[capacity];
      this.rising = new double[capacity];
    }

    @Override
    public void orderAndMirror(double a, double b, double c) {
      double root = c > TIE ? 1 / Math.sqrt(c) : 0;
      add(a * root - observedA, b * root - observedB);
      add(-a * root - observedA, -b * root - observedB);
    }

    private void add(double p, double q) {
      total++;
      double atZero = Math.abs(p) <= tieA ? 0 : p;
      double slope = Math.abs(q) <= tieB ? 0 : q;
      if (slope < 0 && atZero > 0) {
        falling[falls++] = -atZero / slope;
      } else if (slope > 0 && atZero < 0) {
        rising[rises++] = -atZero / slope;
      } else {
        plus += atZero + slope >= 0 ? 1 : 0;
        minus += atZero + slope <= 0 ? 1 : 0;
      }
    }

    /** The ratios around the crude one that are kept. */
    Interval interval(double ratio) {
      double[] down = Arrays.copyOf(falling, falls);
      double[] up = Arrays.copyOf(rising, rises);
      Arrays.sort(down);
      Arrays.sort(up);
      double[] all = new double[falls + rises];
      System.arraycopy(down, 0, all, 0, falls);
      System.arraycopy(up, 0, all, falls, rises);
      Arrays.sort(all);
      if (all.length == 0 && !kept(1, down, up)) {
        // One setup counted nothing, so that no factor changes anything, and the test rejects.
        return ratio == 0
            ? new Interval(Double.NaN, 0)
            : new Interval(Double.POSITIVE_INFINITY, Double.NaN);
      }
      double start = Double.isNaN(ratio) ? 1 : 1 / ratio;
      int above = first(all, start, false);
      return new Interval(1 / outwards(all, above, down, up), 1 / inwards(all, start, down, up));
    }

    /** Largest u that is kept, NaN if none bounds them. */
    private double outwards(double[] all, int from, double[] down, double[] up) {
      for (int i = from; i < all.length; i++) {
        double beyond = i + 1 < all.length ? (all[i] + all[i + 1]) / 2 : 2 * all[i];
        if (!kept(beyond, down, up)) {
          return all[i];
        }
      }
      return Double.NaN;
    }

    /** Smallest u that is kept, NaN if none bounds them. */
    private double inwards(double[] all, double start, double[] down, double[] up) {
      for (int i = first(all, start, true) - 1; i >= 0; i--) {
        double beyond = i > 0 ? (all[i] + all[i - 1]) / 2 : all[i] / 2;
        if (!kept(beyond, down, up)) {
          return all[i];
        }
      }
      return Double.NaN;
    }

    private boolean kept(double u, double[] down, double[] up) {
      long above = plus + down.length - first(down, u, false) + first(up, u, true);
      long below = minus + first(down, u, true) + up.length - first(up, u, false);
      return Math.min(above, below) > (long) Math.floor(TAIL * total + TIE);
    }

    /** Index of the first element above u, or from u on. */
    private static int first(double[] sorted, double u, boolean above) {
      int low = 0;
      int high = sorted.length;
      while (low < high) {
        int middle = (low + high) >>> 1;
        if (sorted[middle] < u || (above && sorted[middle] == u)) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      return low;
    }
  }
}
