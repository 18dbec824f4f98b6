package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Gaps of a track beside a look at every point. */
class TrackTest {
  private static final Instant NOON = Instant.parse("2026-05-02T12:00:00Z");

  private static Track random(Random random) {
    Track.Builder builder = new Track.Builder();
    double seconds = 0;
    int count = 2 + random.nextInt(40);
    for (int i = 0; i < count; i++) {
      if (random.nextInt(20) == 0) {
        builder.interrupted();
      }
      Instant at = NOON.plusMillis(Math.round(1000 * seconds));
      builder.add(new Position(1, i * 1e-5), at, 3, 400);
      seconds += random.nextInt(20) == 0 ? 4 + random.nextInt(9) : 1;
    }
    return builder.track();
  }

  private static boolean gapNear(Track track, int fix, double early, double late) {
    List<Fix> fixes = track.fixes();
    for (int i = 1; i < fixes.size(); i++) {
      boolean before = i <= fix && fixes.get(i).seconds() >= early;
      boolean behind = i >= fix && fixes.get(i - 1).seconds() <= late;
      if (track.gapBefore(i) && (before || behind)) {
        return true;
      }
    }
    return false;
  }

  private static double longestGap(Track track, double from, double to) {
    double longest = 0;
    for (int i = 1; i < track.fixes().size(); i++) {
      double early = track.fixes().get(i - 1).seconds();
      double late = track.fixes().get(i).seconds();
      if (track.gapBefore(i) && early < to && late > from) {
        longest = Math.max(longest, late - early);
      }
    }
    return longest;
  }

  @Test
  void gapsAreThoseOfALookAtEveryPoint() {
    Random random = new Random(20_261_128);
    int near = 0;
    int looked = 0;
    for (int i = 0; i < 3000; i++) {
      Track track = random(random);
      double end = track.fixes().get(track.fixes().size() - 1).seconds();
      int fix = 1 + random.nextInt(track.fixes().size() - 1);
      double at = track.fixes().get(fix).seconds() - random.nextDouble();
      boolean found = track.gapNear(fix, at - 5, at + 5);
      assertThat(found).isEqualTo(gapNear(track, fix, at - 5, at + 5));
      near += found ? 1 : 0;
      looked++;
      double from = end * random.nextDouble();
      double to = from + end * random.nextDouble();
      assertThat(track.longestGap(from, to)).isEqualTo(longestGap(track, from, to));
    }
    assertThat(near).isBetween(looked / 10, looked * 9 / 10);
  }

  @Test
  void aTrackJudgedByAnotherStepHasOtherGaps() {
    Track.Builder builder = new Track.Builder();
    for (double second : new double[] {0, 1, 2, 7, 8, 9}) {
      builder.add(new Position(1, second * 1e-5), NOON.plusSeconds((long) second), 3, 400);
    }
    Track track = builder.track();
    assertThat(track.longestGap(0, 9)).isEqualTo(5);
    assertThat(track.withStep(5).longestGap(0, 9)).isZero();
    assertThat(track.withStep(5).fixes()).isEqualTo(track.fixes());
  }

  @Test
  void heightsThatNoGroundHasAreNone() {
    Track.Builder builder = new Track.Builder();
    double[] heights = {412.5, -9999, 9000.5, Double.NaN, Double.POSITIVE_INFINITY, -431};
    for (int i = 0; i < heights.length; i++) {
      builder.add(new Position(1, i * 1e-5), NOON.plusSeconds(i), 3, heights[i]);
    }
    List<Double> kept = new ArrayList<>();
    builder.track().fixes().forEach(fix -> kept.add(fix.height()));
    assertThat(kept)
        .isEqualTo(Arrays.asList(412.5, Double.NaN, Double.NaN, Double.NaN, Double.NaN, -431.0));
  }
}
