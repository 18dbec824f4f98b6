package blindlap.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.recording.Gate;
import blindlap.recording.Passes;
import blindlap.recording.PieceTimes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;

/**
 * How often times between gates lie within their ± of the true ones, on days of invented laps: 200
 * in every build, more with {@code -Dlaps=10000}. The shares of docs/method.md#gates are printed.
 */
class RecordedTruthTest {
  private static final Instant MORNING = Instant.parse("2026-11-14T08:00:00Z");
  private static final int LAPS = Integer.getInteger("laps", 200);
  private static final int LAPS_A_DAY = 10;

  /** Carried back up: what lies between laps is not the matter here. */
  private static final InventedDay.Rider RIDER = new InventedDay.Rider(0.02, 0.03, 0.03, 25, 40);

  /** Shares of laps whose whole, and of sectors whose time, lies within its ±. */
  private record Shares(double lap, double sector) {}

  /** A trail of its own for every day: how fast the ground is at its gates matters. */
  private static Shares shares(LongFunction<InventedTrail> trails, InventedRecorder recorder) {
    int laps = 0;
    int held = 0;
    int heldSectors = 0;
    for (int number = 0; number < LAPS / LAPS_A_DAY; number++) {
      InventedTrail trail = trails.apply(number);
      double[] borders = PieceTimes.equal(trail.start(), trail.finish(), 4);
      List<Gate> gates = new ArrayList<>();
      for (double metres : borders) {
        gates.add(trail.line().across(metres, 40));
      }
      InventedDay day =
          new InventedDay(
              number,
              trail,
              new int[LAPS_A_DAY],
              List.of(),
              RIDER,
              Collections.nCopies(LAPS_A_DAY, new InventedDay.Stand(7.3, false)));
      Passes passes = Passes.of(recorder.record(day, number, MORNING).track(), gates);
      assertThat(passes.laps()).hasSize(LAPS_A_DAY);
      for (int lap = 0; lap < LAPS_A_DAY; lap++) {
        double[] truth = day.pieces(lap, borders);
        double[] seen = passes.laps().get(lap).seconds();
        double[] u = new double[gates.size()];
        for (int gate = 0; gate < u.length; gate++) {
          u[gate] = uncertainty(passes, gate, day.passed(lap, borders[gate]));
        }
        double off = Arrays.stream(seen).sum() - Arrays.stream(truth).sum();
        held += Math.abs(off) <= 1.96 * Math.hypot(u[0], u[u.length - 1]) ? 1 : 0;
        for (int i = 0; i < seen.length; i++) {
          heldSectors += Math.abs(seen[i] - truth[i]) <= 1.96 * Math.hypot(u[i], u[i + 1]) ? 1 : 0;
        }
        laps++;
      }
    }
    return new Shares(held / (double) laps, heldSectors / (4.0 * laps));
  }

  /** Of the pass of a gate that is nearest to a true time. */
  private static double uncertainty(Passes passes, int gate, double second) {
    return passes.passes().stream()
        .filter(pass -> pass.gate() == gate && Math.abs(pass.seconds() - second) < 5)
        .findFirst()
        .orElseThrow()
        .uncertainty();
  }

  private static void told(String what, Shares shares) {
    System.out.printf(
        "%s, %d laps: lap %.4f, sector %.4f%n", what, LAPS, shares.lap(), shares.sector());
  }

  /** 95 ± 2 %, and three standard errors where there are few laps. */
  @Test
  void withIndependentErrorsTimesLieWithinTheirUncertaintyOn95Of100() {
    Shares shares = shares(seed -> new InventedTrail(seed, 700), InventedRecorder.PLAIN);
    told("independent", shares);
    double few = LAPS < 5000 ? 3 * Math.sqrt(.95 * .05 / LAPS) : 0;
    assertThat(shares.lap()).isCloseTo(0.95, within(0.02 + few));
    assertThat(shares.sector()).isCloseTo(0.95, within(0.02 + few));
  }

  /**
   * Errors that hang together: too wide for gates of one direction, too narrow for opposite ones.
   */
  @Test
  void whereErrorsHangTogetherTheDirectionsOfTheGatesDecide() {
    for (double hangs : LAPS < 5000 ? new double[] {600} : new double[] {0, 10, 60, 600, 3600}) {
      InventedRecorder recorder = InventedRecorder.PLAIN.hanging(hangs);
      Shares same = shares(seed -> InventedTrail.turning(seed, 700, 0), recorder);
      Shares turned = shares(seed -> InventedTrail.turning(seed, 700, 180), recorder);
      told("one direction, " + hangs + " s", same);
      told("opposite directions, " + hangs + " s", turned);
      if (hangs >= 600) {
        assertThat(same.lap()).isGreaterThan(0.97);
        assertThat(turned.lap()).isBetween(0.78, 0.92);
      }
    }
  }
}
