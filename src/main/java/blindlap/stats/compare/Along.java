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

/**
 * Where on the trail two setups differ (docs/method.md#along): every piece's difference and the
 * running sum of the differences, each with a band that holds all its pieces together with about 95
 * %, and every piece's p adjusted by the step-down maximum over the same orders.
 *
 * <p>The p-values are exact; the bands are approximate, and left out where the set has too few
 * orders for them. A stint on which any piece is missing is masked in all of them.
 */
public final class Along {
  /** Fewest orders of a set for bands, the eight-stint set excepted. */
  public static final int FEWEST_ORDERS = 200;

  private static final double LEVEL = 0.05;
  private static final int SHORT_DAY = 8;

  /** Orders of the eight-stint set of docs/method.md#which-orders. */
  private static final BigInteger SHORT_SET = BigInteger.valueOf(50);

  /**
   * Differences along the trail.
   *
   * @param estimates B less A, one per piece, in the unit of the values
   * @param halfWidths of the simultaneous band; NaN where there is none
   */
  public record Band(double[] estimates, double[] halfWidths) {}

  private final Assignments set;
  private final Band pieces;
  private final Band cumulative;
  private final double[] adjusted;
  private final boolean sampled;

  private Along(Assignments set, Band pieces, Band cumulative, double[] adjusted, boolean sampled) {
    this.set = set;
    this.pieces = pieces;
    this.cumulative = cumulative;
    this.adjusted = adjusted;
    this.sampled = sampled;
  }

  /**
   * Compares B with A on every piece.
   *
   * @param set the admissible orders of two setups
   * @param order the order ridden
   * @param values {@code [stint][piece]}; NaN where not known
   * @param valid true where the stint counts
   * @param drift what is removed
   * @param sampling what to do with very large sets
   * @throws StatsException if the values do not fit or do not tell the setups apart
   */
  public static Along compare(
      Assignments set,
      int[] order,
      double[][] values,
      boolean[] valid,
      Drift drift,
      Sampling sampling) {
    DayCheck.twoSetups(set);
    DayCheck.length(set, "pieces", values.length, "stints");
    int pieces = values[0].length;
    boolean[] use = whole(values, valid);
    List<SeveralMeasures.Series> series = new ArrayList<>();
    Residuals residuals = new Residuals(use, drift);
    List<SetupFit> fits = new ArrayList<>();
    for (int piece = 0; piece < pieces; piece++) {
      double[] column = column(values, use, piece);
      series.add(new SeveralMeasures.Series("piece " + (piece + 1), column, Nuisance.of(drift)));
      DayCheck.order(set, order);
      DayCheck.used(set, "pieces", column, valid);
      fits.add(new SetupFit(order, column, use, residuals));
    }
    SeveralMeasures tested = SeveralMeasures.compare(set, order, series, use, sampling);
    double[] limits = {Double.NaN, Double.NaN};
    if (banded(set)) {
      AlongWalk walk = new AlongWalk(set, residuals, fits);
      limits = walk.limits(order, LEVEL, sampling);
    }
    return new Along(
        set,
        band(fits, limits[0], false),
        band(fits, limits[1], true),
        tested.pAdjusted(),
        sampling.samples(set));
  }

  /** Whether bands of a set hold what they promise. */
  public static boolean banded(Assignments set) {
    return set.count().compareTo(BigInteger.valueOf(FEWEST_ORDERS)) >= 0
        || set.stints() == SHORT_DAY && set.count().equals(SHORT_SET);
  }

  private static boolean[] whole(double[][] values, boolean[] valid) {
    if (values[0].length == 0) {
      throw new StatsException("pieces[0]", "is empty, but at least 1 piece is needed.");
    }
    boolean[] use = new boolean[values.length];
    for (int i = 0; i < use.length; i++) {
      if (values[i].length != values[0].length) {
        throw new StatsException(
            "pieces[" + i + "]",
            "has "
                + values[i].length
                + " pieces, but the first stint has "
                + values[0].length
                + ".");
      }
      use[i] = i < valid.length && valid[i] && Arrays.stream(values[i]).noneMatch(Double::isNaN);
    }
    return use;
  }

  private static double[] column(double[][] values, boolean[] use, int piece) {
    double[] column = new double[values.length];
    for (int i = 0; i < column.length; i++) {
      column[i] = use[i] ? values[i][piece] : Double.NaN;
    }
    return column;
  }

  /** Of the pieces, or of their running sums: fits are linear, so that sums of fits fit sums. */
  private static Band band(List<SetupFit> fits, double limit, boolean running) {
    double[] estimates = new double[fits.size()];
    double[] halfWidths = new double[fits.size()];
    double[] residual = new double[fits.get(0).e.length];
    double sum = 0;
    boolean varies = false;
    for (int piece = 0; piece < estimates.length; piece++) {
      SetupFit fit = fits.get(piece);
      varies = running && varies || !fit.noVariation;
      sum = running ? sum + fit.estimate : fit.estimate;
      for (int i = 0; i < residual.length; i++) {
        residual[i] = running ? residual[i] + fit.e[i] : fit.e[i];
      }
      estimates[piece] = sum;
      halfWidths[piece] =
          varies
              ? limit * Math.sqrt(Residuals.dot(residual, residual) / fit.df / fit.c)
              : Double.NaN;
    }
    return new Band(estimates, halfWidths);
  }

  /** Number of admissible orders, whether walked or sampled. */
  public BigInteger count() {
    return set.count();
  }

  /** Piece by piece. */
  public Band pieces() {
    return pieces;
  }

  /** Running sums from the start of the trail. */
  public Band cumulative() {
    return cumulative;
  }

  /** Of every piece, adjusted for their number. */
  public double[] pAdjusted() {
    return adjusted.clone();
  }

  /** True if the reference set was sampled. */
  public boolean sampled() {
    return sampled;
  }
}
