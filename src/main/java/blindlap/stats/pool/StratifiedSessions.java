package blindlap.stats.pool;

import blindlap.fault.StatsException;
import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.KnotSink;
import blindlap.stats.compare.Verdict;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Two setups compared over several sessions of one rider, "on these days"
 * (docs/method.md#these-days): the orders of the days were drawn independently, so the reference
 * set is the product of their sets. Each day enters with W/s₀², s₀² = y'Wy/(N − q) being free of
 * the order, and the curve is that of docs/method.md#confidence-curve with the sums of the days
 * added up.
 *
 * <p>The hypothesis is sharp: every stint of every day would have differed by the same shift. It
 * says nothing of other days or other riders. Immutable; made by {@link #compare}.
 */
public final class StratifiedSessions {
  private final BigInteger count;
  private final double estimate;
  private final List<Double> weights;
  private final int used;
  private final boolean sampled;
  private final Sampling sampling;
  private final ConfidenceCurve curve;

  private StratifiedSessions(
      BigInteger count,
      double estimate,
      List<Double> weights,
      int used,
      boolean sampled,
      Sampling sampling,
      ConfidenceCurve curve) {
    this.count = count;
    this.estimate = estimate;
    this.weights = List.copyOf(weights);
    this.used = used;
    this.sampled = sampled;
    this.sampling = sampling;
    this.curve = curve;
  }

  /**
   * Compares B with A over all sessions.
   *
   * @param sessions at least one
   * @param sampling the product is walked whole up to its limit, else sampled
   * @throws StatsException if there is no session, or one cannot be compared; the argument says
   *     which ("sessions[2].order")
   */
  public static StratifiedSessions compare(List<PooledSession> sessions, Sampling sampling) {
    if (sessions.isEmpty()) {
      throw new StatsException("sessions", "is empty, but at least 1 session is needed.");
    }
    List<SessionSums> days = new ArrayList<>();
    BigInteger count = BigInteger.ONE;
    for (int i = 0; i < sessions.size(); i++) {
      days.add(sums(sessions.get(i), "sessions[" + i + "]"));
      count = count.multiply(sessions.get(i).set().count());
    }
    double c = 0;
    double zy = 0;
    int used = 0;
    for (SessionSums day : days) {
      c += day.information();
      zy += day.information() * day.ownEstimate();
      used += day.used();
    }
    double estimate = zy / c;
    double squares = 0;
    for (SessionSums day : days) {
      squares += day.residualSquares(estimate);
    }
    boolean samples = count.compareTo(BigInteger.valueOf(sampling.wholeUpTo())) > 0;
    if (samples && sampling.exactRequired()) {
      throw new StatsException(
          "exact",
          "is required, but the sessions have %s orders together and at most %d are walked whole."
              .formatted(count, sampling.wholeUpTo()));
    }
    double scale = Math.sqrt(squares / used) / Math.sqrt(c);
    int capacity = samples ? 2 * (sampling.draws() + 1) : count.intValueExact();
    KnotSink sink = new KnotSink(capacity, estimate, c, scale);
    days.forEach(day -> day.settle(estimate));
    if (samples) {
      sink.observedAndMirror();
      sample(days, sampling, sink);
    } else {
      walk(days, sink);
    }
    List<Double> weights = new ArrayList<>();
    for (SessionSums day : days) {
      weights.add(day.information() / c);
    }
    return new StratifiedSessions(
        count, estimate, weights, used, samples, sampling, sink.curve(scale));
  }

  /**
   * Estimated difference B minus A of one session.
   *
   * @throws StatsException if it cannot be compared or did not vary
   */
  public static double estimate(PooledSession session) {
    return SessionSums.of(session).ownEstimate();
  }

  private static SessionSums sums(PooledSession session, String name) {
    try {
      return SessionSums.of(session);
    } catch (StatsException e) {
      throw e.named(name + "." + e.argument());
    }
  }

  /** All combinations of orders; the first day's mirror images come with the joint mirror image. */
  private static void walk(List<SessionSums> days, KnotSink sink) {
    double[][] all = new double[days.size()][];
    for (int i = 0; i < all.length; i++) {
      all[i] = days.get(i).list(i == 0);
    }
    combine(all, 0, 0, 0, 0, sink);
  }

  private static void combine(
      double[][] all, int day, double a, double b, double c, KnotSink sink) {
    if (day == all.length) {
      sink.orderAndMirror(a, b, c);
      return;
    }
    double[] sums = all[day];
    for (int i = 0; i < sums.length; i += 3) {
      combine(all, day + 1, a + sums[i], b + sums[i + 1], c + sums[i + 2], sink);
    }
  }

  private static void sample(List<SessionSums> days, Sampling sampling, KnotSink sink) {
    UniformRandomProvider source = sampling.source();
    double[] sums = new double[3];
    for (int draw = 0; draw < sampling.draws(); draw++) {
      sums[0] = 0;
      sums[1] = 0;
      sums[2] = 0;
      for (SessionSums day : days) {
        day.addRandom(source, sums);
      }
      sink.orderAndMirror(sums[0], sums[1], sums[2]);
    }
  }

  /** Number of combinations of orders, whether walked or sampled. */
  public BigInteger count() {
    return count;
  }

  /** Estimated difference B minus A: mean of the days by information over noise. */
  public double estimate() {
    return estimate;
  }

  /** Share of each session in the estimate; they add up to 1. */
  public List<Double> weights() {
    return weights;
  }

  /** Number of stints used, all sessions together. */
  public int used() {
    return used;
  }

  /** True if the reference set was sampled. */
  public boolean sampled() {
    return sampled;
  }

  /** How the reference set was made. */
  public Sampling sampling() {
    return sampling;
  }

  /** Monte-Carlo standard error of a p-value; 0 where the set was walked whole. */
  public double pError(double p) {
    return sampled ? Math.sqrt(p * (1 - p) / sampling.draws()) : 0;
  }

  /** The confidence curve of the difference on these days. */
  public ConfidenceCurve curve() {
    return curve;
  }

  /** The verdict for shifts −D and +D, for these days. */
  public Verdict verdict(double worthwhileLow, double worthwhileHigh) {
    return Verdict.of(curve, worthwhileLow, worthwhileHigh);
  }
}
