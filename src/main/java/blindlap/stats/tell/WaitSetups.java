package blindlap.stats.tell;

import java.util.Optional;

/**
 * How far the setups lie apart in their waits: least squares of the residuals on the setup that was
 * fitted. With two setups the squares explained are (z′Ww)²/z′Wz.
 */
final class WaitSetups {
  private static final double NO_INFORMATION = 1e-9;

  private final int free;
  private final int[] stints;
  private final double[][] rows;
  private final double[][] sums;
  private final double[] effects;
  private boolean told;
  private Optional<Apart> kept = Optional.empty();

  /**
   * The setups of the ridden order that lie furthest apart.
   *
   * @param difference in the unit of the residuals
   */
  record Apart(int slowest, int quickest, double difference) {}

  /**
   * @param rows residuals of the waits, constant and line, one entry per stint used
   */
  WaitSetups(int setups, int[] stints, double[][] rows) {
    this.free = setups - 1;
    this.stints = stints;
    this.rows = rows;
    this.sums = new double[free][4];
    this.effects = new double[setups];
  }

  /** Squares of the residuals that an order explains; 0 if it does not tell the setups apart. */
  double explained(int[] order) {
    for (double[] each : sums) {
      java.util.Arrays.fill(each, 0);
    }
    for (int i = 0; i < stints.length; i++) {
      int setup = order[stints[i]];
      if (setup > 0) {
        double[] sum = sums[setup - 1];
        sum[0] += rows[0][i];
        sum[1] += rows[1][i];
        sum[2] += rows[2][i];
        sum[3]++;
      }
    }
    return solve();
  }

  /** Elimination on the few columns; the first setup has effect 0. */
  private double solve() {
    double[][] m = new double[free][free + 1];
    for (int a = 0; a < free; a++) {
      for (int b = 0; b < free; b++) {
        double whole = a == b ? sums[a][3] : 0;
        m[a][b] = whole - sums[a][1] * sums[b][1] - sums[a][2] * sums[b][2];
      }
      m[a][free] = sums[a][0];
    }
    double explained = 0;
    for (int a = 0; a < free; a++) {
      if (m[a][a] <= NO_INFORMATION * stints.length) {
        told = false;
        return 0;
      }
      explained += m[a][free] * m[a][free] / m[a][a];
      for (int b = a + 1; b < free; b++) {
        double share = m[b][a] / m[a][a];
        for (int c = a; c <= free; c++) {
          m[b][c] -= share * m[a][c];
        }
      }
    }
    for (int a = free - 1; a >= 0; a--) {
      double left = m[a][free];
      for (int b = a + 1; b < free; b++) {
        left -= m[a][b] * effects[b + 1];
      }
      effects[a + 1] = left / m[a][a];
    }
    told = true;
    return explained;
  }

  /** Keeps what was solved last as the ridden order. */
  void keep() {
    if (!told) {
      return;
    }
    int slowest = 0;
    int quickest = 0;
    for (int s = 1; s < effects.length; s++) {
      slowest = effects[s] > effects[slowest] ? s : slowest;
      quickest = effects[s] <= effects[quickest] ? s : quickest;
    }
    kept = Optional.of(new Apart(slowest, quickest, effects[slowest] - effects[quickest]));
  }

  Optional<Apart> apart() {
    return kept;
  }
}
