package blindlap.desk;

import blindlap.exchange.TrailFile;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.recording.Fix;
import blindlap.recording.Gate;
import blindlap.recording.GatesOnLine;
import blindlap.recording.LapLine;
import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A trail that is being made: a line, and gates that stand across it at distances. The nearest to
 * the beginning is the start, the farthest the finish.
 *
 * @param name of the trail
 * @param places of the line
 * @param gates by their distance
 */
public record TrailDraft(String name, List<Trail.Place> places, List<Across> gates) {
  /** Width of a gate that nobody has set, in metres: four recorder errors to either side. */
  public static final double USUAL_WIDTH = 24;

  /** No gate stands nearer to an end of the line than that, in metres. */
  public static final double FROM_THE_ENDS = 1;

  private static final int DEGREE_PLACES = 7;
  private static final int HEIGHT_PLACES = 1;
  private static final int TIME_PLACES = 3;
  private static final double TENTH = 10;

  /**
   * A gate across the line.
   *
   * @param name of the place
   * @param along metres from the beginning of the line
   * @param width metres from end to end
   * @param ends where it stands if it is not square to the line; null where it is
   */
  public record Across(String name, double along, double width, @Nullable TrailGate ends) {
    /** A gate square to the line. */
    public Across(String name, double along, double width) {
      this(name, along, width, null);
    }
  }

  public TrailDraft {
    places = List.copyOf(places);
    gates = gates.stream().sorted(Comparator.comparingDouble(Across::along)).toList();
  }

  /** A line from a recorded lap, its gates still to be set. */
  public static TrailDraft of(String name, LapLine lap) {
    double start = lap.fixes().get(0).seconds();
    boolean high = lap.fixes().stream().noneMatch(fix -> Double.isNaN(fix.height()));
    List<Trail.Place> places = new ArrayList<>();
    for (Fix fix : lap.fixes()) {
      TrailGate.Point at = point(fix.at());
      if (places.isEmpty() || apart(places.get(places.size() - 1).at(), at)) {
        places.add(
            new Trail.Place(
                at,
                high ? decimal(fix.height(), HEIGHT_PLACES) : null,
                decimal(fix.seconds() - start, TIME_PLACES)));
      }
    }
    return new TrailDraft(name, places, List.of());
  }

  /** A trail that is there, to be changed: its gates stay where they are until they are moved. */
  public static TrailDraft of(Trail trail) {
    ReferenceLine line = line(trail.line());
    List<Gate> across = trail.gates().stream().map(TrailDraft::gate).toList();
    GatesOnLine.Found found =
        GatesOnLine.of(line, across, trail.gates().stream().map(TrailGate::direction).toList());
    List<Across> gates = new ArrayList<>();
    for (int i = 0; i < found.places().size(); i++) {
      gates.add(
          new Across(
              trail.gates().get(i).name(),
              tenth(found.places().get(i).along()),
              tenth(across.get(i).width()),
              trail.gates().get(i)));
    }
    return new TrailDraft(trail.name(), trail.line(), gates);
  }

  private static boolean apart(TrailGate.Point before, TrailGate.Point at) {
    return ReferenceLine.apart(position(before), position(at));
  }

  /** Length of the line, in metres; 0 if it has fewer than two places. */
  public double length() {
    return ReferenceLine.metres(places.stream().map(place -> position(place.at())).toList());
  }

  /** The same with another name. */
  public TrailDraft named(String another) {
    return new TrailDraft(another, places, gates);
  }

  /** The same with other gates. */
  public TrailDraft with(List<Across> others) {
    return new TrailDraft(name, places, others);
  }

  /** A distance as a gate may have it: on the line, a tenth of a metre, not at its ends. */
  public double held(double along) {
    double most = Math.floor((length() - FROM_THE_ENDS) * TENTH) / TENTH;
    return Math.max(Math.min(FROM_THE_ENDS, most), Math.min(most, tenth(along)));
  }

  /**
   * The trail that it makes.
   *
   * @throws Unreadable with the reason if no lap can be timed on it
   */
  public Trail trail() {
    return TrailFile.trail(TrailFile.text(new Trail(name, places, across())));
  }

  private static TrailGate across(ReferenceLine line, Across gate) {
    TrailGate ends = gate.ends();
    if (ends != null) {
      return new TrailGate(gate.name(), ends.first(), ends.second(), ends.direction());
    }
    Gate square = line.across(gate.along(), gate.width());
    return new TrailGate(gate.name(), point(square.first()), point(square.second()), -1);
  }

  /** Where its gates stand, in order. */
  List<TrailGate> across() {
    ReferenceLine line = line(places);
    return gates.stream().map(gate -> across(line, gate)).toList();
  }

  static ReferenceLine line(List<Trail.Place> places) {
    return ReferenceLine.through(places.stream().map(place -> position(place.at())).toList());
  }

  static Position position(TrailGate.Point at) {
    return new Position(at.latitude().doubleValue(), at.longitude().doubleValue());
  }

  private static TrailGate.Point point(Position at) {
    double east = at.longitude() > 180 ? at.longitude() - 360 : at.longitude();
    return new TrailGate.Point(decimal(at.latitude(), DEGREE_PLACES), decimal(east, DEGREE_PLACES));
  }

  static Gate gate(TrailGate gate) {
    return new Gate(position(gate.first()), position(gate.second()));
  }

  private static double tenth(double metres) {
    return Math.round(metres * TENTH) / TENTH;
  }

  private static BigDecimal decimal(double value, int digits) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
  }
}
