package blindlap.review;

import blindlap.fault.Problem;
import blindlap.stats.compare.Along;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * Where on the trail the difference of two setups arises (docs/method.md#where). It is evidence on
 * where, never a second verdict. Differences are B minus A, in seconds.
 *
 * @param declared true if the plan named the trail's version at commit; else all is exploratory
 * @param drift what is removed
 * @param summary how a stint's laps become one value
 * @param line along the trail's line; empty where there is none, or nothing could be compared
 * @param sectors from gate to gate; empty where nothing could be compared
 * @param caveats why no test may be said of the day; empty where it may
 * @param why why neither line nor sectors could be compared
 */
public record WhereOnTrail(
    boolean declared,
    Drift drift,
    StintSummary summary,
    Optional<Line> line,
    Optional<Sectors> sectors,
    Set<Caveat> caveats,
    Optional<Problem> why) {

  /**
   * Along the line, piece by piece.
   *
   * @param borders metres along the line at which pieces begin and end
   * @param gates metres along the line at which the gates were passed, start and finish included
   * @param values by stint and piece; NaN where masked
   * @param along the numbers
   * @param share of the stints ridden that has no value although its laps count
   */
  public record Line(
      double[] borders, double[] gates, double[][] values, Along along, double share) {
    /** Number of stints that enter. */
    public int used() {
      return (int) Arrays.stream(values).filter(v -> !Double.isNaN(v[0])).count();
    }

    /** Metres from start to finish. */
    public double length() {
      return borders[borders.length - 1] - borders[0];
    }

    /** The running sum at the finish. */
    public double total() {
      double[] sums = along.cumulative().estimates();
      return sums[sums.length - 1];
    }

    /** The running sum so many metres along the line, between borders on a straight line. */
    public double at(double metres) {
      double[] sums = along.cumulative().estimates();
      for (int piece = 0; piece < sums.length; piece++) {
        if (metres <= borders[piece + 1]) {
          double before = piece == 0 ? 0 : sums[piece - 1];
          double gone =
              Math.max(0, metres - borders[piece]) / (borders[piece + 1] - borders[piece]);
          return before + gone * (sums[piece] - before);
        }
      }
      return total();
    }
  }

  /**
   * From gate to gate.
   *
   * @param each in the order of riding
   * @param method how p are adjusted for the number of sectors
   * @param together true if the intervals hold for all sectors at once; else each holds alone
   * @param count number of admissible orders
   * @param sampled true if the orders were sampled
   */
  public record Sectors(
      List<OfSector> each,
      SeveralMeasures.Method method,
      boolean together,
      BigInteger count,
      boolean sampled) {
    public Sectors {
      each = List.copyOf(each);
    }

    /** Sectors in which the setups are shown to differ. */
    public List<OfSector> shown() {
      return each.stream().filter(OfSector::shown).toList();
    }
  }

  /**
   * One sector.
   *
   * @param sector from 0
   * @param values by stint; NaN where masked
   * @param estimate B minus A
   * @param interval 95 %; empty where it is not bounded or nothing varies
   * @param p adjusted; empty where too many values are missing, or no test may be said
   * @param uncertainty of one lap's time in it that is the recorder's, a standard deviation; NaN
   *     where it is not known
   * @param perSetup laps that enter, of A and of B
   */
  public record OfSector(
      int sector,
      double[] values,
      double estimate,
      Optional<Interval> interval,
      OptionalDouble p,
      double uncertainty,
      int[] perSetup) {
    /** Number of stints that enter. */
    public int used() {
      return (int) Arrays.stream(values).filter(v -> !Double.isNaN(v)).count();
    }

    /** True if the setups are shown to differ in it. */
    public boolean shown() {
      return p.isPresent() && p.getAsDouble() <= 0.05;
    }

    /** Index of the setup that takes less time; B where they are equal. */
    public int faster() {
      return estimate <= 0 ? 1 : 0;
    }

    /** Laps that enter. */
    public int laps() {
      return perSetup[0] + perSetup[1];
    }

    /**
     * Half of what the recorder alone makes of the difference in 95 of 100 days; NaN where nothing
     * is known of the recorder.
     */
    public double recorder() {
      return perSetup[0] == 0 || perSetup[1] == 0
          ? Double.NaN
          : 1.96 * uncertainty * Math.sqrt(1.0 / perSetup[0] + 1.0 / perSetup[1]);
    }
  }

  public WhereOnTrail {
    caveats = java.util.Collections.unmodifiableSet(new TreeSet<>(caveats));
  }

  /** True if tests may be said. */
  public boolean tested() {
    return caveats.isEmpty();
  }

  /** True if too many values are missing along the line for a test of it. */
  public boolean lineMissing() {
    return line.filter(l -> l.share() > Analysis.MOST_MISSING).isPresent();
  }

  /** True if anything could be compared. */
  public boolean compared() {
    return line.isPresent() || sectors.isPresent();
  }
}
