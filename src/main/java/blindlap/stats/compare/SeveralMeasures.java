package blindlap.stats.compare;

import blindlap.fault.StatsException;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Sampling;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
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
   * @param nuisance what is removed
   */
  public record Series(String name, double[] values, Nuisance nuisance) {
    public Series {
      values = values.clone();
    }

    public Series(String name, double[] values, Drift drift) {
      this(name, values, Nuisance.of(drift));
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
    List<MeasureColumn> columns = new ArrayList<>();
    boolean together = true;
    for (int m = 0; m < measures.size(); m++) {
      MeasureColumn column =
          new MeasureColumn(
              set,
              order,
              measures.get(m).values,
              measures.get(m).nuisance,
              valid,
              "measures[" + m + "].values");
      together &= columns.isEmpty() || Arrays.equals(columns.get(0).use, column.use);
      columns.add(column);
    }
    if (together) {
      MeasuresTally tally = new MeasuresTally(columns);
      walk(set, order, columns, tally, sampling);
      return new SeveralMeasures(set, Method.STEP_DOWN_MAXIMUM, tally.result(), sampling);
    }
    double[] p = new double[columns.size()];
    for (int m = 0; m < p.length; m++) {
      MeasuresTally tally = new MeasuresTally(List.of(columns.get(m)));
      walk(set, order, List.of(columns.get(m)), tally, sampling);
      p[m] = tally.result()[0][0];
    }
    double[][] found = {p, PValueAdjustment.HOLM.adjust(p), new double[0]};
    return new SeveralMeasures(set, Method.HOLM, found, sampling);
  }

  private static void walk(
      Assignments set,
      int[] order,
      List<MeasureColumn> columns,
      MeasuresTally tally,
      Sampling sampling) {
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
}
