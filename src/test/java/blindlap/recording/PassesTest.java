package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Passes of real tracks beside those of an independent script, and of tracks made here. */
class PassesTest {
  private static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");

  static List<String> crossings() {
    return new String(Tracks.bytes("r5_gate_crossings.csv"), StandardCharsets.UTF_8)
        .lines()
        .skip(1)
        .toList();
  }

  private static Gate gate(String[] cells, int from, double halfWidth) {
    return Tracks.gate(
        Double.parseDouble(cells[from]),
        Double.parseDouble(cells[from + 1]),
        Double.parseDouble(cells[from + 2]),
        halfWidth);
  }

  @ParameterizedTest
  @MethodSource("crossings")
  void passesAndLapsOfRealTracksAreThoseOfAnIndependentScript(String row) {
    String[] cells = row.split(",");
    Track track = Tracks.read(cells[0]);
    Passes found = Passes.of(track, List.of(gate(cells, 1, Double.parseDouble(cells[4]))));
    String[] times = cells[6].split(" ");
    List<Pass> forth =
        found.passes().stream()
            .filter(pass -> pass.direction() == found.passes().get(0).direction())
            .toList();
    assertThat(forth).hasSize(Integer.parseInt(cells[5]));
    for (int i = 0; i < times.length; i++) {
      LocalTime expected = LocalTime.parse(times[i]);
      LocalTime seen = track.at(forth.get(i).seconds()).atZone(ZoneOffset.UTC).toLocalTime();
      assertThat(Duration.between(expected, seen).abs()).isLessThan(Duration.ofMillis(50));
    }
    double[] laps = Arrays.stream(cells[7].split(" ")).mapToDouble(Double::parseDouble).toArray();
    assertThat(found.laps()).hasSize(laps.length);
    for (int i = 0; i < laps.length; i++) {
      assertThat(found.laps().get(i).total()).isCloseTo(laps[i], within(0.05));
    }
  }

  @Test
  void aLapThatIsTwoBecauseAPassWasMissedIsNamed() {
    String[] cells = crossings().get(1).split(",");
    Passes found = Passes.of(Tracks.read(cells[0]), List.of(gate(cells, 1, 20)));
    for (int lap = 0; lap < found.laps().size(); lap++) {
      assertThat(found.mayBeTwo(lap)).isEqualTo(found.laps().get(lap).total() > 130);
    }
  }

  /** One ride in two formats; gates at the borders that the file states, across the course. */
  @Test
  void oneRideInTwoFormatsGivesTheSameSectorsAndTheBordersOfTheFile() {
    List<Gate> gates = new ArrayList<>();
    List<Double> wall = new ArrayList<>();
    new String(Tracks.bytes("r6_lap_boundaries_from_file.csv"), StandardCharsets.UTF_8)
        .lines()
        .filter(line -> line.startsWith("t06"))
        .map(line -> line.split(","))
        .skip(1)
        .forEach(
            cells -> {
              gates.add(gate(cells, 5, 15));
              wall.add(cells[4].isEmpty() ? Double.NaN : Double.parseDouble(cells[4]));
            });
    Passes tcx = Passes.of(Tracks.read("t06_bike_5laps_32s_gap.tcx"), gates);
    Passes gpx = Passes.of(Tracks.read("t06_bike_5laps_32s_gap.gpx"), gates);
    assertThat(tcx.laps()).hasSize(1);
    assertThat(gpx.laps()).hasSize(1);
    for (int i = 0; i < gates.size() - 1; i++) {
      double one = tcx.laps().get(0).seconds()[i];
      assertThat(gpx.laps().get(0).seconds()[i]).isCloseTo(one, within(0.05));
      assertThat(one).isCloseTo(wall.get(i), within(1.1));
    }
    assertThat(tcx.laps().get(0).pause()).isEqualTo(32);
  }

  private static Track track(double[]... points) {
    Track.Builder builder = new Track.Builder();
    for (double[] point : points) {
      if (point.length > 2) {
        builder.interrupted();
      }
      builder.add(
          new Position(0, point[1] * 1e-5),
          NOON.plusMillis((long) (1000 * point[0])),
          3,
          Double.NaN);
    }
    return builder.track();
  }

  /** At so many hundred-thousandths of a degree east, 1.11 m each. */
  private static Gate at(double east) {
    return new Gate(new Position(-1e-4, east * 1e-5), new Position(1e-4, east * 1e-5));
  }

  @Test
  void severalGatesMakeALapOnlyInOrderAndInTheDirectionOfTheFirstPass() {
    Track track =
        track(
            new double[] {0, 0},
            new double[] {10, 40},
            new double[] {20, 0},
            new double[] {25, 15},
            new double[] {35, 40});
    Passes found = Passes.of(track, List.of(at(10), at(20), at(30)));
    assertThat(found.passes()).hasSize(9);
    assertThat(found.laps()).hasSize(2);
    assertThat(found.laps().get(0).seconds())
        .containsExactly(new double[] {2.5, 2.5}, within(1e-6));
    // The second lap turns up beyond the first gate: it begins at the gate all the same, on the way
    // from 0 at 20 s to 15 at 25 s, and ends on the way to 40 at 35 s.
    double start = 20 + 5 * 10 / 15.0;
    double finish = 25 + 10 * 15 / 25.0;
    assertThat(found.laps().get(1).total()).isCloseTo(finish - start, within(1e-6));
  }

