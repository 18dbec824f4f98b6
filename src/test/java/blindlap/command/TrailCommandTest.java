package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.QuarryTrail;
import blindlap.exchange.TrailFile;
import blindlap.sample.ScoutingLap;
import blindlap.session.Hash;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Trails by command: made from a lap, shown, written, read. */
class TrailCommandTest {
  @TempDir Path folder;
  private CommandLineSession line;
  private String lap;

  @BeforeEach
  void aRecordedLap() throws IOException {
    line = new CommandLineSession(folder);
    Path file = folder.resolve("lap.gpx");
    Files.write(file, ScoutingLap.alone());
    lap = file.toString();
  }

  private CommandLineSession.Ran made(String... more) {
    String[] all = new String[6 + more.length];
    System.arraycopy(
        new String[] {
          "trail",
          "Quarry loop",
          "--from=" + lap,
          "--start=Gate post=60",
          "--finish=Ford=740.5",
          "--split=Bridge=400"
        },
        0,
        all,
        0,
        6);
    System.arraycopy(more, 0, all, 6, more.length);
    return line.run(all);
  }

  @Test
  void aTrailIsMadeFromOneLapAndShown() {
    assertThat(line.run("trail").out()).startsWith("The trail book is empty.");
    CommandLineSession.Ran ran = made();
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("Quarry loop, version 1, is kept.")
        .contains("start Gate post: at 60 m, 24 m wide")
        .contains("split Bridge: at 400 m")
        .contains("finish Ford: at 740.5 m")
        .containsPattern("Gate post to Bridge: 340 m, .*on the lap that the line was recorded on")
        .containsPattern("At Gate post and at Ford, to about 0\\.\\d s a lap")
        .contains("write trail_version: {number: 1} into one, with trail: Quarry loop");
    assertThat(made().out()).contains("version 1, has the same text and was kept before");
    assertThat(made("--width=30").out()).contains("Quarry loop, version 2, is kept.");
    assertThat(line.run("trail").out()).contains("Quarry loop: 2 versions, the last of ");
    assertThat(line.run("trail", "Quarry loop").out()).contains("30 m wide");
    assertThat(line.run("trail", "Quarry loop", "--trail-version=1").out()).contains("24 m wide");
  }

  @Test
  void theFileThatIsWrittenHasTheHashThatPlansHoldAndIsReadBackAsTheSameVersion()
      throws IOException {
    made();
    Path file = folder.resolve("trail.json");
    assertThat(line.run("trail", "Quarry loop", "--geojson", file.toString()).code()).isZero();
    String hash = Hash.of(Files.readAllBytes(file)).hex();
    assertThat(line.run("trail", "Quarry loop").out()).contains(hash);
    assertThat(line.run("trail", "--read", file.toString()).out())
        .contains("version 1, has the same text");
    assertThat(line.run("trail", "Ridge", "--read", file.toString()).out())
        .contains("Ridge, version 1, is kept.");
  }

  @Test
  void aVersionThatNoPlanUsesSaysHowAPlanWould() {
    line.run(
        "trail", "--read", line.file("t.json", TrailFile.text(QuarryTrail.trail())).toString());
    assertThat(line.run("trail", "Quarry loop").out())
        .contains("No plan is timed on this version yet")
        .contains("Bridge to Ford: 270 m, ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--finish=Ford=9000 | the line is 8",
        "--finish=Ford=10 | which is not between start and finish",
        "--finish=Ford | a name, an equals sign and metres are wanted",
        "--finish=Ford=far | \"far\" is no number",
        "--finish=Gate post=700 | Two gates are called Gate post",
        "--width=0 | a gate is between 1 m and 200 m wide",
        "--lap=5 | two numbers of seconds with a comma",
        "--lap=9000,9999 | holds no way: it ends at second",
      })
  void whatCannotBeIsSaidInOneSentenceAndNothingIsKept(String option, String said) {
    boolean finish = option.startsWith("--finish");
    CommandLineSession.Ran ran =
        line.run(
            "trail",
            "Quarry loop",
            "--from=" + lap,
            "--start=Gate post=60",
            finish ? option : "--finish=Ford=740",
            finish ? "--split=Bridge=400" : option);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains(said).contains("Nothing was kept").doesNotContain("Exception");
    assertThat(line.run("trail").out()).startsWith("The trail book is empty.");
  }

  @Test
  void severalLapsAreNotDrawnOrKept() throws IOException {
    Files.write(Path.of(lap), ScoutingLap.twice(300));
    CommandLineSession.Ran ran = made();
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("the recorder rested").doesNotContain("300");
    assertThat(made("--lap=0,130").code()).isZero();
  }

  @Test
  void aTrailThatIsNotThereIsSaidWithThoseThatAre() {
    made();
    CommandLineSession.Ran ran = line.run("trail", "Ridge");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("no trail \"Ridge\"").contains("There are: Quarry loop.");
    assertThat(line.run("trail", "Quarry loop", "--trail-version=7").err())
        .contains("no version 7");
    assertThat(line.run("trail", "--start=A=1").err()).contains("belong to --from FILE");
  }

  @Test
  void aNotebookThatIsBroughtInBringsItsTrailsAndSaysSo() throws IOException {
    made();
    Path other = Files.move(line.notebook, folder.resolve("other.blindlap"));
    CommandLineSession.Ran ran = line.run("bring-in", other.toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("other.blindlap: 1 new version of trails in the trail book.");
    assertThat(line.run("trail", "Quarry loop").out()).contains("version 1 of 1");
  }
}
