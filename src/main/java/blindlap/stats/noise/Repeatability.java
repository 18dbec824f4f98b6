package blindlap.stats.noise;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.CentredSums;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.Quantiles;
import java.util.Arrays;
import org.apache.commons.numbers.core.DD;

/**
 * Repeatability of repeated measurements: the pooled standard deviation within groups.
 *
 * <p>Bland &amp; Altman (1999), Stat. Methods Med. Res. 8:135, section 2; ISO 5725-2. The
 * coefficient 1.96·√2·sd is the difference that two single measurements of the same thing exceed in
 * 5 % of cases; the interval rests on the χ² distribution, hence on normal values.
 */
public final class Repeatability {
  private static final double TAIL = 0.025;

  private final double sd;
  private final int df;
  private final double[] groupSd;

  private Repeatability(double sd, int df, double[] groupSd) {
    this.sd = sd;
    this.df = df;
    this.groupSd = groupSd;
  }

  /**
   * @param groups at least one group, each of at least two finite values
   * @throws StatsException if there is no group, one has a single value or a value is not finite
   */
  public static Repeatability ofGroups(double[][] groups) {
    if (groups.length == 0) {
      throw new StatsException("groups", "is empty, but at least 1 group is needed.");
    }
    DD within = DD.ZERO;
    int df = 0;
    double[] groupSd = new double[groups.length];
    for (int g = 0; g < groups.length; g++) {
      double[] y = Require.sample("groups[" + g + "]", groups[g], 2);
      DD squares = CentredSums.squares(y);
      groupSd[g] = squares.divide(y.length - 1).sqrt().doubleValue();
      within = within.add(squares);
      df += y.length - 1;
    }
    return new Repeatability(within.divide(df).sqrt().doubleValue(), df, groupSd);
  }

  /**
   * From standard deviations that are already known, pooled as √(Σ df·sd² / Σ df).
   *
   * @param sds standard deviations, not negative
   * @param dfs their degrees of freedom, at least 1 each
   * @throws StatsException if the lists differ in length, are empty or hold impossible values
   */
  public static Repeatability pooled(double[] sds, int[] dfs) {
    double[] each = Require.sample("sds", sds, 1);
    if (dfs.length != each.length) {
      throw new StatsException("dfs", "must have as many entries as \"sds\".");
    }
    double squares = 0;
    int df = 0;
    for (int i = 0; i < each.length; i++) {
      if (each[i] < 0) {
        throw new StatsException("sds[" + i + "]", "must not be negative.");
      }
      if (dfs[i] < 1) {
        throw new StatsException("dfs[" + i + "]", "must be at least 1.");
      }
      squares += dfs[i] * each[i] * each[i];
      df += dfs[i];
    }
    return new Repeatability(Math.sqrt(squares / df), df, each);
  }

  /** Pooled standard deviation, in the unit of the values. */
  public double sd() {
    return sd;
  }

  public int df() {
    return df;
  }

  /** 1.96·√2·sd. */
  public double coefficient() {
    return Quantiles.Z_975 * Math.sqrt(2) * sd;
  }

  /** 95 % interval [sd√(df/χ²_.975), sd√(df/χ²_.025)]; right if the values behave normally. */
  public Interval sdInterval95() {
    return new Interval(
        sd * Math.sqrt(df / Quantiles.chiSquared(1 - TAIL, df)),
        sd * Math.sqrt(df / Quantiles.chiSquared(TAIL, df)));
  }

  /** Standard deviation of each group. */
  public double[] groupSd() {
    return groupSd.clone();
  }

  @Override
  public String toString() {
    return "Repeatability[sd=%s, df=%d, groupSd=%s]".formatted(sd, df, Arrays.toString(groupSd));
  }
}