  @Test
  void aRecordingThatBeginsWithTheWayBackUpHasItsLapsAllTheSame() {
    Track track =
        track(
            new double[] {0, 40},
            new double[] {10, 0},
            new double[] {20, 40},
            new double[] {40, 0},
            new double[] {50, 40});
    Passes found = Passes.of(track, List.of(at(10), at(20), at(30)));
    assertThat(found.passes()).hasSize(12);
    assertThat(found.laps()).hasSize(2);
    for (Passes.Lap lap : found.laps()) {
      assertThat(lap.seconds()).containsExactly(new double[] {2.5, 2.5}, within(1e-6));
    }
  }

  /** Between the missed split and the finish behind the next start two laps would be one. */
  @Test
  void aLapThatMissesASplitIsNotCompletedByTheNext() {
    Gate split = new Gate(new Position(-1e-4, 20 * 1e-5), new Position(1e-4, 20 * 1e-5));
    Track.Builder builder = new Track.Builder();
    double[][] points = {
      {0, 0, 0},
      {10, 0, 40},
      {20, 0, 0},
      {22, 9e-4, 14},
      {28, 9e-4, 26},
      {30, 0, 40},
      // The recorder sees nothing of the next start.
      {32, 9e-4, 40},
      {40, 9e-4, 5},
      {41, 9e-4, 15},
      {42, 0, 15},
      {50, 0, 40},
      {60, 0, 0},
      {70, 0, 40}
    };
    for (double[] point : points) {
      builder.add(
          new Position(point[1], point[2] * 1e-5),
          NOON.plusMillis((long) (1000 * point[0])),
          3,
          Double.NaN);
    }
    Passes found = Passes.of(builder.track(), List.of(at(10), split, at(30)));
    assertThat(found.laps()).hasSize(2);
    for (Passes.Lap lap : found.laps()) {
      assertThat(lap.total()).isCloseTo(5, within(1e-6));
    }
  }

  /** One that is one way round is the other way round for whoever names the gates otherwise. */
  @Test
  void gatesThatAreNamedInTheOrderOfTheWayBackUpAreThoseOfTheWayBackUp() {
    Track track = track(new double[] {0, 0}, new double[] {10, 40}, new double[] {50, 0});
    Passes found = Passes.of(track, List.of(at(30), at(20), at(10)));
    assertThat(found.laps()).hasSize(1);
    assertThat(found.laps().get(0).seconds()).containsExactly(new double[] {10, 10}, within(1e-6));
  }

  @Test
  void aPassNearAGapIsDoubtfulAndALapThatEndsInOneIsNotKnown() {
    List<double[]> points = new ArrayList<>();
    for (int second = 0; second <= 20; second++) {
      points.add(new double[] {second, 5 * second});
    }
    points.add(new double[] {50, 250, 1});
    for (int second = 51; second <= 70; second++) {
      points.add(new double[] {second, 250 - 5 * (second - 50)});
    }
    for (int second = 71; second <= 100; second++) {
      points.add(new double[] {second, 150 + 5 * (second - 70)});
    }
    Track track = track(points.toArray(double[][]::new));
    assertThat(Passes.of(track, List.of(at(92))).passes())
        .singleElement()
        .matches(Pass::gap)
        .matches(pass -> !pass.within());
    Passes inside = Passes.of(track, List.of(at(202)));
    assertThat(inside.passes()).extracting(Pass::within).containsExactly(true, false, false);
    assertThat(inside.laps()).singleElement().matches(lap -> !lap.known());
    assertThat(Passes.of(track, List.of(at(52))).passes())
        .singleElement()
        .matches(pass -> !pass.gap());
  }

  /** √((3/(2.45·v))² + (1·step²/(8·v))²), worked out by hand. */
  @Test
  void theUncertaintyIsThatOfThePlaceAndOfTheStraightLine() {
    Track track = track(new double[] {0, 0}, new double[] {2, 10}, new double[] {4, 20});
    Pass pass = Passes.of(track, List.of(at(5))).passes().get(0);
    double speed = 5 * 1.11319;
    assertThat(pass.speed()).isCloseTo(speed, within(0.001));
    assertThat(pass.uncertainty())
        .isCloseTo(Math.hypot(3 / (2.45 * speed), 4 / (8 * speed)), within(1e-4));
    assertThat(pass.slow()).isFalse();
  }

  @Test
  void aTrackThatNeverLeavesTheGateHasNoPass() {
    Track track = track(new double[] {0, 5}, new double[] {1, 5}, new double[] {2, 5});
    Passes found = Passes.of(track, List.of(at(5)));
    assertThat(found.passes()).isEmpty();
    assertThat(found.laps()).isEmpty();
  }
}
