package blindlap.stats.compare;

import blindlap.fault.DayFault;
import blindlap.fault.StatsException;
import blindlap.fault.Unusable;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Several measures of one two-setup day, adjusted for their number by the step-down maximum over
 * the same orders (docs/method.md#several-measures; Westfall and Young 1993). The statistic is R =
 * (z'Wy)²/(z'Wz·y'Wy), which has no unit and rises with |t|. If the measures are not known on the
 * same stints the orders do not act on them jointly, and Holm's adjustment is used instead (Holm
 * 1979, Scand. J. Statist. 6:65).
 */
public final class SeveralMeasures {
  /**
   * One measure.
   *
   * @param name what to call it in a refusal
   * @param values one per stint; NaN where none
   * @param drift what is removed
   */
  public record Series(String name, double[] values, Drift drift) {
    public Series {
      values = values.clone();
    }

    @Override
    public double[] values() {
      return values.clone();
    }
  }

  /** How p-values were adjusted. */
  public enum Method {
    STEP_DOWN_MAXIMUM,
    HOLM
  }

  private final BigInteger count;
  private final Method method;
  private final double[] p;
  private final double[] adjusted;
  private final double[] singleStep;
  private final boolean sampled;
  private final Sampling sampling;

  private SeveralMeasures(Assignments set, Method method, double[][] found, Sampling sampling) {
    this.count = set.count();
    this.method = method;
    this.p = found[0];
    this.adjusted = found[1];
    this.singleStep = found[2];
    this.sampled = sampling.samples(set);
    this.sampling = sampling;
  }

  /**
   * Compares B with A on every measure.
   *
   * @param set the admissible orders of two setups
   * @param order the order ridden
   * @param measures at least one
   * @param valid true where the stint counts
   * @param sampling what to do with very large sets
   * @throws StatsException if values do not fit or do not tell the setups apart
   */
  public static SeveralMeasures compare(
      Assignments set, int[] order, List<Series> measures, boolean[] valid, Sampling sampling) {
    DayCheck.twoSetups(set);
    DayCheck.order(set, order);
    if (measures.isEmpty()) {
      throw new StatsException("measures", "is empty, but at least 1 is needed.");
    }
    sampling.check(set);
    List<Column> columns = new ArrayList<>();
    boolean together = true;
    for (int m = 0; m < measures.size(); m++) {
      Column column = new Column(set, order, measures.get(m), valid, "measures[" + m + "].values");
      together &= columns.isEmpty() || Arrays.equals(columns.get(0).use, column.use);
      columns.add(column);
    }
    if (together) {
      Tally tally = new Tally(columns);
      walk(set, order, columns, tally, sampling);
      return new SeveralMeasures(set, Method.STEP_DOWN_MAXIMUM, tally.result(), sampling);
    }
    double[] p = new double[columns.size()];
    for (int m = 0; m < p.length; m++) {
      Tally tally = new Tally(List.of(columns.get(m)));
      walk(set, order, List.of(columns.get(m)), tally, sampling);
      p[m] = tally.result()[0][0];
    }
    double[][] found = {p, PValueAdjustment.HOLM.adjust(p), new double[0]};
    return new SeveralMeasures(set, Method.HOLM, found, sampling);
  }

  private static void walk(
      Assignments set, int[] order, List<Column> columns, Tally tally, Sampling sampling) {
    MeasuresWalk walk = new MeasuresWalk(set, columns, tally);
    if (sampling.samples(set)) {
      walk.visit(order);
      walk.sample(sampling.draws(), sampling.source());
    } else {
      walk.run();
    }
  }

  /** Number of admissible orders, whether walked or sampled. */
  public BigInteger count() {
    return count;
  }

  public Method method() {
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

  /** Adjusted in a single step; empty where {@link #method()} is Holm's. */
  public Optional<double[]> pSingleStep() {
    return method == Method.HOLM ? Optional.empty() : Optional.of(singleStep.clone());
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

  /** A measure as the walk needs it. */
  static final class Column {
    final boolean[] use;
    final Residuals residuals;
    final double[] residual;
    final double variation;
    final double observed;

    Column(Assignments set, int[] order, Series series, boolean[] valid, String argument) {
      use = DayCheck.used(set, argument, series.values, valid);
      residuals = new Residuals(use, series.drift);
      int used = DayCheck.count(use);
      if (used - residuals.columns() - 1 < 1) {
        throw DayCheck.tooFew(argument, used, 2, series.drift);
      }
      residual = residuals.apply(DayCheck.centred(series.values, use));
      double squares = Residuals.dot(residual, residual);
      variation = DayCheck.noVariation(squares, series.values, use) ? 0 : squares;
      double[] z = SetupFit.signs(order);
      double c = Residuals.dot(z, residuals.apply(z));
      if (c <= 1e-9 * used) {
        throw new Unusable(
            argument,
            "do not tell the setups apart: on the stints left one setup has no value.",
            DayFault.SETUPS_NOT_APART);
      }
      observed = share(Residuals.dot(z, residual), c);
    }

    /** R of an order; 0 where the measure does not vary or the order holds no information. */
    double share(double a, double c) {
      return variation == 0 || c <= 1e-9 ? 0 : a * a / (c * variation);
    }
  }

  /** Counts, over the orders, the measures at least as extreme and their maxima. */
  static final class Tally {
    private static final double SLACK = 1e-9;
    private static final double ROUNDING = 1e-15;

    private final List<Column> columns;
    private final Integer[] descending;
    private final double[] threshold;
    private final long[] own;
    private final long[] single;
    private final long[] step;
    private long orders;

    Tally(List<Column> columns) {
      this.columns = List.copyOf(columns);
      int m = columns.size();
      this.descending = new Integer[m];
      this.threshold = new double[m];
      for (int i = 0; i < m; i++) {
        descending[i] = i;
        threshold[i] = columns.get(i).observed * (1 - SLACK) - ROUNDING;
      }
      Arrays.sort(
          descending,
          Collections.reverseOrder(Comparator.comparingDouble(i -> columns.get(i).observed)));
      this.own = new long[m];
      this.single = new long[m];
      this.step = new long[m];
    }

    /** Takes R of every measure for one order. */
    void order(double[] r) {
      orders++;
      double largest = 0;
      for (int rank = descending.length - 1; rank >= 0; rank--) {
        int measure = descending[rank];
        largest = Math.max(largest, r[measure]);
        own[measure] += r[measure] >= threshold[measure] ? 1 : 0;
        step[measure] += largest >= threshold[measure] ? 1 : 0;
      }
      for (int measure = 0; measure < single.length; measure++) {
        single[measure] += largest >= threshold[measure] ? 1 : 0;
      }
    }

    /** p, step-down, single-step. */
    double[][] result() {
      int m = columns.size();
      double[][] result = new double[3][m];
      double before = 0;
      for (int measure : descending) {
        before = Math.max(before, (double) step[measure] / orders);
        result[0][measure] = (double) own[measure] / orders;
        result[1][measure] = before;
        result[2][measure] = (double) single[measure] / orders;
      }
      return result;
    }
  }
}
