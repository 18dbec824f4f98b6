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

  @Test
  void linesSayTimesWithTheRecordersOwnUncertainty() {
    CommandLineSession.Ran ran = line.run("passes", track.toString(), gate);
    assertThat(ran.code()).isZero();
    assertThat(ran.out())
        .contains("1387 points, usually 1.0 s apart.")
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
          {track.toString(), "--gate=1,2,1,2"}
        }) {
      CommandLineSession.Ran ran = line.run("passes", typed[0], typed[1]);
      assertThat(ran.code()).as(typed[1]).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err().strip()).hasLineCount(1).contains("Nothing was read");
    }
    CommandLineSession.Ran missing = line.run("passes", folder.resolve("nothing").toString(), gate);
    assertThat(missing.code()).isEqualTo(ExitCode.FILE_TROUBLE);
  }
}
