package blindlap.exchange;

import blindlap.fault.StatsException;
import blindlap.fault.Unreadable;
import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.recording.Gate;
import blindlap.recording.GatesOnLine;
import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** Whether laps can be timed on a trail: its line is a way, and goes through its gates in order. */
final class TrailCheck {
  static final int LEAST_GATES = 2;
  static final int MOST_GATES = 41;

  /** Beyond it a plane is no longer the ground of a trail. */
  private static final double NEAREST_TO_A_POLE = 85;

  private static final double HALF_TURN = 180;

  /** Ends of a gate nearer than that, in metres, are one place. */
  private static final double ONE_PLACE = 0.1;

  private TrailCheck() {}

  static Trail checked(TrailReader.Read read) {
    List<Trail.Place> places = apart(read.line());
    ReferenceLine line = line(places);
    List<TrailGate> gates = read.gates();
    names(gates);
    List<Gate> across = gates.stream().map(TrailCheck::gate).toList();
    List<Integer> directions = new ArrayList<>();
    for (int i = 0; i < gates.size(); i++) {
      directions.add(read.directed().get(i) ? gates.get(i).direction() : 0);
    }
    GatesOnLine.Found found = GatesOnLine.of(line, across, directions);
    if (found.failure() != null) {
      throw refused(found, gates);
    }
    List<TrailGate> directed = new ArrayList<>();
    for (int i = 0; i < gates.size(); i++) {
      TrailGate gate = gates.get(i);
      directed.add(
          new TrailGate(
              gate.name(), gate.first(), gate.second(), found.places().get(i).direction()));
    }
    return new Trail(read.name(), places, directed);
  }

  private static Unreadable refused(GatesOnLine.Found found, List<TrailGate> gates) {
    int at = found.places().size();
    TrailGate gate = gates.get(at);
    return switch (Objects.requireNonNull(found.failure())) {
      case NOT_CROSSED -> new Unreadable(TrailFault.NOT_CROSSED, gate.name());
      case OUT_OF_ORDER ->
          new Unreadable(TrailFault.OUT_OF_ORDER, gate.name(), gates.get(at - 1).name());
      case WRONG_WAY ->
          new Unreadable(TrailFault.WRONG_WAY, gate.name(), gate.direction(), -gate.direction());
    };
  }

  /** Places that are half a metre from the one before, so that none is left out of distances. */
  private static List<Trail.Place> apart(List<Trail.Place> read) {
    List<Trail.Place> kept = new ArrayList<>();
    BigDecimal before = BigDecimal.ZERO;
    for (int i = 0; i < read.size(); i++) {
      Trail.Place place = read.get(i);
      double latitude = place.at().latitude().doubleValue();
      if (Math.abs(latitude) > NEAREST_TO_A_POLE) {
        throw new Unreadable(TrailFault.POLE, i + 1, (int) NEAREST_TO_A_POLE);
      }
      if (i > 0 && Math.abs(longitude(place) - longitude(read.get(i - 1))) > HALF_TURN) {
        throw new Unreadable(TrailFault.DATE_LINE, i, i + 1);
      }
      BigDecimal seconds = place.seconds();
      if (seconds != null) {
        if (seconds.compareTo(before) < 0) {
          throw new Unreadable(TrailFault.TIMES, read.size());
        }
        before = seconds;
      }
      if (kept.isEmpty()
          || ReferenceLine.apart(position(kept.get(kept.size() - 1).at()), position(place.at()))) {
        kept.add(place);
      }
    }
    return kept;
  }

  private static double longitude(Trail.Place place) {
    return place.at().longitude().doubleValue();
  }

  private static ReferenceLine line(List<Trail.Place> places) {
    if (places.size() < 2) {
      throw new Unreadable(TrailFault.TOO_SHORT);
    }
    double metres = ReferenceLine.metres(places.stream().map(p -> position(p.at())).toList());
    if (!(metres <= ReferenceLine.LONGEST)) {
      throw new Unreadable(
          TrailFault.TOO_LONG, Math.round(metres / 1000), Math.round(ReferenceLine.LONGEST / 1000));
    }
    return ReferenceLine.through(places.stream().map(p -> position(p.at())).toList());
  }

  private static void names(List<TrailGate> gates) {
    if (gates.size() < LEAST_GATES || gates.size() > MOST_GATES) {
      throw new Unreadable(TrailFault.GATES, gates.size(), LEAST_GATES, MOST_GATES);
    }
    Set<String> names = new HashSet<>();
    for (TrailGate gate : gates) {
      if (!names.add(gate.name())) {
        throw new Unreadable(TrailFault.SAME_NAME, gate.name());
      }
    }
  }

  private static Gate gate(TrailGate gate) {
    Gate across;
    try {
      across = new Gate(position(gate.first()), position(gate.second()));
    } catch (StatsException onePlace) {
      throw new Unreadable(TrailFault.ONE_PLACE, gate.name());
    }
    if (across.width() < ONE_PLACE) {
      throw new Unreadable(TrailFault.ONE_PLACE, gate.name());
    }
    if (!(across.width() <= Gate.WIDEST)) {
      throw new Unreadable(
          TrailFault.TOO_WIDE, gate.name(), Math.round(across.width()), Math.round(Gate.WIDEST));
    }
    return across;
  }

  private static Position position(TrailGate.Point at) {
    return new Position(at.latitude().doubleValue(), at.longitude().doubleValue());
  }
}
