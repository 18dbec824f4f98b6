package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Everything that is drawn.
 *
 * @param dots in rising order of stints
 * @param chosen the number of stints of the plan, which is marked; empty for none
 * @param chosenWords such as "16 stints: 1.0 s"
 * @param worthwhile the worthwhile difference
 * @param worthwhileWords such as "0.5 s: what would change your mind"
 * @param within words left of the border of the day, such as "daylight for 20 stints"
 * @param beyond words right of it, such as "more than one day"
 * @param upright axis of the difference
 * @param across words of the other axis, such as "stints, both setups together"
 * @param spoken the picture in words
 */
public record DetectableContent(
    List<Dot> dots,
    OptionalInt chosen,
    String chosenWords,
    double worthwhile,
    String worthwhileWords,
    String within,
    String beyond,
    Axis upright,
    String across,
    Spoken spoken) {
  /** Copies the list. */
  public DetectableContent {
    dots = List.copyOf(dots);
  }

  /** Whether a number of stints fits. */
  public enum Fit {
    /** Fits the day. */
    FITS,
    /** Needs more than the day. */
    NEEDS_MORE
  }

  /**
   * One possible number of stints.
   *
   * @param stints the number, 2 or more
   * @param difference what it can show; empty where no result is possible
   * @param low lower end of the range that the rider noise leaves open; empty where it is not known
   * @param high upper end of it
   * @param words such as "1.2 s"; where no result is possible, such as "8 stints: never enough"
   * @param fit whether it fits the day
   */
  public record Dot(
      int stints,
      OptionalDouble difference,
      OptionalDouble low,
      OptionalDouble high,
      String words,
      Fit fit) {}
}
