package blindlap.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.recording.Fix;
import blindlap.recording.Gate;
import blindlap.recording.LapMatching;
import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.PieceTimes;
import blindlap.recording.Track;
import blindlap.recording.TrackReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Invented days are what they say they are, read as anybody's recording. */
class InventedDayTest {
  private static final Instant MORNING = Instant.parse("2026-11-14T08:00:00Z");
  private static final int[] SETUPS = {0, 1, 1, 0, 1, 0, 0, 1};
  private static final List<InventedDay.Effect> ROUGH =
      List.of(new InventedDay.Effect(260, 420, 0.08));

  private final InventedTrail trail = new InventedTrail(11, 700);
  private final double[] borders = PieceTimes.equal(trail.start(), trail.finish(), 4);
  private final List<Gate> gates =
      Arrays.stream(borders).mapToObj(metres -> trail.line().across(metres, 30)).toList();

  private static List<InventedDay.Stand> stands(boolean swapped, double... seconds) {
    List<InventedDay.Stand> stands = new ArrayList<>();
    for (int lap = 0; lap < SETUPS.length; lap++) {
      stands.add(new InventedDay.Stand(seconds[lap % seconds.length], swapped));
    }
    return stands;
  }

  private InventedDay day(List<InventedDay.Stand> stands) {
    return new InventedDay(5, trail, SETUPS, ROUGH, InventedDay.Rider.USUAL, stands);
  }

  private double[] pieces(Track track, Passes passes, int lap) {
    List<Pass> starts = passes.passes().stream().filter(pass -> pass.gate() == 0).toList();
    double start = starts.get(lap).seconds();
    return PieceTimes.of(
        trail.line(),
        PieceTimes.equal(trail.start(), trail.finish(), 12),
        track,
        start,
        start + passes.laps().get(lap).total());
  }

  @Test
  void withoutErrorsEveryLapSectorAndPieceIsTheTruth() {
    InventedDay day = day(stands(true, 300));
    Track track = InventedRecorder.PLAIN.within(0).every(0.1).record(day, 1, MORNING).track();
    Passes passes = Passes.of(track, gates);
    assertThat(passes.laps()).hasSize(SETUPS.length);
    assertThat(passes.passes())
        .as("the way back up meets no gate")
        .hasSize(SETUPS.length * gates.size());
    double[] twelve = PieceTimes.equal(trail.start(), trail.finish(), 12);
    for (int lap = 0; lap < SETUPS.length; lap++) {
      Pass start = passes.passes().get(lap * gates.size());
      assertThat(start.seconds()).isCloseTo(day.passed(lap, borders[0]), within(0.02));
      assertThat(passes.laps().get(lap).seconds())
          .containsExactly(day.pieces(lap, borders), within(0.02));
      assertThat(pieces(track, passes, lap)).containsExactly(day.pieces(lap, twelve), within(0.02));
    }
  }

  /** The pace of the trail is integrated metre by metre; this adds it up by itself. */
  @Test
  void whatASetupCostsLiesWhereItWasPlacedAndNowhereElse() {
    InventedDay day = day(stands(true, 300));
    double[] twelve = PieceTimes.equal(trail.start(), trail.finish(), 12);
    double[] difference = day.difference(twelve);
    for (int piece = 0; piece < 12; piece++) {
      double expected = 0;
      for (double metre = twelve[piece]; metre < twelve[piece + 1]; metre += 0.05) {
        expected += metre >= 260 && metre < 420 ? 0.05 * 0.08 / trail.pace(metre) : 0;
      }
      assertThat(difference[piece]).isCloseTo(expected, within(0.02));
    }
    assertThat(difference[0]).isZero();
    assertThat(Arrays.stream(difference).sum()).isGreaterThan(1.5);
  }

  @Test
  void bothFormatsHoldOneRide() {
    InventedRecording recording = InventedRecorder.PLAIN.record(day(stands(false, 60)), 1, MORNING);
    Track gpx = recording.track();
    Track tcx = TrackReader.read(recording.tcx().getBytes(StandardCharsets.UTF_8));
    assertThat(tcx.fixes()).isEqualTo(gpx.fixes());
    assertThat(gpx.fixes()).hasSizeGreaterThan(1500);
    assertThat(gpx.fixes().get(0).height()).isCloseTo(trail.height(0), within(0.051));
    double lowest = gpx.fixes().stream().mapToDouble(Fix::height).min().orElseThrow();
    assertThat(lowest).isCloseTo(trail.height(trail.line().length()), within(1.0));
    assertThat(tcx.at(0)).isEqualTo(gpx.at(0)).isEqualTo(MORNING);
  }

  @Test
  void aCoarserRecorderSaysSoInGpx() {
    Track track =
        InventedRecorder.PLAIN.within(7.5).record(day(stands(false, 60)), 1, MORNING).track();
    assertThat(track.fixes().get(0).radius95()).isEqualTo(7.5);
  }

