package blindlap.recording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.fault.Unreadable;
import blindlap.sample.InventedDay;
import blindlap.sample.InventedRecorder;
import blindlap.sample.InventedRecording;
import blindlap.sample.InventedTrail;
import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Mangled recordings of both formats against one oracle: a file is refused with a fault of its own
 * in one sentence, or it is a track in which every place is on the globe and every time later than
 * the one before, and whose passes and pieces can be worked out. Never another exception, never
 * more than seconds. A hundred of each in every build, more with {@code -Dtracks=10000}.
 */
class MangledTracksTest {
  private static final int FILES = Integer.getInteger("tracks", 100);
  private static final double SLOW = 5;

  private static final List<String> GPX =
      List.of(
          "t06_bike_5laps_32s_gap.gpx",
          "t12_power_hr_gap2936s.gpx",
          "t14_eight_segments.gpx",
          "t18_mixed_time_formats_4passes.gpx",
          "t20_all_times_equal.gpx");
  private static final List<String> TCX =
      List.of(
          "t06_bike_5laps_32s_gap.tcx",
          "t02_small_loop_smart_3laps.tcx",
          "t08_watch_smart_3laps.tcx",
          "t21_duplicate_times.tcx");

  private final Map<TrackFault, Integer> refused = new EnumMap<>(TrackFault.class);
  private final List<String> broken = new ArrayList<>();
  private int accepted;

  @Test
  void noMangledGpxBreaksTheReader() {
    all(GPX, invented().gpx());
  }

  @Test
  void noMangledTcxBreaksTheReader() {
    all(TCX, invented().tcx());
  }

  private static InventedRecording invented() {
    InventedDay day =
        new InventedDay(
            1,
            new InventedTrail(11, 400),
            new int[] {0, 1},
            List.of(),
            InventedDay.Rider.USUAL,
            Collections.nCopies(2, new InventedDay.Stand(60, true)));
    return InventedRecorder.PLAIN.within(5).record(day, 1, Instant.parse("2026-11-14T08:00:00Z"));
  }

  private void all(List<String> names, String invented) {
    List<String> good = new ArrayList<>(List.of(invented));
    for (String name : names) {
      String text = new String(Tracks.bytes(name), StandardCharsets.UTF_8);
      good.add(text.length() > 120_000 ? shorter(text) : text);
    }
    for (int i = 0; i < FILES; i++) {
      judge(i, new MangledTrack(i).of(good.get(i % good.size())));
    }
    System.out.printf(
        "%s: %d tried, %d read, refused %s, %d broken%n",
        names.get(0), FILES, accepted, refused, broken.size());
    assertThat(broken).isEmpty();
    assertThat(accepted).isPositive();
    assertThat(refused).isNotEmpty();
  }

  /** The beginning and the end: a mangled file is as mangled with fewer points. */
  private static String shorter(String text) {
    int end = text.lastIndexOf("<Trackpoint>");
    int cut = text.indexOf("<Trackpoint>", 60_000);
    return text.substring(0, cut) + text.substring(end);
  }

  private void judge(int seed, byte[] bytes) {
    long begun = System.nanoTime();
    try {
      Track track = TrackReader.read(bytes);
      accepted++;
      wrong(track).forEach(each -> broken.add(seed + ": " + each));
    } catch (Unreadable e) {
      if (e.problem().fault() instanceof TrackFault fault) {
        refused.merge(fault, 1, Integer::sum);
      } else {
        broken.add(seed + ": " + e.problem().fault());
      }
      String said = Problems.sentence(e.problem());
      if (said.length() > 400
          || !said.contains("Nothing was read")
          || said.codePoints().anyMatch(Character::isISOControl)) {
        broken.add(seed + " says: " + said);
      }
    } catch (RuntimeException | Error e) {
      broken.add(seed + ": " + e);
    }
    double seconds = (System.nanoTime() - begun) / 1e9;
    if (seconds > SLOW) {
      broken.add(seed + " took " + seconds + " s");
    }
  }

  private static List<String> wrong(Track track) {
    List<String> wrong = new ArrayList<>();
    double before = -1;
    for (Fix fix : track.fixes()) {
      if (!(fix.seconds() > before) || Double.isInfinite(fix.seconds())) {
        wrong.add("time " + fix.seconds() + " after " + before);
      }
      before = fix.seconds();
      if (!(fix.radius95() >= 3 && fix.radius95() <= Double.MAX_VALUE)) {
        wrong.add("radius " + fix.radius95());
      }
      if (!(Math.abs(fix.at().latitude()) <= 90 && Math.abs(fix.at().longitude()) <= 360)) {
        wrong.add("place " + fix.at());
      }
    }
    Position from = track.fixes().get(0).at();
    Position to = track.fixes().get(track.fixes().size() / 2).at();
    Gate gate =
        new Gate(
            new Position(Math.max(-90, from.latitude() - 0.001), from.longitude()),
            new Position(Math.min(90, to.latitude() + 0.001), to.longitude()));
    Passes passes = Passes.of(track, List.of(gate, gate));
    for (Pass pass : passes.passes()) {
      if (!(pass.uncertainty() > 0 && pass.uncertainty() <= Double.MAX_VALUE)) {
        wrong.add("uncertainty " + pass.uncertainty());
      }
      track.at(pass.seconds());
    }
    return wrong;
  }
}
