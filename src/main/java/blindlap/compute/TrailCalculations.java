package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.recording.Crossing;
import blindlap.recording.Fix;
import blindlap.recording.Gate;
import blindlap.recording.Position;
import blindlap.stats.compare.Along;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Places, gates, and differences along the trail. */
final class TrailCalculations {
  private TrailCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of("distance", Set.of("from", "to"), TrailCalculations::distance),
        Calculation.of("gate-time", Set.of("track", "gate"), TrailCalculations::gateTime),
        OrderGiven.calculation(
            "along", Set.of("order", "pieces", "drift"), TrailCalculations::along));
  }

  private static Evaluation distance(Given given) {
    Position.Way way =
        position(given, "from", given.numbers("from"))
            .to(position(given, "to", given.numbers("to")));
    return Evaluation.of(
        new ResultFields().number("metres", way.metres()).number("azimuth", way.azimuth()),
        "Geodesic on the WGS 84 ellipsoid (Karney 2013).");
  }

  private static Position position(Given given, String field, double[] degrees) {
    if (degrees.length < 2) {
      throw given.refuse(field, "must hold a latitude and a longitude in degrees.");
    }
    try {
      return new Position(degrees[0], degrees[1]);
    } catch (StatsException e) {
      throw e.named(field + (e.argument().equals("latitude") ? "[0]" : "[1]"));
    }
  }

  private static Evaluation gateTime(Given given) {
    double[][] ends = given.table("gate");
    if (ends.length != 2) {
      throw given.refuse("gate", "must hold its two ends, not " + ends.length + ".");
    }
    Gate gate = new Gate(position(given, "gate[0]", ends[0]), position(given, "gate[1]", ends[1]));
    double[][] points = given.table("track");
    List<Fix> track = new ArrayList<>();
    for (int i = 0; i < points.length; i++) {
      String field = "track[" + i + "]";
      if (points[i].length != 3) {
        throw given.refuse(field, "must hold a latitude, a longitude and seconds.");
      }
      track.add(new Fix(position(given, field, points[i]), points[i][2]));
    }
    List<ResultFields> crossings = new ArrayList<>();
    for (Crossing crossing : gate.crossings(track)) {
      crossings.add(
          new ResultFields()
              .number("seconds", crossing.seconds())
              .whole("direction", crossing.direction()));
    }
    return Evaluation.of(
        new ResultFields().objects("crossings", crossings),
        "Straight track between points, on a plane that touches WGS 84 at the gate; times by linear"
            + " interpolation.");
  }

  private static Evaluation along(OrderGiven given) {
    Along found =
        Along.compare(
            given.set(),
            given.order(),
            scaled(given),
            given.valid(),
            given.drift(),
            given.sampling());
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .numbers("estimates", found.pieces().estimates())
            .numbers("half_widths_95", found.pieces().halfWidths())
            .numbers("p_adjusted", found.pAdjusted())
            .object(
                "cumulative",
                new ResultFields()
                    .numbers("estimates", found.cumulative().estimates())
                    .numbers("half_widths_95", found.cumulative().halfWidths()));
    given.stateSample(result, found.sampled());
    List<String> notes = new ArrayList<>();
    notes.add(given.reference(found.sampled()));
    notes.add("The p are exact; the bands, all pieces together, are approximate.");
    if (!Along.banded(given.set())) {
      notes.add(
          "No bands: fewer than "
              + Along.FEWEST_ORDERS
              + " orders, where they held too seldom in simulations.");
    }
    return new Evaluation(
        result,
        "Re-randomisation of every piece on the same orders; adjusted by the step-down maximum"
            + " (Westfall & Young 1993).",
        notes);
  }

  private static double[][] scaled(OrderGiven given) {
    given.refuseRatioScale("pieces add up along the trail in their own unit only.");
    double[][] pieces = given.given().tableWithGaps("pieces");
    if (pieces.length == 0) {
      throw given.given().refuse("pieces", "is empty.");
    }
    return pieces;
  }
}
