package blindlap.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.recording.Gate;
import blindlap.recording.Pass;
import blindlap.recording.Passes;
import blindlap.recording.PieceTimes;
import blindlap.recording.Track;
import blindlap.stats.SmallSets;
import blindlap.stats.compare.Along;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Sampling;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How often the simultaneous band of "along" holds the whole true curve, on invented days that go
 * the whole way: recording, passes, times of pieces, comparison. Thirty days in every build, more
 * with {@code -Ddays=1000}. The shares of docs/method.md#along are printed.
 */
class AlongTruthTest {
  private static final Instant MORNING = Instant.parse("2026-11-14T08:00:00Z");
  private static final int DAYS = Integer.getInteger("days", 30);

  /** Carried back up: what lies between laps is not the matter here. */
  private static final InventedDay.Rider RIDER = new InventedDay.Rider(0.03, 0.01, 0.03, 25, 40);

  private int days;
  private int pieces;
  private int running;

  @ParameterizedTest
  @CsvSource({"12, 12, 0", "16, 12, 0", "16, 40, 0", "16, 40, 60"})
  void theBandHoldsTheWholeTrueCurve(int stints, int pieceCount, double hangs) {
    Assignments set = SmallSets.Plain.blocks(2, stints, 4).assignments();
    UniformRandomProvider draws = RandomSource.XO_RO_SHI_RO_128_PP.create(20_261_128L);
    InventedRecorder recorder = InventedRecorder.PLAIN.hanging(hangs);
    for (int number = 0; number < DAYS; number++) {
      day(number, set, set.random(draws), pieceCount, recorder);
    }
    System.out.printf(
        "%d stints, %d pieces, errors over %.0f s, %d of %d days: pieces %.4f, running sums %.4f%n",
        stints, pieceCount, hangs, days, DAYS, pieces / (double) days, running / (double) days);
    assertThat(days).isGreaterThan(DAYS * 9 / 10);
    double few = DAYS < 500 ? 3 * Math.sqrt(.95 * .05 / DAYS) : 0;
    assertThat(pieces / (double) days).isCloseTo(0.95, within(0.02 + few));
    assertThat(running / (double) days).isCloseTo(0.95, within(0.02 + few));
  }

  /** A setup that loses on rough ground and wins on a fast stretch, somewhere else every day. */
  private static List<InventedDay.Effect> effects(long seed) {
    Random random = Streams.of(seed, 99);
    double loses = 60 + 400 * random.nextDouble();
    double wins = 60 + 500 * random.nextDouble();
    return List.of(
        new InventedDay.Effect(loses, loses + 180, 0.05),
        new InventedDay.Effect(wins, wins + 90, -0.04));
  }

  private void day(
      long number, Assignments set, int[] order, int pieceCount, InventedRecorder recorder) {
    InventedTrail trail = new InventedTrail(number, 700);
    List<Gate> gates =
        List.of(trail.line().across(trail.start(), 40), trail.line().across(trail.finish(), 40));
    InventedDay day =
        new InventedDay(
            number,
            trail,
            order,
            effects(number),
            RIDER,
            Collections.nCopies(order.length, new InventedDay.Stand(7.3, true)));
    Track track = recorder.record(day, number, MORNING).track();
    double[] borders = PieceTimes.equal(trail.start(), trail.finish(), pieceCount);
    Passes passes = Passes.of(track, gates);
    if (passes.laps().size() != order.length) {
      return;
    }
    double[][] times = new double[order.length][];
    for (int lap = 0; lap < order.length; lap++) {
      double start = start(passes, lap, day.passed(lap, trail.start()));
      double finish = start + passes.laps().get(lap).total();
      times[lap] = PieceTimes.of(trail.line(), borders, track, start, finish);
    }
    boolean[] all = new boolean[order.length];
    Arrays.fill(all, true);
    Along along = Along.compare(set, order, times, all, Drift.LINE, Sampling.PREFERRED);
    days++;
    double[] truth = day.difference(borders);
    pieces += holds(along.pieces(), truth) ? 1 : 0;
    Arrays.parallelPrefix(truth, Double::sum);
    running += holds(along.cumulative(), truth) ? 1 : 0;
  }

  /** Errors can send a track back and forth over a gate; a lap begins with the last time. */
  private static double start(Passes passes, int lap, double second) {
    return passes.passes().stream()
        .filter(pass -> pass.gate() == 0 && pass.direction() == -1)
        .mapToDouble(Pass::seconds)
        .filter(seconds -> Math.abs(seconds - second) < 10)
        .max()
        .orElseThrow(() -> new AssertionError("lap " + lap + " has no start"));
  }

  private static boolean holds(Along.Band band, double[] truth) {
    for (int piece = 0; piece < truth.length; piece++) {
      if (!(Math.abs(band.estimates()[piece] - truth[piece]) <= band.halfWidths()[piece])) {
        return false;
      }
    }
    return true;
  }
}
