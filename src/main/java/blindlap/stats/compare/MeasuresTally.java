package blindlap.stats.compare;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/** Counts, over the orders, the measures at least as extreme and their maxima. */
final class MeasuresTally {
  private static final double SLACK = 1e-9;
  private static final double ROUNDING = 1e-15;

  private final List<MeasureColumn> columns;
  private final Integer[] descending;
  private final double[] threshold;
  private final long[] own;
  private final long[] single;
  private final long[] step;
  private long orders;

  MeasuresTally(List<MeasureColumn> columns) {
    this.columns = List.copyOf(columns);
    int m = columns.size();
    this.descending = new Integer[m];
    this.threshold = new double[m];
    for (int i = 0; i < m; i++) {
      descending[i] = i;
      threshold[i] = threshold(columns.get(i));
    }
    Arrays.sort(
        descending,
        Collections.reverseOrder(Comparator.comparingDouble(i -> columns.get(i).observed)));
    this.own = new long[m];
    this.single = new long[m];
    this.step = new long[m];
  }

  private static double threshold(MeasureColumn column) {
    if (column.loose <= SLACK) {
      return column.observed * (1 - SLACK) - ROUNDING;
    }
    double root = Math.sqrt(column.observed) * (1 - column.loose) - column.loose;
    return root * Math.max(0, root);
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
