package blindlap.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.recording.Gate;
import blindlap.recording.Passes;
import blindlap.recording.PieceTimes;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Recordings of invented rides, whose truth is known, read as those of anybody. */
class InventedTrailTest {
  private static final Instant MORNING = Instant.parse("2026-11-14T08:00:00Z");

  private final InventedTrail trail = new InventedTrail(11, 700);
  private final List<Gate> gates =
      List.of(trail.line().across(trail.start(), 30), trail.line().across(trail.finish(), 30));

  private static Track read(List<InventedRide.Point> points) {
    StringBuilder gpx =
        new StringBuilder(
            "<gpx version=\"1.1\" creator=\"invented\""
                + " xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>");
    for (InventedRide.Point point : points) {
      gpx.append(
          "<trkpt lat=\"%.9f\" lon=\"%.9f\"><time>%s</time></trkpt>"
              .formatted(
                  point.at().latitude(),
                  point.at().longitude(),
                  MORNING.plusNanos(Math.round(point.seconds() * 1e9))));
    }
    return TrackReader.read(
        gpx.append("</trkseg></trk></gpx>").toString().getBytes(StandardCharsets.UTF_8));
  }

  private InventedRide ride(Random random) {
    double form = 0.03 * random.nextGaussian();
    return new InventedRide(trail, metre -> form);
  }

  @Test
  void withoutErrorsTheTimesOfThePiecesAreTheTruth() {
    InventedRide ride = ride(new Random(3));
    Track track = read(ride.recorded(new Random(4), 0.1, 0));
    Passes passes = Passes.of(track, gates);
    double[] borders = PieceTimes.equal(trail.start(), trail.finish(), 12);
    double[] seconds =
        PieceTimes.of(
            trail.line(),
            borders,
            track,
            passes.passes().get(0).seconds(),
            passes.passes().get(1).seconds());
    double sum = 0;
    for (int i = 0; i < seconds.length; i++) {
      double truth = ride.secondsTo(borders[i + 1]) - ride.secondsTo(borders[i]);
      assertThat(seconds[i]).isCloseTo(truth, within(0.02));
      sum += seconds[i];
    }
    assertThat(sum).isCloseTo(passes.laps().get(0).total(), within(1e-9));
  }
}
