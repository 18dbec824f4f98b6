package blindlap.recording;

import java.util.Arrays;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Which recorded lap is which lap of the day: by their order, and by the clock where both tell one.
 * Nothing is ever matched out of order. The recorder's clock may be off by any constant, which is
 * found and told; what does not fit a lap of the day is left to a person.
 */
public final class LapMatching {
  /** Seconds by which a lap's entry may come earlier or later than usual after its finish. */
  private static final double TOLERANCE = 300;

  /** A recorded lap of which nobody said which lap of the day it is. */
  public static final int FREE = -1;

  private final int[] laps;
  private final double offset;
  private final boolean certain;
  private final boolean[] open;

  private LapMatching(int[] laps, double offset, boolean certain, boolean[] open) {
    this.laps = laps;
    this.offset = offset;
    this.certain = certain;
    this.open = open;
  }

  /** Matches them, nobody having said anything. */
  public static LapMatching of(double[] finished, double[] entered) {
    int[] free = new int[finished.length];
    Arrays.fill(free, FREE);
    return of(finished, entered, free);
  }

  /**
   * Matches them.
   *
   * @param finished when the recorder went through the finish, in seconds of its clock, rising
   * @param entered when each lap of the day was entered, in seconds of the notebook's clock, in the
   *     order of the day; NaN where nobody knows, such as for a lap kept on paper
   * @param said which lap of the day each recorded one is, from 0, rising; {@link #FREE} where
   *     nobody said it
   */
  public static LapMatching of(double[] finished, double[] entered, int[] said) {
    if (finished.length == 0 || entered.length == 0) {
      int[] none = new int[finished.length];
      Arrays.fill(none, -1);
      boolean[] open = new boolean[finished.length];
      Arrays.fill(open, true);
      return new LapMatching(none, Double.NaN, finished.length == entered.length, open);
    }
    boolean clock = Arrays.stream(entered).anyMatch(at -> !Double.isNaN(at));
    return clock
        ? byClock(finished, entered, said)
        : byOrder(finished.length, entered.length, said);
  }

  /** Without clocks only as many as there are laps are sure to be these. */
  private static LapMatching byOrder(int recorded, int ofDay, int[] said) {
    int[] laps = Arrays.copyOf(said, recorded);
    boolean[] open = new boolean[recorded];
    boolean certain = true;
    int from = 0;
    int lap = 0;
    for (int i = 0; i <= recorded; i++) {
      if (i < recorded && said[i] == FREE) {
        continue;
      }
      int until = i < recorded ? said[i] : ofDay;
      boolean asMany = i - from == until - lap;
      for (int each = from; each < i; each++) {
        int next = lap + each - from;
        laps[each] = next < until ? next : -1;
        open[each] = !asMany;
      }
      certain &= asMany;
      from = i + 1;
      lap = until + 1;
    }
    return new LapMatching(laps, Double.NaN, certain, open);
  }

  private static LapMatching byClock(double[] finished, double[] entered, int[] said) {
    double tolerance = tolerance(finished);
    SortedMap<Double, Double> costs = new TreeMap<>();
    for (int i = 0; i < finished.length; i++) {
      for (int j = 0; j < entered.length; j++) {
        if (!Double.isNaN(entered[j]) && (said[i] == FREE || said[i] == j)) {
          double tried = entered[j] - finished[i];
          costs.put(tried, new Alignment(finished, entered, said, tried, tolerance).cost);
        }
      }
    }
    double least = costs.values().stream().min(Double::compare).orElse(Double.POSITIVE_INFINITY);
    if (least == Double.POSITIVE_INFINITY) {
      return byOrder(finished.length, entered.length, said);
    }
    int[] best = new int[0];
    double found = Double.NaN;
    boolean ambiguous = false;
    for (Map.Entry<Double, Double> each : costs.entrySet()) {
      if (each.getValue() > least + tolerance / 2) {
        continue;
      }
      int[] laps = new Alignment(finished, entered, said, each.getKey(), tolerance).laps();
      boolean first = best.length == 0;
      boolean same = Arrays.equals(laps, best);
      ambiguous |= !first && !same;
      // Of alignments that fit as well that at which the recorder's clock is least off is proposed.
      if (first || !same && Math.abs(each.getKey()) < Math.abs(found)) {
        best = laps;
        found = each.getKey();
      }
    }
    ambiguous |= finished.length != entered.length && alone(best, entered);
    boolean[] open = open(best, entered, said, ambiguous);
    double offset = median(finished, entered, best, found);
    boolean every = finished.length == entered.length && Arrays.stream(best).allMatch(l -> l >= 0);
    return new LapMatching(best, offset, every && none(open), open);
  }

