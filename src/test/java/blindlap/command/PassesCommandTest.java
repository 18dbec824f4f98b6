package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.recording.Position;
import blindlap.recording.Tracks;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code blindlap passes} prints of a real track and says of what it cannot read. */
class PassesCommandTest {
  @TempDir Path folder;
  private CommandLineSession line;
  private Path track;
  private String gate;

  @BeforeEach
  void aTrackOfFourteenRounds() throws IOException {
    line = new CommandLineSession(folder);
    track = folder.resolve("track.tcx");
    Files.write(track, Tracks.bytes("t01_track400m_14passes_1s.tcx"));
    Position[] ends = Tracks.ends(28.18492, -128.102175, 296, 15);
    gate =
        "--gate="
            + ends[0].latitude()
            + ","
            + ends[0].longitude()
            + ","
            + ends[1].latitude()
            + ","
            + ends[1].longitude();
  }

  @Test
  void jsonHoldsPassesAndLapsInFull() throws IOException {
    CommandLineSession.Ran ran = line.run("passes", track.toString(), gate, "--json");
    assertThat(ran.code()).as(ran.err()).isZero();
    JsonNode found = new ObjectMapper().readTree(ran.out());
    assertThat(found.path("points").asInt()).isEqualTo(1387);
    assertThat(found.path("passes")).hasSize(14);
    JsonNode first = found.path("passes").get(0);
    assertThat(first.path("utc").asText()).startsWith("2022-03-20T12:53:00.0");
    assertThat(first.path("direction").asInt()).isEqualTo(-1);
    assertThat(first.path("doubtful").isNull()).isTrue();
    assertThat(first.path("uncertainty").asDouble()).isBetween(0.1, 1.0);
    assertThat(found.path("laps")).hasSize(13);
    assertThat(found.path("laps").get(0).asDouble()).isCloseTo(113.15, within(0.05));
  }

  /** Anybody may count on these fields, and on no others. */
  @Test
  void jsonHasExactlyTheFieldsThatAreDocumented() throws IOException {
    for (String[] typed : new String[][] {{gate}, {gate, gate.replace("--gate=", "--gate=+")}}) {
      String[] all = new String[typed.length + 3];
      all[0] = "passes";
      all[1] = track.toString();
      all[2] = "--json";
      System.arraycopy(typed, 0, all, 3, typed.length);
      JsonNode found = new ObjectMapper().readTree(line.run(all).out());
      assertThat(found.fieldNames()).toIterable().containsExactly("points", "passes", "laps");
      for (JsonNode pass : found.path("passes")) {
        assertThat(pass.fieldNames())
            .toIterable()
            .containsExactly("utc", "seconds", "direction", "uncertainty", "doubtful");
      }
    }
  }

  @Test
  void aPassIsDoubtfulNearAGapAndWhereTheBikeHardlyMoves() throws IOException {
    Path ride = folder.resolve("ride.tcx");
    Files.write(ride, Tracks.bytes("t06_bike_5laps_32s_gap.tcx"));
    JsonNode passes = passes(ride, Tracks.ends(52.160322, -43.016063, 279, 15));
    assertThat(passes).hasSize(1);
    assertThat(passes.get(0).path("doubtful").asText()).isEqualTo("gap");
    Path loops = folder.resolve("loops.tcx");
    Files.write(loops, Tracks.bytes("t02_small_loop_smart_3laps.tcx"));
    JsonNode slow = passes(loops, Tracks.ends(46.158391, -48.647689, 184, 20));
    assertThat(slow).hasSize(20);
    for (int i = 0; i < 20; i++) {
      assertThat(slow.get(i).path("doubtful").asText("none")).isEqualTo(i == 15 ? "slow" : "none");
    }
  }

  private JsonNode passes(Path file, Position[] ends) throws IOException {
    String across =
        "--gate=%s,%s,%s,%s"
            .formatted(
                ends[0].latitude(), ends[0].longitude(), ends[1].latitude(), ends[1].longitude());
    CommandLineSession.Ran ran = line.run("passes", file.toString(), across, "--json");
    assertThat(ran.code()).as(ran.err()).isZero();
    return new ObjectMapper().readTree(ran.out()).path("passes");
  }

  @Test
  void linesSayTimesWithTheRecordersOwnUncertainty() {
    CommandLineSession.Ran ran = line.run("passes", track.toString(), gate);
    assertThat(ran.code()).isZero();
    assertThat(ran.out())
        .contains("1,387 points, usually 1.0 s apart.")
        .containsPattern("2022-03-20 12:53:00\\.\\d\\d UTC, right to left, ± 0\\.\\d s")
        .contains("13 laps:", "lap 1: 1:53.1");
  }

