package blindlap.recording;

import blindlap.fault.StatsException;
import java.util.ArrayList;
import java.util.List;

/**
 * The way of a trail over the ground: straight lines between places, measured in metres from its
 * beginning. Distances are those of a plane that touches WGS 84 at the middle of the line; over ten
 * kilometres they differ from the ellipsoid's by less than the recorder can tell.
 */
public final class ReferenceLine {
  /** Places nearer than that to the one before, in metres, say nothing of the way. */
  private static final double SAME_PLACE = 0.5;

  /** Longest line, in metres: beyond it a plane is no longer the ground. */
  public static final double LONGEST = 50_000;

  /** Most places of a line. */
  public static final int MOST_PLACES = 20_000;

  private final List<Position> places;
  private final GroundPlane plane;
  private final double[] east;
  private final double[] north;
  private final double[] along;

  private ReferenceLine(List<Position> places) {
    this.places = List.copyOf(places);
    this.plane = GroundPlane.about(places.get(places.size() / 2));
    int count = places.size();
    this.east = new double[count];
    this.north = new double[count];
    this.along = new double[count];
    for (int i = 0; i < count; i++) {
      east[i] = plane.east(places.get(i));
      north[i] = plane.north(places.get(i));
      along[i] =
          i == 0 ? 0 : along[i - 1] + Math.hypot(east[i] - east[i - 1], north[i] - north[i - 1]);
    }
  }

  /**
   * A line through places in order; those less than half a metre from the one before are left out.
   *
   * @throws StatsException naming {@code line} if fewer than two are left, or it is too long
   */
  public static ReferenceLine through(List<Position> places) {
    if (places.size() > MOST_PLACES) {
      throw new StatsException(
          "line", "has " + places.size() + " places, but may have " + MOST_PLACES + " at most.");
    }
    List<Position> kept = new ArrayList<>();
    for (Position place : places) {
      if (kept.isEmpty() || apart(kept.get(kept.size() - 1), place)) {
        kept.add(place);
      }
    }
    if (kept.size() < 2) {
      throw new StatsException("line", "needs at least two places half a metre apart.");
    }
    ReferenceLine line = new ReferenceLine(kept);
    if (line.length() > LONGEST) {
      throw new StatsException(
          "line",
          "is "
              + Math.round(line.length() / 1000)
              + " km long, but may be "
              + Math.round(LONGEST / 1000)
              + " km at most.");
    }
    return line;
  }

  /** True if two places are so far apart, half a metre, that the way between them counts. */
  public static boolean apart(Position a, Position b) {
    GroundPlane plane = GroundPlane.about(a);
    return Math.hypot(plane.east(b), plane.north(b)) >= SAME_PLACE;
  }

  /** How long the line through all of some places would be, in metres; 0 below two. */
  public static double metres(List<Position> places) {
    return places.size() < 2 ? 0 : new ReferenceLine(places).length();
  }

  /** The places, at least two. */
  public List<Position> places() {
    return places;
  }

  /** Metres east of the place in the middle of the line's list. */
  public double east(Position at) {
    return plane.east(at);
  }

  /** Metres north of it. */
  public double north(Position at) {
    return plane.north(at);
  }

  /** From beginning to end, in metres. */
  public double length() {
    return along[along.length - 1];
  }

  /** Metres from the beginning to a place of the line, by its index. */
  public double along(int place) {
    return along[place];
  }

  /**
   * Where the line is so many metres from its beginning.
   *
   * @throws StatsException naming {@code distance} if it is not on the line
   */
  public Position at(double distance) {
    int i = piece(distance);
    double share = (distance - along[i]) / (along[i + 1] - along[i]);
    return plane.position(
        east[i] + share * (east[i + 1] - east[i]), north[i] + share * (north[i + 1] - north[i]));
  }

  /**
   * A gate that stands across the line, square to it, its first end on the left of who rides by: a
   * ride in the line's direction then has the direction −1 of {@link Crossing}, the way back 1.
   *
   * @param distance metres from the beginning, on the line
   * @param width from end to end, in metres
   * @throws StatsException naming {@code distance} or {@code width}
   */
  public Gate across(double distance, double width) {
    if (!(width > 0 && width <= Gate.WIDEST)) {
      throw new StatsException(
          "width", "must be above 0 and at most " + Gate.WIDEST + " m, not " + width + ".");
    }
    int i = piece(distance);
    double share = (distance - along[i]) / (along[i + 1] - along[i]);
    double stretch = along[i + 1] - along[i];
    double toEast = (east[i + 1] - east[i]) / stretch;
    double toNorth = (north[i + 1] - north[i]) / stretch;
    double x = east[i] + share * stretch * toEast;
    double y = north[i] + share * stretch * toNorth;
    double half = width / 2;
    return new Gate(
        plane.position(x - half * toNorth, y + half * toEast),
        plane.position(x + half * toNorth, y - half * toEast));
  }

  private int piece(double distance) {
    if (!(distance >= 0 && distance <= length())) {
      throw new StatsException(
          "distance", "must lie on the line, between 0 and " + length() + " m, not " + distance);
    }
    int low = 0;
    int high = along.length - 2;
    while (low < high) {
      int middle = (low + high + 1) / 2;
      if (along[middle] <= distance) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    return low;
  }

  /**
   * The nearest point of a stretch of the line.
   *
   * @param at from where
   * @param from metres from the beginning
   * @param to metres from the beginning, not below {@code from}
   * @return metres from the beginning; the first one if several are as near
   */
  double nearest(Position at, double from, double to) {
    double x = plane.east(at);
    double y = plane.north(at);
    double best = Double.POSITIVE_INFINITY;
    double found = from;
    for (int i = piece(Math.min(from, length()));
        i < along.length - 1 && along[i] <= Math.min(to, length());
        i++) {
      double stretch = along[i + 1] - along[i];
      double toEast = (east[i + 1] - east[i]) / stretch;
      double toNorth = (north[i + 1] - north[i]) / stretch;
      double on = (x - east[i]) * toEast + (y - north[i]) * toNorth;
      double least = Math.max(0, from - along[i]);
      double most = Math.min(stretch, to - along[i]);
      double held = Math.max(least, Math.min(most, on));
      double off = Math.hypot(x - east[i] - held * toEast, y - north[i] - held * toNorth);
      if (off < best) {
        best = off;
        found = along[i] + held;
      }
    }
    return found;
  }
}
