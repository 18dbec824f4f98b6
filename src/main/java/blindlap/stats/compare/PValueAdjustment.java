package blindlap.stats.compare;

import blindlap.fault.Require;
import blindlap.fault.StatsException;
import java.util.Arrays;
import java.util.Comparator;

/**
 * Adjustments of p-values for their number: one published procedure per constant. All are monotone
 * in p and cut at 1; p-values come back in the order given.
 */
public enum PValueAdjustment {
  /** Holm (1979), Scand. J. Statist. 6:65: step-down, (m − i + 1)·p_(i), running maximum. */
  HOLM {
    @Override
    double[] adjustSorted(double[] p) {
      double[] adjusted = new double[p.length];
      double largest = 0;
      for (int i = 0; i < p.length; i++) {
        largest = Math.max(largest, (p.length - i) * p[i]);
        adjusted[i] = largest;
      }
      return adjusted;
    }
  },
  /**
   * Hochberg (1988), Biometrika 75:800: step-up, (m − i + 1)·p_(i), running minimum from the top.
   */
  HOCHBERG {
    @Override
    double[] adjustSorted(double[] p) {
      double[] adjusted = new double[p.length];
      double least = 1;
      for (int i = p.length - 1; i >= 0; i--) {
        least = Math.min(least, (p.length - i) * p[i]);
        adjusted[i] = least;
      }
      return adjusted;
    }
  },
  /** Benjamini &amp; Hochberg (1995), J. R. Statist. Soc. B 57:289: step-up, m·p_(i)/i. */
  BENJAMINI_HOCHBERG {
    @Override
    double[] adjustSorted(double[] p) {
      double[] adjusted = new double[p.length];
      double least = 1;
      for (int i = p.length - 1; i >= 0; i--) {
        least = Math.min(least, p.length * p[i] / (i + 1));
        adjusted[i] = least;
      }
      return adjusted;
    }
  },
  /** Bonferroni: m·p. */
  BONFERRONI {
    @Override
    double[] adjustSorted(double[] p) {
      return Arrays.stream(p).map(each -> p.length * each).toArray();
    }
  };

  /**
   * @param p p-values from 0 to 1, at least one
   * @return adjusted p-values in the same order
   * @throws StatsException if there is none or one is no probability
   */
  public double[] adjust(double... p) {
    Require.sample("p", p, 1);
    Integer[] order = new Integer[p.length];
    double[] sorted = new double[p.length];
    for (int i = 0; i < p.length; i++) {
      Require.proportion("p[" + i + "]", p[i]);
      order[i] = i;
    }
    Arrays.sort(order, Comparator.comparingDouble(i -> p[i]));
    Arrays.setAll(sorted, i -> p[order[i]]);
    double[] stepped = adjustSorted(sorted);
    double[] adjusted = new double[p.length];
    for (int i = 0; i < p.length; i++) {
      adjusted[order[i]] = Math.min(1, stepped[i]);
    }
    return adjusted;
  }

  /** Adjusts ascending p-values; values above 1 are cut by the caller. */
  abstract double[] adjustSorted(double[] ascending);
}
