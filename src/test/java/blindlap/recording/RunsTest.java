package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/** Rides down an invented straight of 100 m along the equator, at 5 m/s, a point a second. */
class RunsTest {
  private static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");
  private static final double METRE = 1 / 111_319.490_793;

  /** Gates at 10, 50 and 90 m, passed going east. */
  private static final List<CourseGate> GATES = List.of(gate(10), gate(50), gate(90));

  private static CourseGate gate(double east) {
    Gate gate = new Gate(new Position(-1e-4, east * METRE), new Position(1e-4, east * METRE));
    return new CourseGate(gate, 1);
  }

  /** Writes down a ride, point by point. */
  private static final class Rider {
    private final List<double[]> points = new ArrayList<>();
    private double at;
    private double clock;
    private double off;

    Rider to(double east, double speed) {
      double way = Math.abs(east - at);
      double step = Math.signum(east - at) * speed;
      for (int i = 0; i < way / speed; i++) {
        point(at + step, 1);
      }
      at = east;
      return this;
    }

    private void point(double east, double seconds) {
      at = east;
      clock += seconds;
      points.add(new double[] {clock, at, off});
    }

    /** Nothing is written for so long; the rider rides on. */
    Rider silent(double metres, double speed) {
      point(at + metres, metres / speed);
      return this;
    }

    /** Away from the line, where no gate is. */
    Rider aside(Consumer<Rider> what) {
      off = 500;
      what.accept(this);
      off = 0;
      return this;
    }

    Rider lap() {
      return aside(rider -> rider.to(-12.5, 12.5)).to(112.5, 5);
    }

    Track track() {
      Track.Builder builder = new Track.Builder();
      for (double[] point : points) {
        builder.add(
            new Position(point[2] * METRE, point[1] * METRE),
            NOON.plusMillis(Math.round(1000 * point[0])),
            3,
            Double.NaN);
      }
      return builder.track();
    }

    List<Run> runs() {
      return Runs.of(track(), GATES).runs();
    }
  }

  @Test
  void aRideThroughAllGatesIsClearAndItsTimeThatOfItsPasses() {
    List<Run> runs = new Rider().lap().lap().runs();
    assertThat(runs).hasSize(2).allMatch(Run::whole).allMatch(Run::clear);
    assertThat(runs).allSatisfy(run -> assertThat(run.seconds()).isCloseTo(16, within(0.01)));
  }

  @Test
  void aMissedGateIsAnIncompleteRideWhicheverItIs() {
    Run split =
        new Rider()
            .aside(r -> r.to(-12.5, 12.5))
            .to(32.5, 5)
            .aside(r -> r.to(70, 5))
            .to(112.5, 5)
            .runs()
            .get(0);
    assertThat(split.whole()).isFalse();
    assertThat(split.passes().get(1)).isNull();
    assertThat(split.seconds()).isCloseTo(16, within(0.5));
    Run start = new Rider().aside(r -> r.to(32.5, 12.5)).to(112.5, 5).runs().get(0);
    assertThat(start.passes().get(0)).isNull();
    assertThat(start.seconds()).isNaN();
    assertThat(start.first()).isEqualTo(start.passes().get(1));
    Run finish = new Rider().aside(r -> r.to(-12.5, 12.5)).to(72.5, 5).lap().runs().get(0);
    assertThat(finish.passes().get(2)).isNull();
    assertThat(finish.last()).isEqualTo(finish.passes().get(1));
    assertThat(finish.seconds()).isNaN();
  }

  @Test
  void whoGoesBackOnTheWayIsAskedAboutAndWhoRollsBackOverTheStartIsNot() {
    Run back =
        new Rider()
            .aside(r -> r.to(-12.5, 12.5))
            .to(62.5, 5)
            .to(42.5, 5)
            .to(112.5, 5)
            .runs()
            .get(0);
    assertThat(back.wrongWay()).isTrue();
    assertThat(back.clear()).isFalse();
    assertThat(back.seconds()).isCloseTo(24, within(0.01));
    List<Run> start =
        new Rider().aside(r -> r.to(-12.5, 12.5)).to(22.5, 5).to(2.5, 5).to(112.5, 5).runs();
    assertThat(start).singleElement().matches(Run::clear);
    assertThat(start.get(0).seconds()).isCloseTo(16, within(0.01));
  }

