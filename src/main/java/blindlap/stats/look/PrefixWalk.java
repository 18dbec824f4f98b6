package blindlap.stats.look;

import blindlap.stats.compare.CurveWalk;
import blindlap.stats.compare.PairSums;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.SetupFit;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.util.Arrays;

/**
 * How far apart the stints up to a look would lie under every order that could have been drawn:
 * |z'Wy|/√(z'Wz), which rises with |t|. An order and its mirror image give the same, so that a
 * place stands for both; the places are the same at every look of a day.
 */
final class PrefixWalk implements PairSums {
  private static final double SAME = 1e-9;

  private final double noInformation;
  private double[] found;
  private int size;

  private PrefixWalk(int capacity, double noInformation) {
    this.found = new double[capacity];
    this.noInformation = noInformation;
  }

  @Override
  public void orderAndMirror(double a, double b, double c) {
    found[size++] = c > noInformation ? Math.abs(b) / Math.sqrt(c) : 0;
  }

  /** How many places there are: half the orders, or the draws with the ridden one. */
  static int places(Assignments set, Sampling sampling) {
    return sampling.samples(set) ? sampling.draws() + 1 : set.count().intValueExact() / 2;
  }

  /**
   * The statistic of every place; where the set is sampled, the ridden order's comes first.
   *
   * @param use true where a stint up to the look has a value
   */
  static double[] statistics(
      Assignments set,
      int[] order,
      double[] values,
      boolean[] use,
      Drift drift,
      Sampling sampling) {
    Residuals residuals = new Residuals(use, drift);
    int used = DayCheck.count(use);
    PrefixWalk sink = new PrefixWalk(places(set, sampling), SAME * Math.max(1, used) / 4);
    if (used <= residuals.columns()) {
      return sink.found;
    }
    double[] wy = residuals.apply(scaled(DayCheck.centred(values, use)));
    run(set, order, residuals, wy, wy, sampling, sink);
    return sink.found;
  }

  private static void run(
      Assignments set,
      int[] order,
      Residuals residuals,
      double[] x,
      double[] y,
      Sampling sampling,
      PairSums sink) {
    CurveWalk walk = new CurveWalk(set, residuals, x, y, sink);
    if (sampling.samples(set)) {
      double[] z = SetupFit.signs(order);
      double[] wz = residuals.apply(z);
      sink.orderAndMirror(Residuals.dot(z, x), Residuals.dot(z, y), Residuals.dot(wz, wz));
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.run();
    }
  }

  /** The place of an order. */
  static int place(Assignments set, int[] order, Sampling sampling) {
    if (sampling.samples(set)) {
      return 0;
    }
    int n = order.length;
    double[] low = new double[n];
    double[] high = new double[n];
    for (int i = 0; i < n; i++) {
      // A number that no other order has, in two halves that doubles hold whole.
      low[i] = i < n / 2 ? Math.scalb(1.0, i) : 0;
      high[i] = i < n / 2 ? 0 : Math.scalb(1.0, i - n / 2);
    }
    double[] z = SetupFit.signs(order);
    double a = Residuals.dot(z, low);
    double b = Residuals.dot(z, high);
    boolean[] all = new boolean[n];
    Arrays.fill(all, true);
    int[] at = {0, -1};
    PairSums finder =
        (x, y, c) -> {
          boolean same = x == a && y == b || x == -a && y == -b;
          at[1] = same ? at[0] : at[1];
          at[0]++;
        };
    new CurveWalk(set, new Residuals(all, Drift.NONE), low, high, finder).run();
    return at[1];
  }

  private static double[] scaled(double[] y) {
    double largest = 0;
    for (double each : y) {
      largest = Math.max(largest, Math.abs(each));
    }
    if (largest > 0) {
      for (int i = 0; i < y.length; i++) {
        y[i] /= largest;
      }
    }
    return y;
  }
}
