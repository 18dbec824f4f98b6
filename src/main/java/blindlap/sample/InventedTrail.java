package blindlap.sample;

import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A trail that nobody has ridden, out on an ocean: a winding way and the pace that its ground
 * allows. What a ride over it takes is known, piece by piece, so that whatever reads a recording of
 * it can be held against the truth.
 */
public final class InventedTrail {
  /** Metres in front of the start gate and behind the finish gate. */
  public static final double RUN_OUT = 60;

  private static final Position SOMEWHERE = new Position(11.0, -38.0);
  private static final double METRES_PER_DEGREE = 110_600;
  private static final double STEADY = 6.5;

  /** By how much the pace is above or below the steady one at most. */
  private static final double VARIES = 1.6 + 0.9 + 0.3;

  private final double length;
  private final double[] bends;
  private final double[] paces;

  /** Radians to the right a metre, beside all bends. */
  private final double turn;

  private final ReferenceLine line;

  /**
   * Lays out a trail that goes north by and large.
   *
   * @param seed of its bends and its pace
   * @param metres from start gate to finish gate
   */
  public InventedTrail(long seed, double metres) {
    this(seed, metres, Double.NaN);
  }

  private InventedTrail(long seed, double metres, double turn) {
    Random random = new Random(seed);
    this.length = metres + 2 * RUN_OUT;
    this.bends = random.doubles(6, 0, 2 * Math.PI).toArray();
    this.paces = random.doubles(4, 0, 2 * Math.PI).toArray();
    this.turn =
        Double.isNaN(turn) ? 0 : (turn - heading(RUN_OUT + metres) + heading(RUN_OUT)) / metres;
    this.line = ReferenceLine.through(way());
  }

  /**
   * A trail that leaves its finish gate in a chosen direction.
   *
   * @param turn degrees by which it has turned to the right since its start gate: 0 for gates that
   *     are crossed in one direction, 180 for opposite ones
   */
  public static InventedTrail turning(long seed, double metres, double turn) {
    return new InventedTrail(seed, metres, Math.toRadians(turn));
  }

  private List<Position> way() {
    List<Position> places = new ArrayList<>();
    double east = 0;
    double north = 0;
    for (int metre = 0; metre <= Math.ceil(length); metre++) {
      places.add(aside(east, north));
      double heading = heading(metre);
      east += Math.sin(heading);
      north += Math.cos(heading);
    }
    return places;
  }

  /** Bends of 500 m down to 60 m, none so tight that the way comes back to itself. */
  private double heading(double metre) {
    return turn * (metre - RUN_OUT)
        + 0.8 * Math.sin(metre / 80 + bends[0])
        + 0.4 * Math.sin(metre / 31 + bends[1])
        + 0.15 * Math.sin(metre / 10 + bends[2]);
  }

  /** Metres a second that the ground allows, so many metres from the beginning of the line. */
  double pace(double metre) {
    return STEADY
        + 1.6 * Math.sin(metre / 70 + paces[0])
        + 0.9 * Math.sin(metre / 23 + paces[1])
        + 0.3 * Math.sin(metre / 9 + paces[2]);
  }

  /** Metres above the sea: downhill all the way, with rollers. */
  double height(double metre) {
    return 400 - 0.09 * metre + 2 * Math.sin(metre / 37) + 0.6 * Math.sin(metre / 13);
  }

  /**
   * How rough the ground is, from 0 for its fastest metres to 1 for its slowest: the pace that it
   * allows says so.
   */
  public double rough(double metre) {
    return (STEADY + VARIES - pace(metre)) / (2 * VARIES);
  }

  /** A place so many metres east and north of the beginning of the line. */
  Position aside(double east, double north) {
    double narrow = Math.cos(Math.toRadians(SOMEWHERE.latitude()));
    return new Position(
        SOMEWHERE.latitude() + north / METRES_PER_DEGREE,
        SOMEWHERE.longitude() + east / (METRES_PER_DEGREE * narrow));
  }

  /** Metres by which a place lies north of the beginning of the line. */
  double northOf(Position place) {
    return (place.latitude() - SOMEWHERE.latitude()) * METRES_PER_DEGREE;
  }

  /** Metres by which the eastmost place of the line lies east of its beginning. */
  double eastmost() {
    double most = line.places().stream().mapToDouble(Position::longitude).max().orElse(Double.NaN);
    double narrow = Math.cos(Math.toRadians(SOMEWHERE.latitude()));
    return (most - SOMEWHERE.longitude()) * METRES_PER_DEGREE * narrow;
  }

  /** The way, from before the start gate to behind the finish gate. */
  public ReferenceLine line() {
    return line;
  }

  /** Where the start gate stands: metres from the beginning of the line. */
  public double start() {
    return RUN_OUT;
  }

  /** Where the finish gate stands: metres from the beginning of the line. */
  public double finish() {
    return line.length() - RUN_OUT;
  }
}