  /** A hairpin that takes everybody back through the split is the course. */
  @Test
  void theWayBackThatAllTakeIsNoMistake() {
    Rider rider = new Rider();
    for (int lap = 0; lap < 3; lap++) {
      rider.aside(r -> r.to(-12.5, 12.5)).to(62.5, 5).to(42.5, 5).to(112.5, 5);
    }
    assertThat(rider.runs()).hasSize(3).allMatch(Run::clear);
  }

  @Test
  void theClimbBackThroughTheGatesAndATransportThroughOneMakeNoRide() {
    Rider rider = new Rider().lap().to(-12.5, 5).to(112.5, 5);
    rider.aside(r -> r.to(72.5, 12.5)).to(112.5, 5);
    assertThat(rider.runs()).hasSize(2).allMatch(Run::clear);
  }

  @Test
  void aGapInAGateIsAGuessAndOneNearItIsAskedAbout() {
    Run within =
        new Rider()
            .aside(r -> r.to(-12.5, 12.5))
            .to(72.5, 5)
            .silent(25, 5)
            .to(112.5, 5)
            .runs()
            .get(0);
    assertThat(within.whole()).isTrue();
    assertThat(within.clear()).isFalse();
    assertThat(within.seconds()).isNaN();
    assertThat(within.last()).isEqualTo(within.passes().get(1));
    Run near =
        new Rider()
            .aside(r -> r.to(-12.5, 12.5))
            .to(52.5, 5)
            .silent(25, 5)
            .to(112.5, 5)
            .runs()
            .get(0);
    assertThat(near.clear()).isFalse();
    assertThat(near.seconds()).isCloseTo(16, within(0.01));
  }

  @Test
  void slowerThanWalkingThroughAGateAndALapOfTwoAreAskedAbout() {
    Run slow = new Rider().aside(r -> r.to(-12.5, 12.5)).to(87.5, 5).to(112.5, 1.5).runs().get(0);
    assertThat(slow.clear()).isFalse();
    Rider rider = new Rider().lap().lap().lap();
    rider.aside(r -> r.to(-12.5, 12.5)).to(72.5, 5);
    rider.aside(r -> r.to(-12.5, 12.5)).aside(r -> r.to(32.5, 5)).to(112.5, 5);
    assertThat(rider.runs()).hasSize(4);
    assertThat(rider.runs()).extracting(Run::tooLong).containsExactly(false, false, false, true);
  }

  /**
   * Where a swap takes long, of another length or elsewhere, and the recorder writes as it likes.
   */
  @Test
  void whatLiesBetweenRidesChangesNothingOfThem() {
    List<Rider> days = new ArrayList<>();
    for (int day = 0; day < 4; day++) {
      Rider rider = new Rider();
      for (int lap = 0; lap < 4; lap++) {
        rider.lap();
        int pause = day * (lap + 1);
        rider.aside(
            r -> {
              for (int i = 0; i < 10 * pause; i++) {
                r.point(112.5 + pause, pause % 2 == 0 ? 20 : 1);
              }
            });
      }
      days.add(rider);
    }
    List<List<Double>> uncertainties = new ArrayList<>();
    for (Rider day : days) {
      List<Run> runs = day.runs();
      assertThat(runs).hasSize(4).allMatch(Run::clear);
      List<Double> all = new ArrayList<>();
      runs.forEach(run -> run.passes().forEach(pass -> all.add(pass.uncertainty())));
      uncertainties.add(all);
    }
    assertThat(uncertainties).allSatisfy(all -> assertThat(all).hasSize(12));
    for (int i = 0; i < 12; i++) {
      int at = i;
      assertThat(uncertainties)
          .allSatisfy(
              all -> assertThat(all.get(at)).isCloseTo(uncertainties.get(0).get(at), within(1e-9)));
    }
  }
}
