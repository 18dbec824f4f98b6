package blindlap.desk;

import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import blindlap.plan.TrailGate;
import blindlap.recording.Position;
import blindlap.recording.ReferenceLine;
import blindlap.session.Hash;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** What a recorder writes on the invented trail, a point a second, and in the time between. */
public final class QuarryTrack {
  private static final ReferenceLine LINE =
      ReferenceLine.through(
          QuarryTrail.trail().line().stream().map(place -> at(place.at())).toList());

  private final SetClock clock;
  private final Duration ahead;
  private final List<String> points = new ArrayList<>();

  /**
   * @param clock moves on with every point
   * @param ahead of it is the recorder's
   */
  public QuarryTrack(SetClock clock, Duration ahead) {
    this.clock = clock;
    this.ahead = ahead;
  }

  private static Position at(TrailGate.Point at) {
    return new Position(at.latitude().doubleValue(), at.longitude().doubleValue());
  }

  /** The lines of a plan that fix the trail's first version. */
  public static String ofPlan() {
    StringBuilder gates = new StringBuilder();
    for (TrailGate gate : QuarryTrail.trail().gates()) {
      gates.append(
          "    - {name: %s, first: %s, second: %s, direction: %d}\n"
              .formatted(gate.name(), place(gate.first()), place(gate.second()), gate.direction()));
    }
    String sha256 = Hash.of(TrailFile.text(QuarryTrail.trail())).hex();
    return "trail_version:\n  number: 1\n  sha256: " + sha256 + "\n  gates:\n" + gates;
  }

  private static String place(TrailGate.Point at) {
    return "{latitude: %s, longitude: %s}"
        .formatted(at.latitude().toPlainString(), at.longitude().toPlainString());
  }

  /** From one distance along the line to another. */
  public QuarryTrack ride(double from, double to, double speed) {
    for (double at = from; at < to; at += speed) {
      point(LINE.at(at), 1);
    }
    return this;
  }

  /** Somewhere else, a point every so many seconds. */
  public QuarryTrack aside(double degrees, int seconds, int step) {
    for (int gone = 0; gone < seconds; gone += step) {
      point(new Position(11 + degrees, -38 - degrees), Math.min(step, seconds - gone));
    }
    return this;
  }

  private void point(Position at, int seconds) {
    points.add(
        "<trkpt lat=\"%.9f\" lon=\"%.9f\"><time>%s</time></trkpt>"
            .formatted(at.latitude(), at.longitude(), clock.instant().plus(ahead)));
    clock.move(Duration.ofSeconds(seconds));
  }

  /** Nothing is written for so long. */
  public QuarryTrack silent(int seconds) {
    clock.move(Duration.ofSeconds(seconds));
    return this;
  }

  /** The recording so far. */
  public byte[] gpx() {
    return ("<gpx version=\"1.1\" creator=\"invented\""
            + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>"
            + String.join("\n", points)
            + "</trkseg></trk></gpx>")
        .getBytes(StandardCharsets.UTF_8);
  }
}
