package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.StudentizedRange;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Comparison of two or more setups by re-randomisation (docs/method.md#many-setups): one F for "do
 * they differ at all", and every pair with a p-value adjusted for the number of pairs by the
 * single-step maximum of |t| over the same orders (Westfall and Young 1993, Resampling-Based
 * Multiple Testing).
 *
 * <p>The adjusted p-values are exact if no setup differs from any other. If some do, that they hold
 * for the remaining pairs is known from simulation only.
 */
public final class ManySetups {
  /**
   * One pair of setups.
   *
   * @param first index of the first setup
   * @param second index of the second
   * @param estimate second less first, by least squares after drift
   * @param standardError of the estimate, on {@link ManySetups#df()}
   * @param t signed
   * @param p share of orders with at least this |t| of the pair
   * @param pAdjusted share of orders whose largest |t| of all pairs is at least this |t|
   */
  public record Pair(
      int first,
      int second,
      double estimate,
      double standardError,
      double t,
      double p,
      double pAdjusted) {
    /** Such as {@code A-B}. */
    public String name() {
      return Orders.letter(first) + "-" + Orders.letter(second);
    }
  }

  private static final double LEVEL = 0.95;

  private final BigInteger count;
  private final int setups;
  private final double reach95;
  private final double f;
  private final double p;
  private final List<Pair> pairs;
  private final double noiseSd;
  private final int df;
  private final boolean noVariation;
  private final boolean sampled;
  private final Sampling sampling;

  private ManySetups(
      Assignments set, Tally tally, boolean sampled, Sampling sampling, double[] raw) {
    this.count = set.count();
    this.setups = set.setups();
    this.f = tally.noVariation ? Double.NaN : tally.observedF;
    this.p = tally.p();
    this.noiseSd = raw[0];
    this.df = (int) raw[1];
    this.noVariation = tally.noVariation;
    this.reach95 = noVariation ? Double.NaN : reach(LEVEL);
    this.sampled = sampled;
    this.sampling = sampling;
    List<Pair> list = new ArrayList<>();
    for (int i = 0; i < tally.contrasts.pairs(); i++) {
      list.add(
          new Pair(
              tally.contrasts.first(i),
              tally.contrasts.second(i),
              tally.estimates[i],
              noiseSd * Math.sqrt(tally.unitVariances[i]),
              tally.noVariation ? Double.NaN : tally.signed[i],
              tally.pair(i),
              tally.adjusted(i)));
    }
    this.pairs = List.copyOf(list);
  }

  /**
   * Compares all setups of a set.
   *
   * @param set the admissible orders
   * @param order the order ridden
   * @param values one value per stint; NaN where none
   * @param valid true where the stint counts
   * @param nuisance what is removed; a stint on which a covariate is not known is masked
   * @param sampling what to do with very large sets
   * @throws StatsException if the values do not fit or do not tell the setups apart
   */
  public static ManySetups compare(
      Assignments set,
      int[] order,
      double[] values,
      boolean[] valid,
      Nuisance nuisance,
      Sampling sampling) {
    DayCheck.order(set, order);
    boolean[] use = nuisance.known(DayCheck.used(set, "values", values, valid));
    sampling.check(set);
    Residuals residuals = Residuals.required(use, nuisance);
    int used = DayCheck.count(use);
    int df = used - residuals.columns() - (set.setups() - 1);
    if (df < 1) {
      throw DayCheck.tooFew("values", used, set.setups(), nuisance);
    }
    double[] y = DayCheck.centred(values, use);
    double[] residual = residuals.apply(y);
    Tally tally = new Tally(set, Residuals.dot(residual, residual), df);
    tally.rounding = DayCheck.rounding(values, use);
    ManyWalk walk = new ManyWalk(set, residuals.matrix(), residual, tally);
    walk.visit(order);
    double rss = tally.total - tally.contrasts.explained();
    tally.observed(DayCheck.noVariation(Math.max(0, rss), values, use));
    boolean sampled = !tally.noVariation && sampling.samples(set);
    if (tally.noVariation) {
      tally.everyOrderTies();
    } else if (sampled) {
      walk.visit(order);
      walk.sample(sampling.draws(), sampling.source());
    } else {
      tally.weighted = true;
      walk.run();
    }
    double[] noise = {Math.sqrt(Math.max(0, rss) / df), df};
    return new ManySetups(set, tally, sampled, sampling, noise);
  }

  /** Number of admissible orders, whether walked or sampled. */
  public BigInteger count() {
    return count;
  }

  /** F of the setups after drift; NaN where {@link #noVariation()}. */
  public double f() {
    return f;
  }

  /** Share of orders with at least this F. */
  public double p() {
    return p;
  }

  /** All pairs in alphabetical order. */
  public List<Pair> pairs() {
    return pairs;
  }

  /**
   * Tukey's and Kramer's interval of a pair (Tukey 1953; Kramer 1956, Biometrics 12:307; cited from
   * memory): all pairs together hold their true differences with this probability if laps behave
   * normally; approximate, unlike the p beside it.
   *
   * @param level for example .95
   * @return empty where {@link #noVariation()}
   */
  public Optional<Interval> interval(Pair pair, double level) {
    if (noVariation) {
      return Optional.empty();
    }
    double reach = level == LEVEL ? reach95 : reach(level);
    return Optional.of(Interval.around(pair.estimate(), reach * pair.standardError()));
  }

  private double reach(double level) {
    return StudentizedRange.of(setups, df).quantile(level) / Math.sqrt(2);
  }

  /** Stint-to-stint standard deviation after drift and setups, with {@link #df()}. */
  public double noiseSd() {
    return noiseSd;
  }

  public int df() {
    return df;
  }

  /**
   * True if nothing varies once drift and setups are removed: no test is possible, every p is 1.
   */
  public boolean noVariation() {
    return noVariation;
  }

  /** True if the reference set was sampled. */
  public boolean sampled() {
    return sampled;
  }

  public Sampling sampling() {
    return sampling;
  }

  /** Monte-Carlo standard error of a p-value; 0 where the set was walked whole. */
  public double pError(double value) {
    return sampled ? Math.sqrt(value * (1 - value) / sampling.draws()) : 0;
  }

  /** Counts orders at least as extreme as the observed one; ties with relative slack count. */
  private static final class Tally implements ManyWalk.Visitor {
    private static final double SLACK = 1e-9;
    private static final double ROUNDING = 1e-12;

    private final SetupContrasts contrasts;
    private final boolean closed;
    private final int setups;
    private final double total;
    private final int df;
    private final double[] estimates;
    private final double[] unitVariances;
    private final double[] signed;
    private final double[] threshold;
    private final double[] t;
    private final long[] pairCounts;
    private final long[] largestCounts;
    private double rounding;
    private boolean noVariation;
    private boolean counting;
    private boolean weighted;
    private double observedF;
    private double fThreshold;
    private long orders;
    private long omnibus;

    Tally(Assignments set, double total, int df) {
      this.setups = set.setups();
      this.closed = set.closedUnderRenaming();
      this.contrasts = new SetupContrasts(setups);
      this.total = total;
      this.df = df;
      this.estimates = new double[contrasts.pairs()];
      this.unitVariances = new double[contrasts.pairs()];
      this.signed = new double[contrasts.pairs()];
      this.threshold = new double[contrasts.pairs()];
      this.t = new double[contrasts.pairs()];
      this.pairCounts = new long[contrasts.pairs()];
      this.largestCounts = new long[contrasts.pairs()];
    }

    /** Takes the order solved last as the observed one. */
    void observed(boolean none) {
      noVariation = none;
      if (contrasts.rank() < setups - 1) {
        throw new Unusable(
            "values",
            "do not tell the setups apart: on the stints left a setup has no value, or follows the"
                + " drift.",
            DayFault.SETUPS_NOT_APART);
      }
      observedF = statistics();
      double noise = Math.sqrt(Math.max(total - contrasts.explained(), total * 1e-15) / df);
      double loose = 2 * rounding / noise;
      double root = Math.sqrt(observedF) * (1 - loose) - loose;
      fThreshold =
          loose > SLACK ? root * Math.max(0, root) : observedF * (1 - SLACK) - ROUNDING * ROUNDING;
      for (int i = 0; i < t.length; i++) {
        estimates[i] = contrasts.difference(i);
        unitVariances[i] = contrasts.unitVariance(i);
        signed[i] = Math.copySign(t[i], estimates[i]);
        threshold[i] = loose > SLACK ? t[i] * (1 - loose) - loose : t[i] * (1 - SLACK) - ROUNDING;
      }
      counting = true;
    }

    void everyOrderTies() {
      orders = 1;
      omnibus = 1;
      Arrays.fill(pairCounts, closed ? t.length : 1);
      Arrays.fill(largestCounts, 1);
    }

    /** |t| of every pair into {@code t}; returns F. */
    private double statistics() {
      double left = Math.max(total - contrasts.explained(), total * 1e-15);
      double variance = left / df;
      for (int i = 0; i < t.length; i++) {
        t[i] = Math.abs(contrasts.difference(i)) / Math.sqrt(variance * contrasts.unitVariance(i));
      }
      return contrasts.explained() / (setups - 1) / variance;
    }

    @Override
    public void order(double[] sums, int at, int seen) {
      contrasts.solve(sums, at);
      if (!counting) {
        return;
      }
      long weight = weighted && closed ? renamings(seen) : 1;
      orders += weight;
      if (contrasts.rank() < setups - 1) {
        without(weight);
        return;
      }
      omnibus += statistics() >= fThreshold ? weight : 0;
      double largest = 0;
      for (double each : t) {
        largest = Math.max(largest, each);
      }
      for (int i = 0; i < t.length; i++) {
        largestCounts[i] += largest >= threshold[i] ? weight : 0;
        if (!closed) {
          pairCounts[i] += t[i] >= threshold[i] ? weight : 0;
          continue;
        }
        // Over the renamings of an order every pair takes the place of every other equally often.
        for (double each : t) {
          pairCounts[i] += each >= threshold[i] ? weight : 0;
        }
      }
    }

    /** An order that cannot tell the setups apart on the stints left: F and every t are 0. */
    private void without(long weight) {
      omnibus += fThreshold <= 0 ? weight : 0;
      for (int i = 0; i < t.length; i++) {
        long tie = threshold[i] <= 0 ? weight : 0;
        largestCounts[i] += tie;
        pairCounts[i] += closed ? t.length * tie : tie;
      }
    }

    private long renamings(int seen) {
      long product = 1;
      for (int i = 0; i < seen; i++) {
        product *= setups - i;
      }
      return product;
    }

    double p() {
      return (double) omnibus / orders;
    }

    double pair(int i) {
      return (double) pairCounts[i] / ((double) orders * (closed ? t.length : 1));
    }

    double adjusted(int i) {
      return (double) largestCounts[i] / orders;
    }
  }
}
