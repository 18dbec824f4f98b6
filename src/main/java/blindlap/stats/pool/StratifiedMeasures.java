package blindlap.stats.pool;

import blindlap.fault.StatsException;
import blindlap.stats.compare.PValueAdjustment;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Several measures of two setups over several sessions of one rider, adjusted for their number by
 * the step-down maximum over the product of the sessions' orders
 * (docs/method.md#measures-of-a-series; Westfall and Young 1993). The statistic of a measure is
 * (Σa)²/Σc with a = z'Wy/s₀² and c = z'Wz/s₀² of each session. Where measures of a session are not
 * known on the same stints Holm's adjustment is used instead.
 */
public final class StratifiedMeasures {
  private final BigInteger count;
  private final SeveralMeasures.Method method;
  private final double[] p;
  private final double[] adjusted;
  private final boolean sampled;

  private StratifiedMeasures(
      BigInteger count,
      SeveralMeasures.Method method,
      double[] p,
      double[] adjusted,
      boolean sampled) {
    this.count = count;
    this.method = method;
    this.p = p;
    this.adjusted = adjusted;
    this.sampled = sampled;
  }

  /**
   * Compares B with A on every measure.
   *
   * @param measures for each measure its sessions, in one order of sessions for all; empty where a
   *     session has nothing to say of a measure. The sessions of one place have the same orders and
   *     the same order ridden
   * @param sampling the product is walked whole up to its limit, else sampled
   * @throws StatsException if there is no measure, one has no session, or one cannot be compared
   */
  public static StratifiedMeasures compare(
      List<List<Optional<PooledSession>>> measures, Sampling sampling) {
    if (measures.isEmpty() || measures.get(0).isEmpty()) {
      throw new StatsException("measures", "is empty, but at least 1 is needed.");
    }
    List<MeasuresOfDay> days = days(measures);
    BigInteger count = BigInteger.ONE;
    for (MeasuresOfDay day : days) {
      count = count.multiply(day.set().count());
    }
    boolean samples = count.compareTo(BigInteger.valueOf(sampling.wholeUpTo())) > 0;
    boolean together = days.stream().allMatch(MeasuresOfDay::sameStints);
    if (together) {
      StratifiedTally tally = tally(days, measures.size());
      fill(days, tally, samples, sampling);
      return new StratifiedMeasures(
          count, SeveralMeasures.Method.STEP_DOWN_MAXIMUM, tally.own(), tally.stepDown(), samples);
    }
    double[] p = new double[measures.size()];
    for (int m = 0; m < p.length; m++) {
      List<MeasuresOfDay> alone = days(List.of(measures.get(m)));
      StratifiedTally tally = tally(alone, 1);
      fill(alone, tally, samples, sampling);
      p[m] = tally.own()[0];
    }
    return new StratifiedMeasures(
        count, SeveralMeasures.Method.HOLM, p, PValueAdjustment.HOLM.adjust(p), samples);
  }

  private static List<MeasuresOfDay> days(List<List<Optional<PooledSession>>> measures) {
    List<MeasuresOfDay> days = new ArrayList<>();
    int sessions = measures.get(0).size();
    for (List<Optional<PooledSession>> each : measures) {
      if (each.size() != sessions) {
        throw new StatsException("measures", "must have one entry per session each.");
      }
      if (each.stream().noneMatch(Optional::isPresent)) {
        throw new StatsException("measures", "must each have a session that can be compared.");
      }
    }
    for (int s = 0; s < sessions; s++) {
      int at = s;
      List<Optional<PooledSession>> here = measures.stream().map(each -> each.get(at)).toList();
      if (here.stream().anyMatch(Optional::isPresent)) {
        days.add(MeasuresOfDay.of(here));
      }
    }
    return days;
  }

  private static StratifiedTally tally(List<MeasuresOfDay> days, int measures) {
    double[] sums = new double[2 * measures];
    days.forEach(day -> day.addObserved(sums));
    return new StratifiedTally(sums);
  }

  private static void fill(
      List<MeasuresOfDay> days, StratifiedTally tally, boolean samples, Sampling sampling) {
    if (samples) {
      sample(days, tally, sampling);
    } else {
      double[][] lists = new double[days.size()][];
      for (int i = 0; i < lists.length; i++) {
        // A joint mirror image has the same statistics, so half of the first day stands for all.
        lists[i] = days.get(i).list(i == 0);
      }
      double[][] sums = new double[days.size() + 1][tally.width()];
      combine(lists, 0, sums, tally);
    }
  }

  private static void combine(double[][] lists, int day, double[][] sums, StratifiedTally tally) {
    if (day == lists.length) {
      tally.order(sums[day]);
      return;
    }
    double[] before = sums[day];
    double[] after = sums[day + 1];
    double[] list = lists[day];
    for (int from = 0; from < list.length; from += before.length) {
      for (int i = 0; i < before.length; i++) {
        after[i] = before[i] + list[from + i];
      }
      combine(lists, day + 1, sums, tally);
    }
  }

  private static void sample(List<MeasuresOfDay> days, StratifiedTally tally, Sampling sampling) {
    UniformRandomProvider source = sampling.source();
    double[] sums = new double[tally.width()];
    days.forEach(day -> day.addObserved(sums));
    tally.order(sums);
    for (int draw = 0; draw < sampling.draws(); draw++) {
      Arrays.fill(sums, 0);
      for (MeasuresOfDay day : days) {
        day.addRandom(source, sums);
      }
      tally.order(sums);
    }
  }

  /** Number of combinations of orders, whether walked or sampled. */
  public BigInteger count() {
    return count;
  }

  /** How p-values were adjusted. */
  public SeveralMeasures.Method method() {
    return method;
  }

  /** Two-sided p of every measure on its own. */
  public double[] p() {
    return p.clone();
  }

  /** Adjusted by {@link #method()}. */
  public double[] pAdjusted() {
    return adjusted.clone();
  }

  /** True if the product was sampled. */
  public boolean sampled() {
    return sampled;
  }
}
