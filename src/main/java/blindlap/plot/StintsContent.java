package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.List;
import java.util.Optional;

/**
 * Everything that is drawn.
 *
 * @param rows 2 to 4 setups, the reference first
 * @param values axis of the stints
 * @param pairs 1 or more
 * @param difference axis of the difference
 * @param noise rider noise, 1 SD, where it is known
 * @param worthwhile the worthwhile difference
 * @param left what lies to the left of zero, such as "Shock L quicker"
 * @param right what lies to the right of zero
 * @param spoken the picture in words
 */
public record StintsContent(
    List<Row> rows,
    Axis values,
    List<Pair> pairs,
    Axis difference,
    Optional<Band> noise,
    Band worthwhile,
    String left,
    String right,
    Spoken spoken) {
  /** Copies the lists. */
  public StintsContent {
    rows = List.copyOf(rows);
    pairs = List.copyOf(pairs);
  }

  /**
   * The stints of one setup.
   *
   * @param mark letter, shape and ink
   * @param name the setup's name
   * @param values raw stints, in the measure's unit
   * @param mean mean with drift removed, in the measure's unit
   * @param meanWords such as "mean 1:34.8"
   */
  public record Row(
      SetupMark mark, String name, List<Double> values, double mean, String meanWords) {
    /** Checks the numbers. */
    public Row {
      values = List.copyOf(values);
      if (!Double.isFinite(mean) || !values.stream().allMatch(Double::isFinite)) {
        throw new IllegalArgumentException("Row " + name + " has a value that is not a number");
      }
    }
  }

  /**
   * One pair's difference.
   *
   * @param of the setup whose mean comes first in the subtraction
   * @param less the reference setup
   * @param title such as "Difference"
   * @param note such as "L less K"
   * @param estimate the difference in the measure's unit
   * @param ninetyFive 95 % interval
   * @param ninety 90 % interval
   * @param estimateWords such as "2.3 s quicker"
   * @param intervalWords such as "95 % interval 1.7 to 3.0 s"
   */
  public record Pair(
      SetupMark of,
      SetupMark less,
      String title,
      String note,
      double estimate,
      Limits ninetyFive,
      Limits ninety,
      String estimateWords,
      String intervalWords) {
    /** Checks the estimate. */
    public Pair {
      if (!Double.isFinite(estimate)) {
        throw new IllegalArgumentException("The difference " + note + " has no estimate");
      }
    }
  }
}
