package blindlap.exchange;

import blindlap.plan.Trail;
import blindlap.plan.TrailGate;
import blindlap.recording.Gate;
import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** An invented trail out on an ocean, of a little more than 700 m. */
public final class QuarryTrail {
  private static final double METRES_PER_DEGREE = 110_600;

  private QuarryTrail() {}

  /** Start, two splits, finish at 10, 200, 420 and 690 m. */
  public static Trail trail() {
    return trail("Quarry loop", 10, 200, 420, 690);
  }

  /** The same way with gates at some distances. */
  public static Trail trail(String name, double... along) {
    List<Trail.Place> places = new ArrayList<>();
    double north = 0;
    double east = 0;
    for (int metre = 0; metre <= 700; metre += 5) {
      double heading = 0.9 * Math.sin(metre / 70.0) + 0.004 * metre;
      places.add(
          new Trail.Place(
              point(11 + north / METRES_PER_DEGREE, -38 + east / (METRES_PER_DEGREE * 0.9816)),
              decimal(240 - metre / 9.0 + 3 * Math.sin(metre / 40.0), 1),
              decimal(metre / 6.5 + 1.2 * Math.sin(metre / 60.0), 3)));
      north += 5 * Math.cos(heading);
      east += 5 * Math.sin(heading);
    }
    ReferenceLine line = ReferenceLine.through(places.stream().map(p -> position(p.at())).toList());
    String[] names = {"Gate post", "Rock garden", "Bridge", "Ford"};
    List<TrailGate> gates = new ArrayList<>();
    for (int i = 0; i < along.length; i++) {
      Gate gate = line.across(along[i], 12);
      gates.add(new TrailGate(names[i], point(gate.first()), point(gate.second()), -1));
    }
    return new Trail(name, places, gates);
  }

  private static TrailGate.Point point(Position at) {
    return point(at.latitude(), at.longitude());
  }

  private static TrailGate.Point point(double latitude, double longitude) {
    return new TrailGate.Point(decimal(latitude, 7), decimal(longitude, 7));
  }

  private static Position position(TrailGate.Point at) {
    return new Position(at.latitude().doubleValue(), at.longitude().doubleValue());
  }

  private static BigDecimal decimal(double value, int places) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? BigDecimal.ZERO : rounded.stripTrailingZeros();
  }
}
