package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import blindlap.fault.Unreadable;
import blindlap.sample.ScoutingLap;
import java.util.List;
import org.junit.jupiter.api.Test;

class LapLineTest {
  private static final double ALL = Double.POSITIVE_INFINITY;

  @Test
  void restsAtBothEndsAreCutOffAndTheWayIsLeftAsItWas() {
    Track track = TrackReader.read(ScoutingLap.alone());
    LapLine lap = LapLine.of(track, 0, ALL);
    Fix first = lap.fixes().get(0);
    Fix last = lap.fixes().get(lap.fixes().size() - 1);
    assertThat(first.seconds()).isBetween(12.0, 22.0);
    assertThat(last.seconds())
        .isLessThan(track.fixes().get(track.fixes().size() - 1).seconds() - 5);
    double metres = ReferenceLine.metres(lap.fixes().stream().map(Fix::at).toList());
    // 700 m from gate to gate and 60 m on either side; errors of the places make it a little
    // longer.
    assertThat(metres).isCloseTo(820, within(25.0));
    assertThat(first.height()).isCloseTo(240, within(5.0));
  }

  /** What the recorder did between laps, and how long, is nobody's business. */
  @Test
  void severalLapsAreRefusedWithoutAWordOnWhatWasBetweenThem() {
    List<String> said =
        java.util.stream.Stream.of(80, 700)
            .map(seconds -> TrackReader.read(ScoutingLap.twice(seconds)))
            .map(
                track ->
                    org.assertj.core.api.Assertions.catchThrowableOfType(
                            Unreadable.class, () -> LapLine.of(track, 0, ALL))
                        .problem()
                        .toString())
            .toList();
    assertThat(said.get(0)).contains("RESTS").isEqualTo(said.get(1));
    Track track = TrackReader.read(ScoutingLap.twice(700));
    assertThat(LapLine.of(track, 0, 130).fixes()).hasSizeGreaterThan(80);
  }

  @Test
  void noWayIsRefused() {
    Track track = TrackReader.read(ScoutingLap.alone());
    assertThatThrownBy(() -> LapLine.of(track, 5000, 6000))
        .isInstanceOf(Unreadable.class)
        .hasMessageContaining("NO_STRETCH");
    assertThatThrownBy(() -> LapLine.of(track, 0, 10)).hasMessageContaining("NO_STRETCH");
  }

  /** Ten places a second on a straight and round a bend: the bound is measured, not believed. */
  @Test
  void pointsThatAreLeftOutLieWithinTheBoundAndNeighboursWithinTenMetres() {
    Track.Builder builder = new Track.Builder();
    for (int i = 0; i < 4000; i++) {
      double angle = i < 2000 ? 0 : (i - 2000) / 300.0;
      double east = i < 2000 ? 0.6 * i : 1200 + 180 * Math.sin(angle);
      double north = i < 2000 ? 0 : 180 * (1 - Math.cos(angle));
      builder.add(
          new Position(north / 110_600, east / 111_300),
          java.time.Instant.EPOCH.plusMillis(100L * i),
          3,
          Double.NaN);
    }
    Track track = builder.track();
    LapLine lap = LapLine.of(track, 0, ALL);
    assertThat(lap.within()).isEqualTo(0.2);
    assertThat(lap.fixes().size()).isLessThan(track.fixes().size() / 5);
    ReferenceLine line = ReferenceLine.through(lap.fixes().stream().map(Fix::at).toList());
    double worst = 0;
    for (Fix fix : track.fixes()) {
      Position near = line.at(line.nearest(fix.at(), 0, line.length()));
      worst = Math.max(worst, fix.at().to(near).metres());
    }
    assertThat(worst).isBetween(0.01, 0.2);
    for (int i = 1; i < line.places().size(); i++) {
      assertThat(line.along(i) - line.along(i - 1)).isLessThan(10.001);
    }
  }
}
