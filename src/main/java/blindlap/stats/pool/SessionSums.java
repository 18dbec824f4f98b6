package blindlap.stats.pool;

import blindlap.fault.DayFault;
import blindlap.fault.Unusable;
import blindlap.stats.compare.CurveWalk;
import blindlap.stats.compare.PairSums;
import blindlap.stats.compare.Residuals;
import blindlap.stats.compare.SetupFit;
import blindlap.stats.order.DayCheck;
import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/** The sums of one session's orders, each over the session's own noise variance s₀². */
final class SessionSums {
  private final PooledSession session;
  private final Residuals residuals;
  private final SetupFit fit;
  private final double variance;

  /** W(y − estimate·z)/s₀² and W·z/s₀² once the common estimate is known. */
  private double[] e = new double[0];

  private double[] wz = new double[0];
  private final int[] drawn;

  private SessionSums(PooledSession session, Residuals residuals, SetupFit fit, double variance) {
    this.session = session;
    this.residuals = residuals;
    this.fit = fit;
    this.variance = variance;
    this.drawn = new int[session.set().stints()];
  }

  static SessionSums of(PooledSession session) {
    DayCheck.twoSetups(session.set());
    DayCheck.order(session.set(), session.order());
    boolean[] use = session.used();
    Residuals residuals = Residuals.required(use, session.nuisance());
    SetupFit fit = new SetupFit(session.order(), session.values(), use, residuals);
    double[] wy = residuals.apply(DayCheck.centred(session.values(), use));
    double squares = Residuals.dot(wy, wy);
    if (DayCheck.noVariation(squares, session.values(), use)) {
      throw new Unusable(
          "values",
          "do not vary, so that the session has no noise to weigh by.",
          DayFault.NO_VARIATION);
    }
    return new SessionSums(session, residuals, fit, squares / (fit.used - residuals.columns()));
  }

  /** z'Wz/s₀² of the ridden order. */
  double information() {
    return fit.c / variance;
  }

  double ownEstimate() {
    return fit.estimate;
  }

  int used() {
    return fit.used;
  }

  /** Squared residuals over s₀² at a common estimate. */
  double residualSquares(double estimate) {
    double shift = fit.estimate - estimate;
    return (Residuals.dot(fit.e, fit.e) + shift * shift * fit.c) / variance;
  }

  /** Fixes the common estimate. */
  void settle(double estimate) {
    e = new double[fit.e.length];
    wz = new double[e.length];
    for (int i = 0; i < e.length; i++) {
      wz[i] = fit.wz[i] / variance;
      e[i] = fit.e[i] / variance + (fit.estimate - estimate) * wz[i];
    }
  }

  /**
   * The sums a, b, c of every order, one triple after the other.
   *
   * @param half without the mirror images
   */
  double[] list(boolean half) {
    int orders = session.set().count().intValueExact();
    double[] sums = new double[3 * (half ? orders / 2 : orders)];
    int[] at = {0};
    PairSums collect =
        (a, b, c) -> {
          sums[at[0]++] = a;
          sums[at[0]++] = b;
          sums[at[0]++] = c / variance;
          if (!half) {
            sums[at[0]++] = -a;
            sums[at[0]++] = -b;
            sums[at[0]++] = c / variance;
          }
        };
    new CurveWalk(session.set(), residuals, e, wz, collect).run();
    return at[0] == sums.length ? sums : Arrays.copyOf(sums, at[0]);
  }

  /** Adds the sums of a random order. */
  void addRandom(UniformRandomProvider source, double[] sums) {
    session.set().random(source, drawn);
    sums[0] += a(drawn);
    for (int i = 0; i < drawn.length; i++) {
      sums[1] += (drawn[i] - 0.5) * wz[i];
    }
    sums[2] += c(drawn);
  }

  /** z'e/s₀² of an order. */
  double a(int[] order) {
    double a = 0;
    for (int i = 0; i < order.length; i++) {
      a += (order[i] - 0.5) * e[i];
    }
    return a;
  }

  /** z'Wz/s₀² of an order. */
  double c(int[] order) {
    double c = residuals.used() / 4.0;
    for (int q = 0; q < residuals.columns(); q++) {
      double along = 0;
      double[] column = residuals.column(q);
      for (int i = 0; i < order.length; i++) {
        along += (order[i] - 0.5) * column[i];
      }
      c -= along * along;
    }
    return c / variance;
  }
}
