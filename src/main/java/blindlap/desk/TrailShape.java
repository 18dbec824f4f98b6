package blindlap.desk;

import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.recording.Fix;
import blindlap.recording.PassUncertainty;
import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import blindlap.wording.TrailWords;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A trail in metres, as it is drawn: its way seen from above with north up, its height and speed
 * along the distance, its gates.
 *
 * @param spots of the way, in order
 * @param marks gates, in order
 */
public record TrailShape(List<Spot> spots, List<Mark> marks) {
  /** What a recorder is taken to write that tells nothing else: a place a second. */
  private static final double USUAL_STEP = 1;

  /** Speed at a gate is that over so many metres to either side. */
  private static final double NEAR = 5;

  /**
   * A place of the way.
   *
   * @param east metres east of the middle place of the way
   * @param north metres north of it
   * @param along metres from the beginning
   * @param height metres above the sea; NaN where it is not known
   * @param seconds from the beginning on the lap that it was recorded on; NaN where it was drawn
   */
  public record Spot(double east, double north, double along, double height, double seconds) {}

  /**
   * A gate.
   *
   * @param along metres from the beginning
   * @param ends metres east and north of its first end, and of its second
   * @param speed metres a second at it, on the lap that the line was recorded on; NaN if unknown
   */
  public record Mark(TrailDraft.Across gate, double along, double[] ends, double speed) {
    /** The standard deviation of a usual recorder's time at it, in seconds; NaN if unknown. */
    public double uncertainty() {
      return PassUncertainty.of(Fix.USUAL_RADIUS, USUAL_STEP, speed);
    }
  }

  public TrailShape {
    spots = List.copyOf(spots);
    marks = List.copyOf(marks);
  }

  /** What a drawing of a draft needs. */
  public static TrailShape of(TrailDraft draft) {
    List<Trail.Place> places = draft.places();
    ReferenceLine line = TrailDraft.line(places);
    List<TrailGate> gates = draft.across();
    List<Spot> spots = new ArrayList<>();
    // Every place of a draft is on the line: none is nearer to the one before than half a metre.
    for (int i = 0; i < line.places().size(); i++) {
      Trail.Place place = places.get(Math.min(i, places.size() - 1));
      Position at = line.places().get(i);
      spots.add(
          new Spot(
              line.east(at),
              line.north(at),
              line.along(i),
              number(place.height()),
              number(place.seconds())));
    }
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < gates.size(); i++) {
      marks.add(mark(line, spots, draft.gates().get(i), gates.get(i)));
    }
    return new TrailShape(spots, marks);
  }

  private static Mark mark(
      ReferenceLine line, List<Spot> spots, TrailDraft.Across across, TrailGate gate) {
    Position first = TrailDraft.position(gate.first());
    Position second = TrailDraft.position(gate.second());
    return new Mark(
        across,
        across.along(),
        new double[] {line.east(first), line.north(first), line.east(second), line.north(second)},
        speed(spots, across.along()));
  }

  private static double number(@Nullable BigDecimal number) {
    return number == null ? Double.NaN : number.doubleValue();
  }

  /** Length of the way, in metres. */
  public double length() {
    return spots.get(spots.size() - 1).along();
  }

  /** The gates as they are said. */
  public List<TrailWords.Said> said() {
    return marks.stream()
        .map(
            mark ->
                new TrailWords.Said(
                    mark.gate().name(),
                    mark.along(),
                    mark.gate().width(),
                    seconds(spots, mark.along()),
                    mark.uncertainty()))
        .toList();
  }

  /** Metres a second about a distance; NaN where it is not known. */
  public double speedAt(double along) {
    return speed(spots, along);
  }

  private static double speed(List<Spot> spots, double along) {
    double before = Math.max(0, along - NEAR);
    double after = Math.min(spots.get(spots.size() - 1).along(), along + NEAR);
    double seconds = seconds(spots, after) - seconds(spots, before);
    return seconds > 0 ? (after - before) / seconds : Double.NaN;
  }

  private static double seconds(List<Spot> spots, double along) {
    int i = 1;
    int last = spots.size() - 1;
    while (i < last) {
      int middle = (i + last) >>> 1;
      if (spots.get(middle).along() < along) {
        i = middle + 1;
      } else {
        last = middle;
      }
    }
    Spot from = spots.get(i - 1);
    Spot to = spots.get(i);
    double share = (along - from.along()) / (to.along() - from.along());
    return from.seconds() + share * (to.seconds() - from.seconds());
  }
}
