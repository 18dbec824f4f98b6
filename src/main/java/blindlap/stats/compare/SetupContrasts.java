package blindlap.stats.compare;

/**
 * Least squares of several setups from the sums of {@link ManyWalk}: explained sum of squares and
 * the differences of all pairs with their unit variances. Works in arrays of its own, so that one
 * instance serves a whole walk.
 */
public final class SetupContrasts {
  private static final double DEPENDENT = 1e-9;

  private final int k;
  private final int[] firsts;
  private final int[] seconds;
  private final int[] column;
  private final double[][] lower;
  private final double[][] inverse;
  private final double[] effect;
  private final double[] difference;
  private final double[] unitVariance;

  /** How a pair's difference is made of the effects. */
  private final double[][] weights;

  private double explained;
  private int rank;

  public SetupContrasts(int setups) {
    this.k = setups;
    int pairs = k * (k - 1) / 2;
    this.firsts = new int[pairs];
    this.seconds = new int[pairs];
    int at = 0;
    for (int a = 0; a < k; a++) {
      for (int b = a + 1; b < k; b++) {
        firsts[at] = a;
        seconds[at++] = b;
      }
    }
    this.column = new int[k];
    this.lower = new double[k][k];
    this.inverse = new double[k][k];
    this.effect = new double[k];
    this.difference = new double[pairs];
    this.unitVariance = new double[pairs];
    this.weights = new double[pairs][k];
  }

  /** Number of pairs. */
  public int pairs() {
    return firsts.length;
  }

  public int first(int pair) {
    return firsts[pair];
  }

  int second(int pair) {
    return seconds[pair];
  }

  /** Squared length of the projection on the setups. */
  double explained() {
    return explained;
  }

  /** Copies the projection in orthonormal coordinates: its squared length is explained(). */
  public void coordinates(double[] into) {
    java.util.Arrays.fill(into, 0);
    System.arraycopy(effect, 0, into, 0, rank);
  }

  /** Dimension of the setups' space after drift; setups − 1 unless stints are missing. */
  int rank() {
    return rank;
  }

  /** Second less first. */
  public double difference(int pair) {
    return difference[pair];
  }

  /** Variance of the difference for noise of variance 1; infinite where it is not estimable. */
  public double unitVariance(int pair) {
    return unitVariance[pair];
  }

  /** Solves one order. */
  public void solve(double[] sums, int at) {
    double largest = 0;
    int base = -1;
    for (int s = k - 1; s >= 0; s--) {
      double own = sums[at + ManyWalk.place(k, s, s)];
      largest = Math.max(largest, own);
    }
    double nothing = DEPENDENT * largest;
    int columns = 0;
    for (int s = 0; s < k; s++) {
      if (sums[at + ManyWalk.place(k, s, s)] > nothing) {
        if (base < 0) {
          base = s;
        } else {
          column[columns++] = s;
        }
      }
    }
    columns = factor(sums, at, columns, nothing);
    rank = columns;
    substitute(sums, at, columns);
    contrasts(base, columns);
  }

  /**
   * Other values on the order solved last: coordinates and differences follow them; rank and unit
   * variances stay.
   *
   * @param values sum of the values of every setup, after drift
   */
  public void resolve(double[] values) {
    explained = 0;
    for (int i = 0; i < rank; i++) {
      double v = 0;
      for (int c = 0; c <= i; c++) {
        v += inverse[i][c] * values[column[c]];
      }
      effect[i] = v;
      explained += v * v;
    }
    for (int pair = 0; pair < firsts.length; pair++) {
      double sum = 0;
      for (int i = 0; i < rank; i++) {
        sum += weights[pair][i] * effect[i];
      }
      difference[pair] = sum;
    }
  }

  /** Cholesky factor of the columns kept; a column that depends on those before it is dropped. */
  private int factor(double[] sums, int at, int candidates, double nothing) {
    int kept = 0;
    for (int c = 0; c < candidates; c++) {
      int setup = column[c];
      double pivot = sums[at + ManyWalk.place(k, setup, setup)];
      for (int j = 0; j < kept; j++) {
        double sum = sums[at + ManyWalk.place(k, setup, column[j])];
        for (int l = 0; l < j; l++) {
          sum -= lower[kept][l] * lower[j][l];
        }
        lower[kept][j] = sum / lower[j][j];
        pivot -= lower[kept][j] * lower[kept][j];
      }
      if (pivot > nothing) {
        lower[kept][kept] = Math.sqrt(pivot);
        column[kept++] = setup;
      }
    }
    return kept;
  }

  private void substitute(double[] sums, int at, int columns) {
    explained = 0;
    for (int i = 0; i < columns; i++) {
      double v = sums[at + column[i]];
      for (int j = 0; j < columns; j++) {
        inverse[i][j] = i == j ? 1 : 0;
      }
      for (int j = 0; j < i; j++) {
        v -= lower[i][j] * effect[j];
        for (int c = 0; c <= j; c++) {
          inverse[i][c] -= lower[i][j] * inverse[j][c];
        }
      }
      effect[i] = v / lower[i][i];
      explained += effect[i] * effect[i];
      for (int c = 0; c <= i; c++) {
        inverse[i][c] /= lower[i][i];
      }
    }
  }

  /** With L the factor, effects are L'⁻¹·(L⁻¹v) and their covariance L'⁻¹L⁻¹. */
  private void contrasts(int base, int columns) {
    for (int pair = 0; pair < firsts.length; pair++) {
      int a = columnOf(firsts[pair], columns);
      int b = columnOf(seconds[pair], columns);
      boolean estimable = (a >= 0 || firsts[pair] == base) && (b >= 0 || seconds[pair] == base);
      double sum = 0;
      double variance = 0;
      for (int i = 0; i < columns; i++) {
        double weight = estimable ? (b >= 0 ? inverse[i][b] : 0) - (a >= 0 ? inverse[i][a] : 0) : 0;
        weights[pair][i] = weight;
        sum += weight * effect[i];
        variance += weight * weight;
      }
      difference[pair] = sum;
      unitVariance[pair] = estimable ? variance : Double.POSITIVE_INFINITY;
    }
  }

  private int columnOf(int setup, int columns) {
    for (int c = 0; c < columns; c++) {
      if (column[c] == setup) {
        return c;
      }
    }
    return -1;
  }
}
