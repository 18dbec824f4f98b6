package blindlap.stats.compare;

import java.util.Arrays;
import java.util.Locale;
import org.apache.commons.math3.stat.StatUtils;

/**
 * How the scored laps of a stint become its one value, on the scale of the analysis
 * (docs/method.md#stint-summary). Adding a constant to every lap adds it to either summary, so that
 * the confidence curve stays exact.
 */
public enum StintSummary {
  /** Mean of the laps that are there. */
  MEAN {
    @Override
    double ofKnown(double[] known) {
      return StatUtils.mean(known);
    }

    @Override
    public int fewestLaps() {
      return 1;
    }

    @Override
    boolean needsAll() {
      return false;
    }
  },
  /** Median of all laps, three or more; a stint that lacks one has no value. */
  MEDIAN {
    @Override
    double ofKnown(double[] known) {
      double[] sorted = known.clone();
      Arrays.sort(sorted);
      int half = sorted.length / 2;
      return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    @Override
    public int fewestLaps() {
      return 3;
    }

    @Override
    boolean needsAll() {
      return true;
    }
  };

  abstract double ofKnown(double[] known);

  /** Least number of scored laps a stint that it can be declared for. */
  public abstract int fewestLaps();

  abstract boolean needsAll();

  /**
   * The value of a stint.
   *
   * @param laps one value per scored lap of the plan, on the scale of the analysis; NaN where none
   * @return NaN if the stint has no value
   */
  public double of(double[] laps) {
    double[] known = Arrays.stream(laps).filter(lap -> !Double.isNaN(lap)).toArray();
    return known.length == 0 || (needsAll() && known.length < laps.length)
        ? Double.NaN
        : ofKnown(known);
  }

  /** The name used in files and requests. */
  public String text() {
    return name().toLowerCase(Locale.ROOT);
  }
}
