package blindlap.stats.tell;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import java.util.Arrays;
import org.apache.commons.math3.analysis.differentiation.DerivativeStructure;

/**
 * Blinding indices from a table of guesses: Bang's index per setup and James's index over all.
 *
 * <p>Bang, Ni &amp; Davis (2004), Control. Clin. Trials 25:143; James, Bloch, Lee, Kraemer &amp;
 * Fuller (1996), Stat. Med. 15:1421 (cited from memory). Bang: mean weight of the answers, 1 = all
 * right, 0 = balanced, −1 = all wrong. James: 0 = all right, ½ = guessing, 1 = all don't know. The
 * standard errors are those of multinomial counts; they are wrong for the guesses of a single
 * rider, which depend on each other.
 */
public final class GuessIndex {
  private static final double[] THREE_ANSWERS = {1, -1, 0};

  private final double[] bang;
  private final double[] bangSe;
  private final double james;
  private final double jamesSe;

  private GuessIndex(double[] bang, double[] bangSe, double james, double jamesSe) {
    this.bang = bang;
    this.bangSe = bangSe;
    this.james = james;
    this.jamesSe = jamesSe;
  }

  /**
   * The three-answer form.
   *
   * @param table rows = fitted A, fitted B; columns = guessed A, guessed B, don't know; whole
   *     counts
   * @throws StatsException if the table has another shape, a row is empty or a count is impossible
   */
  public static GuessIndex of(double[][] table) {
    return of(table, THREE_ANSWERS);
  }

  /**
   * Any answer form.
   *
   * @param weights one per column: 1 = guessed A for certain, −1 = guessed B for certain
   * @throws StatsException if shapes differ, a weight lies outside −1 to 1, a row is empty or a
   *     count is negative or not whole
   */
  public static GuessIndex of(double[][] table, double[] weights) {
    double[][] counts = Require.table("table", table, 2, 2);
    double[] w = Require.sample("weights", weights, 2);
    if (counts.length != 2) {
      throw new StatsException("table", "must have 2 rows, but has " + counts.length + ".");
    }
    if (counts[0].length != w.length) {
      throw new StatsException(
          "table",
          "has %d columns, but there are %d weights.".formatted(counts[0].length, w.length));
    }
    for (int j = 0; j < w.length; j++) {
      if (Math.abs(w[j]) > 1) {
        throw new StatsException("weights[" + j + "]", "must lie between -1 and 1.");
      }
    }
    double[] bang = new double[2];
    double[] se = new double[2];
    for (int row = 0; row < 2; row++) {
      double n = rowTotal(counts[row], row);
      double sign = row == 0 ? 1 : -1;
      double squares = 0;
      for (int j = 0; j < w.length; j++) {
        bang[row] += sign * w[j] * counts[row][j] / n;
        squares += w[j] * w[j] * counts[row][j] / n;
      }
      se[row] = Math.sqrt(Math.max(0, squares - bang[row] * bang[row]) / n);
    }
    return Arrays.equals(w, THREE_ANSWERS)
        ? withJames(counts, bang, se)
        : new GuessIndex(bang, se, Double.NaN, Double.NaN);
  }

  private static double rowTotal(double[] counts, int row) {
    double n = 0;
    for (int j = 0; j < counts.length; j++) {
      if (counts[j] < 0 || counts[j] != Math.rint(counts[j])) {
        throw new StatsException(
            "table[%d][%d]".formatted(row, j), "must be a whole number that is not negative.");
      }
      n += counts[j];
    }
    if (n == 0) {
      throw new StatsException("table[" + row + "]", "has no guess at all.");
    }
    return n;
  }

  private static GuessIndex withJames(double[][] counts, double[] bang, double[] se) {
    double n = 0;
    for (double[] row : counts) {
      n += Arrays.stream(row).sum();
    }
    double[] shares = new double[6];
    DerivativeStructure[] p = new DerivativeStructure[6];
    for (int cell = 0; cell < 6; cell++) {
      shares[cell] = counts[cell / 3][cell % 3] / n;
      p[cell] = new DerivativeStructure(6, 1, cell, shares[cell]);
    }
    DerivativeStructure james = james(p);
    double mean = 0;
    double squares = 0;
    for (int cell = 0; cell < 6; cell++) {
      int[] orders = new int[6];
      orders[cell] = 1;
      double slope = james.getPartialDerivative(orders);
      mean += shares[cell] * slope;
      squares += shares[cell] * slope * slope;
    }
    double variance = (squares - mean * mean) / n;
    double jamesSe = Double.isNaN(variance) ? Double.NaN : Math.sqrt(Math.max(0, variance));
    return new GuessIndex(bang, se, james.getValue(), jamesSe);
  }

  /** The index as a function of the six shares, row by row; a cell is (A, B, don't know). */
  private static DerivativeStructure james(DerivativeStructure[] p) {
    DerivativeStructure unsure = p[2].add(p[5]);
    DerivativeStructure sure = unsure.negate().add(1);
    DerivativeStructure rowA = p[0].add(p[1]);
    DerivativeStructure rowB = p[3].add(p[4]);
    DerivativeStructure columnA = p[0].add(p[3]);
    DerivativeStructure columnB = p[1].add(p[4]);
    DerivativeStructure observed = p[1].add(p[3]).multiply(0.5).divide(sure);
    DerivativeStructure expected =
        rowA.multiply(columnB)
            .add(rowB.multiply(columnA))
            .multiply(0.5)
            .divide(sure.multiply(sure));
    DerivativeStructure excess = observed.subtract(expected).divide(expected);
    return unsure.add(1).add(sure.multiply(excess)).multiply(0.5);
  }

  /** Bang's index of A and of B. */
  public double[] bang() {
    return bang.clone();
  }

  /** Standard errors of {@link #bang}. */
  public double[] bangSe() {
    return bangSe.clone();
  }

  /** 95 % interval of the index of one row (0 = A, 1 = B), not cut at ±1. */
  public Interval bangInterval95(int row) {
    return Interval.normal95(bang[row], bangSe[row]);
  }

  /** James's index; NaN but for the three-answer form, or where it is not defined. */
  public double james() {
    return james;
  }

  /** Standard error of {@link #james} by the multinomial delta method. */
  public double jamesSe() {
    return jamesSe;
  }

  public Interval jamesInterval95() {
    return Interval.normal95(james, jamesSe);
  }
}
