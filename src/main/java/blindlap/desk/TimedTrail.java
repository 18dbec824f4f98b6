package blindlap.desk;

import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.plan.TrailVersion;
import blindlap.recording.CourseGate;
import blindlap.recording.Gate;
import blindlap.recording.GatesOnLine;
import blindlap.recording.PieceTimes;
import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The version of a trail by whose gates a recording is read, and its line if the trail book has it.
 *
 * @param planned true if the plan fixes it; otherwise what the recording says is exploratory
 * @param line null where the trail book does not have the text
 */
record TimedTrail(
    String name, TrailVersion version, boolean planned, @Nullable ReferenceLine line) {
  /** Pieces shorter than that, in metres, say nothing at riding speed. */
  private static final double SHORTEST_PIECE = 5;

  private static final double DECIMETRES = 10;

  static TimedTrail of(String name, TrailVersion version, boolean planned, @Nullable Trail trail) {
    return new TimedTrail(
        name,
        version,
        planned,
        trail == null
            ? null
            : ReferenceLine.through(trail.line().stream().map(p -> position(p.at())).toList()));
  }

  private static Position position(TrailGate.Point at) {
    return new Position(at.latitude().doubleValue(), at.longitude().doubleValue());
  }

  private static Gate gate(TrailGate gate) {
    return new Gate(position(gate.first()), position(gate.second()));
  }

  /** The gates as riders go through them. */
  List<CourseGate> course() {
    return version.gates().stream().map(g -> new CourseGate(gate(g), g.direction())).toList();
  }

  /**
   * Metres along the line at which pieces of one length begin and end, to the decimetre; none
   * without a line.
   */
  double[] borders() {
    if (line == null) {
      return new double[0];
    }
    GatesOnLine.Found found =
        GatesOnLine.of(
            line,
            version.gates().stream().map(TimedTrail::gate).toList(),
            version.gates().stream().map(TrailGate::direction).toList());
    if (found.failure() != null) {
      return new double[0];
    }
    double from = found.places().get(0).along();
    double to = found.places().get(found.places().size() - 1).along();
    int pieces =
        Math.max(1, Math.min(PieceTimes.MOST_PIECES, (int) ((to - from) / SHORTEST_PIECE)));
    return Arrays.stream(PieceTimes.equal(from, to, pieces))
        .map(metres -> Math.floor(metres * DECIMETRES) / DECIMETRES)
        .toArray();
  }
}
