package blindlap.recording;

import blindlap.fault.StatsException;
import java.util.ArrayList;
import java.util.List;

/**
 * A straight line across the trail, on a plane that touches WGS 84 at its middle
 * (docs/method.md#gates): some metres wide, so that the earth is flat around it.
 */
public final class Gate {
  /** Widest gate that is made from a width, in metres: the earth is flat around it. */
  public static final double WIDEST = 200;

  /** Nearer than this, in metres, a point is on the line, and a crossing within the tips. */
  private static final double ON_THE_LINE = 1e-7;

  private final Position first;
  private final Position second;
  private final GroundPlane plane;
  private final double north;
  private final double east;
  private final double width;

  /**
   * @param first one end
   * @param second the other
   * @throws StatsException if both are one place
   */
  public Gate(Position first, Position second) {
    this.first = first;
    this.second = second;
    this.plane = GroundPlane.from(first, (first.latitude() + second.latitude()) / 2);
    this.north = plane.north(second);
    this.east = plane.east(second);
    this.width = Math.hypot(north, east);
    if (width <= ON_THE_LINE) {
      throw new StatsException("gate", "has both ends at one place.");
    }
  }

  /** One end. */
  public Position first() {
    return first;
  }

  /** The other end. */
  public Position second() {
    return second;
  }

  /** From end to end, in metres. */
  public double width() {
    return width;
  }

  /**
   * When a track goes through: changes sides between the tips, themselves included. A point exactly
   * on the line counts once; a track along it, or that turns back on it, does not cross.
   *
   * @param track in the order of recording, times never falling
   * @return in time order
   * @throws StatsException if a time falls
   */
  public List<Crossing> crossings(List<Fix> track) {
    List<Crossing> found = new ArrayList<>();
    Side side = new Side(found);
    for (int i = 0; i < track.size(); i++) {
      if (i > 0 && track.get(i).seconds() < track.get(i - 1).seconds()) {
        throw new StatsException(
            "track[" + i + "]",
            "is at " + track.get(i).seconds() + " s, before the point in front of it.");
      }
      if (i > 0) {
        side.move(track.get(i - 1), track.get(i), i);
      } else {
        side.start(track.get(0));
      }
    }
    return List.copyOf(found);
  }

  /** Follows a track from point to point and remembers on which side it was last. */
  private final class Side {
    private final List<Crossing> found;
    private double before;
    private double onLine = Double.NaN;

    Side(List<Crossing> found) {
      this.found = found;
    }

    void start(Fix fix) {
      double[] at = offset(fix.at());
      before = Math.signum(left(at));
    }

    /** The second point is reached the short way round from the first, also behind the globe. */
    void move(Fix from, Fix to, int index) {
      double[] start = offset(from.at());
      double[] end = {start[0] + plane.east(from.at(), to.at()), plane.north(to.at())};
      double b = left(end);
      if (b == 0) {
        rest(to, end);
        return;
      }
      double now = Math.signum(b);
      if (before != 0 && now != before) {
        cross(from, to, start, end, index);
      }
      before = Math.signum(left(offset(to.at())));
      onLine = Double.NaN;
    }

    private void rest(Fix to, double[] end) {
      if (Double.isNaN(onLine) && within(end)) {
        onLine = to.seconds();
      }
    }

    private void cross(Fix from, Fix to, double[] start, double[] end, int index) {
      double a = left(start);
      int direction = before > 0 ? 1 : -1;
      if (a == 0) {
        if (!Double.isNaN(onLine)) {
          found.add(new Crossing(onLine, direction, index));
        }
        return;
      }
      double share = a / (a - left(end));
      double[] at = {
        start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])
      };
      if (within(at)) {
        found.add(
            new Crossing(
                from.seconds() + share * (to.seconds() - from.seconds()), direction, index));
      }
    }
  }

  /** Metres a second, square to the gate, from one point to the next. */
  double speed(Fix from, Fix to) {
    double[] start = offset(from.at());
    double metres =
        left(new double[] {start[0] + plane.east(from.at(), to.at()), plane.north(to.at())})
            - left(start);
    return Math.abs(metres) / (to.seconds() - from.seconds());
  }

  /** Metres east and north of the first end. */
  private double[] offset(Position at) {
    return new double[] {plane.east(at), plane.north(at)};
  }

  /** Metres to the left of the line from the first end to the second; 0 on it. */
  private double left(double[] at) {
    double metres = (east * at[1] - north * at[0]) / width;
    return Math.abs(metres) <= ON_THE_LINE ? 0 : metres;
  }

  private boolean within(double[] at) {
    double along = (east * at[0] + north * at[1]) / width;
    return along >= -ON_THE_LINE && along <= width + ON_THE_LINE;
  }
}
