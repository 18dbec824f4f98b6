package blindlap.recording;

import blindlap.fault.StatsException;
import java.util.ArrayList;
import java.util.List;

/** Where a line goes through gates, in their order: the first time after the gate in front. */
public final class GatesOnLine {
  private GatesOnLine() {}

  /**
   * A line goes through a gate.
   *
   * @param along metres from the beginning of the line
   * @param direction as of {@link Crossing}
   */
  public record Place(double along, int direction) {}

  /** Why the line does not go through the gates in their order. */
  public enum Failure {
    /** It does not go through the gate at all. */
    NOT_CROSSED,
    /** It goes through it only before the gate in front. */
    OUT_OF_ORDER,
    /** It goes through it there only the other way. */
    WRONG_WAY
  }

  /**
   * What was found.
   *
   * @param places one per gate, up to the first that fails
   * @param failure null unless one fails: the one after the last of {@code places}
   */
  public record Found(List<Place> places, @org.jspecify.annotations.Nullable Failure failure) {
    public Found {
      places = List.copyOf(places);
    }
  }

  /**
   * Follows the line.
   *
   * @param directions as of {@link Crossing}, one per gate; 0 where the line decides
   * @throws StatsException if there are not as many directions as gates
   */
  public static Found of(ReferenceLine line, List<Gate> gates, List<Integer> directions) {
    if (gates.size() != directions.size()) {
      throw new StatsException("directions", "must be as many as gates.");
    }
    List<Fix> way = new ArrayList<>();
    for (int i = 0; i < line.places().size(); i++) {
      way.add(new Fix(line.places().get(i), line.along(i)));
    }
    List<Place> found = new ArrayList<>();
    double before = 0;
    for (int i = 0; i < gates.size(); i++) {
      int wanted = directions.get(i);
      List<Crossing> crossings = gates.get(i).crossings(way);
      double after = before;
      List<Crossing> later = crossings.stream().filter(c -> c.seconds() > after).toList();
      List<Crossing> right =
          later.stream().filter(c -> wanted == 0 || c.direction() == wanted).toList();
      if (right.isEmpty()) {
        return new Found(found, failure(crossings, later));
      }
      found.add(new Place(right.get(0).seconds(), right.get(0).direction()));
      before = right.get(0).seconds();
    }
    return new Found(found, null);
  }

  private static Failure failure(List<Crossing> all, List<Crossing> later) {
    return all.isEmpty()
        ? Failure.NOT_CROSSED
        : later.isEmpty() ? Failure.OUT_OF_ORDER : Failure.WRONG_WAY;
  }
}
