package blindlap.recording;

import java.util.Arrays;

/**
 * Which recorded lap is which lap of the day: by their order, and by the clock where both tell one.
 * Nothing is ever matched out of order. The recorder's clock may be off by any constant, which is
 * found and told; what does not fit a lap of the day is left to a person.
 */
public final class LapMatching {
  /** Seconds by which a lap's entry may come earlier or later than usual after its finish. */
  private static final double TOLERANCE = 300;

  private final int[] laps;
  private final double offset;
  private final boolean certain;

  private LapMatching(int[] laps, double offset, boolean certain) {
    this.laps = laps;
    this.offset = offset;
    this.certain = certain;
  }

  /**
   * Matches them.
   *
   * @param finished when the recorder went through the finish, in seconds of its clock, rising
   * @param entered when each lap of the day was entered, in seconds of the notebook's clock, in the
   *     order of the day; NaN where nobody knows, such as for a lap kept on paper
   */
  public static LapMatching of(double[] finished, double[] entered) {
    double[] known = Arrays.stream(entered).filter(at -> !Double.isNaN(at)).toArray();
    if (finished.length == 0 || entered.length == 0) {
      int[] none = new int[finished.length];
      Arrays.fill(none, -1);
      return new LapMatching(none, Double.NaN, finished.length == entered.length);
    }
    return known.length == 0 ? byOrder(finished, entered) : byClock(finished, entered);
  }

  /** Without clocks only as many as there are laps are sure to be these. */
  private static LapMatching byOrder(double[] finished, double[] entered) {
    int[] laps = new int[finished.length];
    for (int i = 0; i < laps.length; i++) {
      laps[i] = i < entered.length ? i : -1;
    }
    return new LapMatching(laps, Double.NaN, finished.length == entered.length);
  }

  private static LapMatching byClock(double[] finished, double[] entered) {
    double tolerance = tolerance(finished);
    int[] best = new int[0];
    double found = Double.NaN;
    double least = Double.POSITIVE_INFINITY;
    for (double end : finished) {
      for (double at : entered) {
        if (Double.isNaN(at)) {
          continue;
        }
        Alignment tried = new Alignment(finished, entered, at - end, tolerance);
        if (tried.cost < least) {
          least = tried.cost;
          best = tried.laps();
          found = at - end;
        }
      }
    }
    double offset = median(finished, entered, best, found);
    boolean every = finished.length == entered.length && Arrays.stream(best).allMatch(l -> l >= 0);
    return new LapMatching(best, offset, every);
  }

  /** Half the shortest time from one finish to the next: two laps can then not be confused. */
  private static double tolerance(double[] finished) {
    double shortest = 2 * TOLERANCE;
    for (int i = 1; i < finished.length; i++) {
      shortest = Math.min(shortest, finished[i] - finished[i - 1]);
    }
    return shortest / 2;
  }

  private static double median(double[] finished, double[] entered, int[] laps, double otherwise) {
    double[] differences = new double[finished.length];
    int count = 0;
    for (int i = 0; i < finished.length; i++) {
      if (laps[i] >= 0 && !Double.isNaN(entered[laps[i]])) {
        differences[count++] = entered[laps[i]] - finished[i];
      }
    }
    if (count == 0) {
      return otherwise;
    }
    double[] sorted = Arrays.copyOf(differences, count);
    Arrays.sort(sorted);
    return (sorted[(count - 1) / 2] + sorted[count / 2]) / 2;
  }

  /** Walks both in order; leaving one out costs as much as the most that a match may be off. */
  private static final class Alignment {
    private final double[][] costs;
    private final double[] finished;
    private final double[] entered;
    private final double offset;
    private final double tolerance;
    final double cost;

    Alignment(double[] finished, double[] entered, double offset, double tolerance) {
      this.finished = finished;
      this.entered = entered;
      this.offset = offset;
      this.tolerance = tolerance;
      this.costs = new double[finished.length + 1][entered.length + 1];
      for (int i = finished.length; i >= 0; i--) {
        for (int j = entered.length; j >= 0; j--) {
          costs[i][j] = least(i, j);
        }
      }
      this.cost = costs[0][0];
    }

    private double least(int i, int j) {
      if (i == finished.length || j == entered.length) {
        return tolerance * (finished.length - i + entered.length - j);
      }
      double left = tolerance + Math.min(costs[i + 1][j], costs[i][j + 1]);
      return Math.min(left, match(i, j) + costs[i + 1][j + 1]);
    }

    /** A lap without a time fits any, at half the price of leaving both out. */
    private double match(int i, int j) {
      if (Double.isNaN(entered[j])) {
        return tolerance;
      }
      double off = Math.abs(entered[j] - finished[i] - offset);
      return off <= tolerance ? off : Double.POSITIVE_INFINITY;
    }

    int[] laps() {
      int[] laps = new int[finished.length];
      Arrays.fill(laps, -1);
      int i = 0;
      int j = 0;
      while (i < finished.length && j < entered.length) {
        if (costs[i][j] == match(i, j) + costs[i + 1][j + 1]) {
          laps[i++] = j++;
        } else if (costs[i][j] == tolerance + costs[i + 1][j]) {
          i++;
        } else {
          j++;
        }
      }
      return laps;
    }
  }

  /**
   * The lap of the day that a recorded one is, from 0.
   *
   * @return −1 where it is none: an extra pass, or one that needs a person
   */
  public int lap(int recorded) {
    return laps[recorded];
  }

  /**
   * Seconds by which entries come after finishes, by the middle one: the recorder's clock being off
   * and the time that it takes to enter a lap together; NaN without clocks.
   */
  public double offset() {
    return offset;
  }

  /** True if every recorded lap is one of the day, and every one of the day was recorded. */
  public boolean certain() {
    return certain;
  }
}
