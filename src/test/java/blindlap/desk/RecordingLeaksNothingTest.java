package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.RecordedLap;
import blindlap.session.RecordingBroughtIn;
import blindlap.session.SessionState;
import blindlap.session.StoredEntry;
import blindlap.session.day.LapId;
import blindlap.store.SqliteFiles;
import blindlap.wording.SettlingWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorder on the bike saw every swap: a real one elsewhere, with other gaps and steps than a
 * dummy one, which takes as long. Over orders, what is asked, shown, kept, exported and left on
 * disk is the same all the same, but for the SHA-256 of the file and what hashes follow from it.
 */
class RecordingLeaksNothingTest {
  private static final Pattern HASH = Pattern.compile("(?:[0-9a-f]{8}[ \n]?){8}");
  private static final Pattern SEALED = Pattern.compile("\"ciphertext\":\"([^\"]+)\"");
  private static final int SWAP = 700;

  @TempDir Path folder;

  private static String masked(String text) {
    return HASH.matcher(SEALED.matcher(text).replaceAll(m -> "sealed " + m.group(1).length()))
        .replaceAll("*");
  }

  /** Between a finish and the next start. */
  private static void between(TrackDay day, boolean real) {
    if (real) {
      day.aside(0.003, 200, 1).silent(90).aside(0.004, SWAP - 350, 13).aside(0.003, 60, 1);
    } else {
      day.aside(0.001, SWAP, 7);
    }
  }

  private record Seen(List<String> texts, Map<LapId, List<String>> positions, byte[] recording) {}

  private Seen seen(long seed, boolean doubtful) throws IOException {
    String name = seed + (doubtful ? "-doubtful" : "");
    Path file = folder.resolve(name + ".blindlap");
    List<String> texts = new ArrayList<>();
    byte[] recording;
    Map<LapId, List<String>> positions = new TreeMap<>();
    try (TrackDay day = new TrackDay(new TestDay(file, TrackDay.plan(), seed, Optional.empty()))) {
      String order = day.day().order();
      day.warmUp();
      for (int stint = 1; stint <= 8; stint++) {
        between(day, stint == 1 || order.charAt(stint - 1) != order.charAt(stint - 2));
        day.ride(doubtful && stint == 3 ? 60 : 0, 700, TrackDay.speed(stint)).entered(stint, 20);
      }
      recording = day.gpx();
      Settling settling = day.settling();
      texts.add(SettlingWords.offset(settling.offset()));
      texts.addAll(SettlingWords.lines(settling.rows()));
      texts.add(SettlingWords.sum(settling.rows()));
      texts.add("warm " + settling.warmUps());
      if (settling.waiting() > 0) {
        settling = settling.with(settling.rows().get(2).pass(), Settling.Answer.KEEP);
      }
      assertThat(day.recordings().take(settling, true)).isInstanceOf(Sessions.Result.Done.class);
      SessionState state = day.state();
      for (StoredEntry stored : state.entries()) {
        texts.add(masked(stored.text()));
      }
      RecordingBroughtIn fact = state.recorded().files().get(0);
      for (RecordedLap lap : fact.laps()) {
        byte[] kept = day.day().desk().notebook().contents().find(lap.positions()).orElseThrow();
        positions.put(lap.lap(), new String(kept).lines().toList());
      }
      Path out = folder.resolve(name + ".session");
      day.day()
          .desk()
          .exchange(new SafeKeeping(new SqliteFiles(day.day().clock(), () -> new byte[16]), file))
          .write(state.id(), out);
      texts.add(masked(Files.readString(out)));
      day.close(true);
      new TreeMap<>(day.day().desk().reviews().export(day.state()))
          .forEach((path, bytes) -> texts.add(path + masked(new String(bytes))));
      texts.add("changes " + day.day().desk().dataVersion());
    }
    texts.add("bytes " + Files.size(file));
    return new Seen(texts, positions, recording);
  }

  private void alike(boolean doubtful) throws IOException {
    Seen first = seen(1, doubtful);
    TreeSet<String> recordings = new TreeSet<>();
    recordings.add(new String(first.recording()));
    for (long seed = 2; seed <= 5; seed++) {
      Seen other = seen(seed, doubtful);
      recordings.add(new String(other.recording()));
      assertThat(other.texts()).containsExactlyElementsOf(first.texts());
      assertThat(other.positions()).isEqualTo(first.positions());
    }
    assertThat(recordings)
        .as("recordings that differ, or this shows nothing")
        .hasSizeGreaterThan(2);
  }

  @Test
  void aClearDayTellsNothingOfItsSwaps() throws IOException {
    alike(false);
  }

  @Test
  void aDayWithALapToSettleTellsNothingOfItsSwaps() throws IOException {
    alike(true);
  }
}