  /** A single lap with a time fits every offset, and so tells none. */
  private static boolean alone(int[] laps, double[] entered) {
    return Arrays.stream(laps).filter(lap -> lap >= 0 && !Double.isNaN(entered[lap])).count() < 2;
  }

  private static boolean none(boolean[] open) {
    for (boolean each : open) {
      if (each) {
        return false;
      }
    }
    return true;
  }

  /**
   * Which need a person: all of an ambiguous file; those that are no lap; and laps that no clock
   * knows where more or fewer of them were recorded between two that one does.
   */
  private static boolean[] open(int[] laps, double[] entered, int[] said, boolean ambiguous) {
    boolean[] open = new boolean[laps.length];
    int from = 0;
    int lap = 0;
    for (int i = 0; i <= laps.length; i++) {
      if (i < laps.length && said[i] == FREE && (laps[i] < 0 || Double.isNaN(entered[laps[i]]))) {
        continue;
      }
      int until = i < laps.length ? laps[i] : entered.length;
      long unknown = Arrays.stream(entered, lap, until).filter(Double::isNaN).count();
      for (int each = from; each < i; each++) {
        open[each] = laps[each] < 0 || unknown != i - from;
      }
      if (i < laps.length) {
        open[i] = ambiguous && said[i] == FREE;
      }
      from = i + 1;
      lap = until + 1;
    }
    return open;
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
    private final int[] said;
    private final double offset;
    private final double tolerance;
    final double cost;

    Alignment(double[] finished, double[] entered, int[] said, double offset, double tolerance) {
      this.finished = finished;
      this.entered = entered;
      this.said = said;
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
      if (i == finished.length) {
        return tolerance * (entered.length - j);
      }
      if (j == entered.length) {
        return tolerance + without(i, j);
      }
      double left = tolerance + Math.min(without(i, j), costs[i][j + 1]);
      return Math.min(left, match(i, j) + costs[i + 1][j + 1]);
    }

    /** What somebody said which lap it is, is not left out. */
    private double without(int i, int j) {
      return said[i] == FREE ? costs[i + 1][j] : Double.POSITIVE_INFINITY;
    }

    /** A lap without a time fits any, at half the price of leaving both out. */
    private double match(int i, int j) {
      if (said[i] != FREE && said[i] != j) {
        return Double.POSITIVE_INFINITY;
      }
      if (Double.isNaN(entered[j])) {
        return tolerance;
      }
      double off = Math.abs(entered[j] - finished[i] - offset);
      // What a person said stands, however late the lap was entered.
      return off <= tolerance || said[i] == j ? off : Double.POSITIVE_INFINITY;
    }

    int[] laps() {
      int[] laps = new int[finished.length];
      Arrays.fill(laps, -1);
      int i = 0;
      int j = 0;
      while (i < finished.length && j < entered.length) {
        if (costs[i][j] == match(i, j) + costs[i + 1][j + 1]) {
          laps[i++] = j++;
        } else if (costs[i][j] == tolerance + without(i, j)) {
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

  /**
   * True if a person must say which lap it is: it is none, or others would fit nearly as well, as
   * for a recording of one lap; the one proposed is that at which the clock is least off.
   */
  public boolean open(int recorded) {
    return open[recorded];
  }

  /** True if every recorded lap is one of the day, and every one of the day was recorded. */
  public boolean certain() {
    return certain;
  }
}