  @Test
  void severalGatesGiveSectors() {
    Position[] middle = Tracks.ends(28.18492, -128.102175, 296, 15);
    String again =
        "--gate=%s,%s,%s,%s"
            .formatted(
                middle[1].latitude(),
                middle[1].longitude(),
                middle[0].latitude(),
                middle[0].longitude());
    CommandLineSession.Ran ran = line.run("passes", track.toString(), gate, again);
    assertThat(ran.code()).isZero();
    assertThat(ran.out()).contains("gate 1: ", "gate 2: ", "right to left", "left to right");
  }

  /**
   * Rounds of 40 s, a gap right before the first and one on the second; the last takes twice as
   * long.
   */
  @Test
  void whatMakesALapDoubtfulIsSaidOfIt() throws IOException {
    StringBuilder gpx = new StringBuilder("<gpx version=\"1.1\" creator=\"x\"><trk><trkseg>");
    int[][] stretches = {{0, 10}, {16, 85}, {92, 225}};
    for (int[] stretch : stretches) {
      for (int second = stretch[0]; second <= stretch[1]; second++) {
        double round = 2 * Math.PI * (second - 140) / (second < 140 ? 40.0 : 80.0);
        gpx.append(
            "<trkpt lat=\"%.7f\" lon=\"%.7f\"><time>2026-05-02T12:%02d:%02dZ</time></trkpt>"
                .formatted(
                    0.0003 * Math.sin(round), 0.0003 * Math.cos(round), second / 60, second % 60));
      }
    }
    Path rounds =
        Files.writeString(folder.resolve("rounds.gpx"), gpx.append("</trkseg></trk></gpx>"));
    CommandLineSession.Ran ran = line.run("passes", rounds.toString(), "--gate=0,0.0002,0,0.0004");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out().lines().filter(said -> said.startsWith("lap ")))
        .containsExactly(
            "lap 1: 0:40.00; doubtful: one of its passes lies near a gap",
            "lap 2: 0:40.00; nothing was recorded for 7 s on it",
            "lap 3: 0:40.00",
            "lap 4: 1:20.00; so long that it may be two laps: was a pass missed?");
  }

  @Test
  void aGateThatIsFarTooWideIsRefusedWithBothWidths() {
    CommandLineSession.Ran ran = line.run("passes", track.toString(), "--gate=1,2,3,4");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).containsPattern("lie 313,\\d{3} m apart, and a gate may be 2,000 m wide");
  }

  @Test
  void aGateThatTheTrackNeverMeetsIsSaid() {
    CommandLineSession.Ran ran = line.run("passes", track.toString(), "--gate=1,2,1.001,2");
    assertThat(ran.code()).isZero();
    assertThat(ran.out()).contains("the track never goes through this gate");
  }

  @Test
  void whatCannotBeReadIsRefusedInOneSentenceWithExitCode2() throws IOException {
    Path broken = Files.writeString(folder.resolve("broken.gpx"), "<gpx><trk>");
    for (String[] typed :
        new String[][] {
          {broken.toString(), gate},
          {track.toString(), "--gate=1,2,3"},
          {track.toString(), "--gate=1,2,3,east"},
          {track.toString(), "--gate=91,2,3,4"},
          {track.toString(), "--gate=1,2,1,2"},
          {track.toString(), "--gate=47.1,11.3,11.3001,47.1"}
        }) {
      CommandLineSession.Ran ran = line.run("passes", typed[0], typed[1]);
      assertThat(ran.code()).as(typed[1]).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err().strip()).hasLineCount(1).contains("Nothing was read");
    }
    for (String refused :
        new String[] {
          "t19_not_well_formed.tcx", "t20_all_times_equal.gpx", "t21_duplicate_times.tcx"
        }) {
      Path file = Files.write(folder.resolve(refused), Tracks.bytes(refused));
      CommandLineSession.Ran ran = line.run("passes", file.toString(), gate, "--json");
      assertThat(ran.code()).as(refused).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err().strip()).hasLineCount(1).contains(refused, "Nothing was read");
    }
    CommandLineSession.Ran missing = line.run("passes", folder.resolve("nothing").toString(), gate);
    assertThat(missing.code()).isEqualTo(ExitCode.FILE_TROUBLE);
  }
}
