package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything that is drawn.
 *
 * @param stints in ridden order
 * @param lines fitted lines; none while the key is sealed
 * @param blockEnds numbers of the stints after which a block ends
 * @param values upright axis
 * @param across words under the stint numbers, such as "stint, in ridden order"
 * @param drift what the lines say, such as "both lines fall by 0.07 s a stint"; may be empty
 * @param spoken the picture in words
 */
public record RiddenContent(
    List<Stint> stints,
    List<FittedLine> lines,
    List<Integer> blockEnds,
    Axis values,
    String across,
    String drift,
    Spoken spoken) {
  /** Copies the lists. */
  public RiddenContent {
    stints = List.copyOf(stints);
    lines = List.copyOf(lines);
    blockEnds = List.copyOf(blockEnds);
  }

  /** What counts of a stint. */
  public enum Standing {
    /** Counts. */
    KEPT,
    /** In question, decided to count: ringed. */
    KEPT_IN_QUESTION,
    /** Void: an open ring in second ink. */
    VOID
  }

  /**
   * One stint.
   *
   * @param number place in ridden order, from 1
   * @param value its value; empty where none was recorded
   * @param setup its setup; empty while the key is sealed
   * @param code its code; may be empty when the key is open
   * @param standing what counts
   * @param reason why it is void or in question; empty for an ordinary stint
   */
  public record Stint(
      int number,
      OptionalDouble value,
      Optional<SetupMark> setup,
      String code,
      Standing standing,
      String reason) {}

  /**
   * A point of a fitted line.
   *
   * @param number stint number
   * @param value fitted value
   */
  public record Fitted(int number, double value) {}

  /**
   * The fitted line of a setup.
   *
   * @param setup whose line it is
   * @param name the words it ends in
   * @param points 2 or more, in rising order
   */
  public record FittedLine(SetupMark setup, String name, List<Fitted> points) {
    /** Checks the number of points. */
    public FittedLine {
      points = List.copyOf(points);
      if (points.size() < 2) {
        throw new IllegalArgumentException("The fitted line of " + name + " needs two points");
      }
    }
  }
}
