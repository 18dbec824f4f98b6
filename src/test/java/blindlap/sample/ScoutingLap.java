package blindlap.sample;

import blindlap.recording.Position;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Random;

/** A recorded lap of an invented trail that nobody has ridden, with heights. */
public final class ScoutingLap {
  private static final Instant MORNING = Instant.parse("2026-11-13T09:00:00Z");
  private final StringBuilder gpx =
      new StringBuilder(
          "<gpx version=\"1.1\" creator=\"invented\""
              + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>");
  private double clock;

  /** One lap of 700 m, a place a second. */
  public static byte[] alone() {
    return new ScoutingLap().rest(20).lap(1).rest(12).file();
  }

  /** Two laps with a rest between them. */
  public static byte[] twice(int restSeconds) {
    return new ScoutingLap().lap(1).rest(restSeconds).lap(2).file();
  }

  private final InventedTrail trail = new InventedTrail(11, 700);
  private Position last = trail.line().at(0);

  /** Stands where the recording has got to. */
  public ScoutingLap rest(int seconds) {
    for (int i = 0; i < seconds; i++) {
      point(clock++, last, 240);
    }
    return this;
  }

  /** Rides a lap. */
  public ScoutingLap lap(long seed) {
    InventedRide ride = new InventedRide(trail, metre -> 0);
    List<InventedRide.Point> points = ride.recorded(new Random(seed), 1, 0.4);
    for (InventedRide.Point point : points) {
      last = point.at();
      point(clock + point.seconds(), last, 240 - 0.4 * point.seconds());
    }
    clock = Math.ceil(clock + points.get(points.size() - 1).seconds() + 1);
    return this;
  }

  private void point(double seconds, Position at, double height) {
    gpx.append(
        "<trkpt lat=\"%.9f\" lon=\"%.9f\"><ele>%.1f</ele><time>%s</time></trkpt>"
            .formatted(
                at.latitude(),
                at.longitude(),
                height,
                MORNING.plusMillis(Math.round(seconds * 1000))));
  }

  /** The file. */
  public byte[] file() {
    return (gpx + "</trkseg></trk></gpx>").getBytes(StandardCharsets.UTF_8);
  }
}
