package blindlap.stats.tell;

import blindlap.stats.order.Assignments;
import blindlap.stats.order.DayCheck;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Both statistics of the waits, of the ridden order and of all others. The waits enter as residuals
 * after a constant and a straight line, divided by the largest of the centred waits, so that
 * neither an offset nor the unit matters to what counts as a tie.
 */
final class WaitWalk {
  private static final double NO_INFORMATION = 1e-9;
  private static final double SLACK = 1e-9;

  private final Assignments set;
  private final int[] stints;
  private final double scale;
  private final double slack;

  /** Rows: residuals of the waits, the constant and the line, each of length 1. */
  private final double[][] rows;

  private final WaitSetups setups;
  private final double[] kind = new double[2];
  private double difference;
  private double kindBound;
  private double setupBound;
  private int reals;
  private long visited;
  private long kindMore;
  private long kindSame;
  private long setupMore;
  private long setupSame;

  /**
   * @param waits one per stint
   * @param use which of them are used; never the first
   */
  WaitWalk(Assignments set, double[] waits, boolean[] use) {
    this.set = set;
    int[] used = new int[DayCheck.count(use)];
    int n = 0;
    for (int i = 0; i < use.length; i++) {
      if (use[i]) {
        used[n++] = i;
      }
    }
    this.stints = used;
    double[] centred = DayCheck.centred(waits, use);
    double largest = Arrays.stream(centred).map(Math::abs).max().orElse(0);
    this.scale = largest == 0 ? 1 : largest;
    this.rows = rows(used, centred, scale);
    double squares = 0;
    for (double each : rows[0]) {
      squares += each * each;
    }
    if (DayCheck.noVariation(squares * scale * scale, waits, use)) {
      Arrays.fill(rows[0], 0); // what is left is rounding: every order ties
      squares = 0;
    }
    this.slack = Math.max(SLACK * Math.sqrt(squares), 2 * DayCheck.rounding(waits, use) / scale);
    this.setups = new WaitSetups(set.setups(), used, rows);
  }

  private static double[][] rows(int[] stints, double[] centred, double scale) {
    int n = stints.length;
    double[] constant = new double[n];
    double[] line = new double[n];
    double[] residual = new double[n];
    double middle = Arrays.stream(stints).average().orElse(0);
    double length = 0;
    for (int i = 0; i < n; i++) {
      constant[i] = 1 / Math.sqrt(n);
      line[i] = stints[i] - middle;
      length += line[i] * line[i];
    }
    double along = 0;
    for (int i = 0; i < n; i++) {
      line[i] /= Math.sqrt(length);
      along += line[i] * centred[stints[i]];
    }
    for (int i = 0; i < n; i++) {
      residual[i] = (centred[stints[i]] - along * line[i]) / scale;
    }
    return new double[][] {residual, constant, line};
  }

  /** Takes an order as the ridden one; what follows is counted against it. */
  void ride(int[] order) {
    double[] kind = kind(order);
    difference = kind[1];
    kindBound = kind[0];
    for (int stint : stints) {
      reals += order[stint] != order[stint - 1] ? 1 : 0;
    }
    setupBound = Math.sqrt(setups.explained(order));
    setups.keep();
  }

  void walk() {
    // Renaming A and B turns no real swap into a dummy swap: half of the orders is enough.
    boolean half = set.setups() == 2 && set.closedUnderRenaming();
    set.forEach(
        order -> {
          if (!half || order[0] == 0) {
            count(order);
          }
        });
  }

  void sample(int draws, UniformRandomProvider source) {
    visited = 1;
    kindSame = 1;
    setupSame = 1;
    int[] order = new int[set.stints()];
    for (int i = 0; i < draws; i++) {
      set.random(source, order);
      count(order);
    }
  }

  private void count(int[] order) {
    visited++;
    double t = kind(order)[0];
    kindMore += t > kindBound + slack ? 1 : 0;
    kindSame += Math.abs(t - kindBound) <= slack ? 1 : 0;
    double apart = Math.sqrt(setups.explained(order));
    setupMore += apart > setupBound + slack ? 1 : 0;
    setupSame += Math.abs(apart - setupBound) <= slack ? 1 : 0;
  }

  /** T of an order, 0 where it does not part real from dummy swaps; and the difference. */
  private double[] kind(int[] order) {
    double r = 0;
    double constant = 0;
    double line = 0;
    for (int i = 0; i < stints.length; i++) {
      double x = order[stints[i]] != order[stints[i] - 1] ? 0.5 : -0.5;
      r += x * rows[0][i];
      constant += x * rows[1][i];
      line += x * rows[2][i];
    }
    double whole = stints.length / 4.0;
    double information = whole - constant * constant - line * line;
    boolean none = information <= NO_INFORMATION * whole;
    kind[0] = none ? 0 : r / Math.sqrt(information);
    kind[1] = none ? 0 : r / information * scale;
    return kind;
  }

  /** Number of real swaps among the waits of the ridden order. */
  int reals() {
    return reals;
  }

  /** By how much its real swaps took longer, in the unit of the waits. */
  double difference() {
    return difference;
  }

  double kindP() {
    return (double) (kindMore + kindSame) / visited;
  }

  double kindMidP() {
    return (kindMore + kindSame / 2.0) / visited;
  }

  /** Its setups that lie furthest apart, in the unit of the waits; empty if not told apart. */
  Optional<WaitSetups.Apart> apart() {
    return setups
        .apart()
        .map(a -> new WaitSetups.Apart(a.slowest(), a.quickest(), a.difference() * scale));
  }

  double setupP() {
    return (double) (setupMore + setupSame) / visited;
  }

  double setupMidP() {
    return (setupMore + setupSame / 2.0) / visited;
  }
}