  @Test
  void swapsOfAnyKindAndLengthChangeNothingOfALapButWhenItBegins() {
    InventedRecorder recorder = InventedRecorder.PLAIN.hanging(40);
    Track dummies = recorder.record(day(stands(false, 300)), 1, MORNING).track();
    Track swaps = recorder.record(day(stands(true, 300)), 1, MORNING).track();
    Track longer = recorder.record(day(stands(true, 300, 421, 377)), 1, MORNING).track();
    assertThat(swaps.fixes()).isNotEqualTo(dummies.fixes()).hasSameSizeAs(dummies.fixes());
    Passes plain = Passes.of(dummies, gates);
    for (Track other : List.of(swaps, longer)) {
      Passes passes = Passes.of(other, gates);
      assertThat(passes.laps()).hasSize(SETUPS.length);
      for (int lap = 0; lap < SETUPS.length; lap++) {
        assertThat(passes.laps().get(lap).seconds())
            .containsExactly(plain.laps().get(lap).seconds(), within(1e-9));
        assertThat(pieces(other, passes, lap))
            .containsExactly(pieces(dummies, plain, lap), within(1e-9));
      }
    }
    assertThat(Passes.of(longer, gates).passes().get(5).seconds())
        .isCloseTo(plain.passes().get(5).seconds() + 121, within(1e-9));
  }

  @Test
  void aClockThatIsOffByAnyConstantChangesNoLapNoPieceAndNoMatch() {
    InventedDay day = day(stands(true, 300));
    double[] entered = new double[SETUPS.length];
    Arrays.setAll(entered, lap -> day.passed(lap, trail.finish()) + 25);
    Track right = InventedRecorder.PLAIN.record(day, 1, MORNING).track();
    Passes passes = Passes.of(right, gates);
    for (double off : new double[] {-7200, 0.377, 45, 86_400 * 365.25}) {
      Track track = InventedRecorder.PLAIN.clock(off, 0).record(day, 1, MORNING).track();
      Passes found = Passes.of(track, gates);
      double[] finished = new double[SETUPS.length];
      for (int lap = 0; lap < SETUPS.length; lap++) {
        assertThat(found.laps().get(lap).seconds()).isEqualTo(passes.laps().get(lap).seconds());
        assertThat(pieces(track, found, lap)).isEqualTo(pieces(right, passes, lap));
        Pass finish = found.passes().get((lap + 1) * gates.size() - 1);
        finished[lap] = track.at(finish.seconds()).toEpochMilli() / 1e3 - MORNING.getEpochSecond();
      }
      LapMatching matching = LapMatching.of(finished, entered);
      assertThat(matching.certain()).isTrue();
      for (int lap = 0; lap < SETUPS.length; lap++) {
        assertThat(matching.lap(lap)).isEqualTo(lap);
      }
      assertThat(matching.offset()).isCloseTo(25 - off, within(0.5));
    }
  }

  @Test
  void aClockThatGoesFastLengthensEveryLapByItsShare() {
    InventedDay day = day(stands(false, 60));
    Track track =
        InventedRecorder.PLAIN.within(0).every(0.1).clock(0, 0.01).record(day, 1, MORNING).track();
    Passes passes = Passes.of(track, gates);
    for (int lap = 0; lap < SETUPS.length; lap++) {
      double truth = Arrays.stream(day.pieces(lap, borders)).sum();
      assertThat(passes.laps().get(lap).total()).isCloseTo(1.01 * truth, within(0.02));
    }
  }

  @Test
  void whereTheRecorderLosesItsWayPassesAreDoubtfulAndPiecesNotKnown() {
    InventedDay day = day(stands(false, 60));
    double split = day.passed(2, borders[2]);
    InventedRecorder.Loss loss = new InventedRecorder.Loss(split - 5, split + 2);
    Track track = InventedRecorder.PLAIN.losing(List.of(loss)).record(day, 1, MORNING).track();
    Passes passes = Passes.of(track, gates);
    for (Pass pass : passes.passes()) {
      boolean there = Math.abs(pass.seconds() - split) < 10;
      assertThat(pass.gap()).isEqualTo(there);
      assertThat(pass.within()).isEqualTo(there);
    }
    assertThat(passes.laps()).hasSize(SETUPS.length);
    assertThat(passes.laps().get(2).known()).isFalse();
    assertThat(pieces(track, passes, 2)).contains(Double.NaN);
    assertThat(pieces(track, passes, 3)).doesNotContain(Double.NaN);
  }

  @Test
  void roughGroundIsSlowGround() {
    double slowest = 0;
    double fastest = 9;
    for (double metre = 0; metre < 800; metre++) {
      assertThat(trail.rough(metre)).isBetween(0.0, 1.0);
      assertThat(trail.height(metre + 60)).isLessThan(trail.height(metre));
      if (trail.rough(metre) > 0.8) {
        slowest = Math.max(slowest, trail.pace(metre));
      } else if (trail.rough(metre) < 0.2) {
        fastest = Math.min(fastest, trail.pace(metre));
      }
    }
    assertThat(slowest).isPositive().isLessThan(fastest);
  }
}
