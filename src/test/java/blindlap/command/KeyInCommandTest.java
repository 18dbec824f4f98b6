package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Paper that was typed twice, into two files. */
class KeyInCommandTest {
  private static final String HEAD = "lap;lap time;grip;guess;void;note\n";

  private @TempDir(factory = RamFolder.class) Path folder;
  private CommandLineSession day;
  private String session = "";

  @BeforeEach
  void commit() throws Exception {
    day = new CommandLineSession(folder);
    session = day.commit(Plans.SMALL);
  }

  private CommandLineSession.Ran keyIn(String first, String second) throws Exception {
    return day.run(
        "key-in",
        session,
        day.file("first.csv", HEAD + first).toString(),
        day.file("second.csv", HEAD + second).toString());
  }

  private String exported() throws Exception {
    Path out = folder.resolve("out");
    assertThat(day.run("close-day", session).code()).isZero();
    assertThat(day.run("export", session, "--out", out.toString()).code()).isZero();
    return Files.readString(out.resolve("laps.csv"));
  }

  @Test
  void twoFilesThatAgreeAreRecordedInMillimetresAndMissingAnswersStayMissing() throws Exception {
    CommandLineSession.Ran ran =
        keyIn("1;1:33.1;62;A;;\n2;1:34.0;;;;\n", "1;93.1;62.0;A;;\n2;1:34;;;;\n");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("Both agree");
    List<String> laps = exported().lines().toList();
    assertThat(laps).anySatisfy(line -> assertThat(line).contains("93.1").contains("62"));
    assertThat(laps).filteredOn(line -> line.contains("94")).hasSize(1);
  }

  @Test
  void whoTimedOrScoredKnowingTheKeyIsRecordedWithThePaperAndAnUnknownMeasureIsRefused()
      throws Exception {
    String one = day.file("first.csv", HEAD + "1;93;62;A;;\n2;94;;;;\n").toString();
    CommandLineSession.Ran wrong = day.run("key-in", session, one, one, "--knows-key", "gripp");
    assertThat(wrong.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(wrong.err())
        .contains(
            "No measure of this session is called \"gripp\". Its measures are: lap time, grip.");
    CommandLineSession.Ran ran =
        day.run("key-in", session, one, one, "--knows-key", "grip", "--knows-key", "lap time");
    assertThat(ran.code()).as(ran.err()).isZero();
    // Two laps, three values, a guess; two deviations of the times and one of the score.
    assertThat(ran.out()).contains("Saved 9 entries");
  }

  @Test
  void aDifferenceIsNamedWithBothValuesAndNothingIsRecorded() throws Exception {
    CommandLineSession.Ran ran = keyIn("1;1:33.1;62;A;;\n", "1;1:33.1;26;A;;\n");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err())
        .contains("Lap 1, grip: first \"62\", then \"26\".")
        .contains("Nothing was recorded");
    assertThat(keyIn("1;1:33.1;62;A;;\n", "1;1:33.1;62;A;;\n").code())
        .as("lap 1 was not recorded before")
        .isZero();
  }

  @Test
  void aLapThatOnlyOneFileHasIsADifference() throws Exception {
    CommandLineSession.Ran ran = keyIn("1;1:33.1;62;A;;\n2;1:34.0;50;A;;\n", "1;1:33.1;62;A;;\n");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("Lap 2, grip");
  }

  @Test
  void aValueBeyondTheHundredMillimetresIsRefusedWithItsLine() throws Exception {
    CommandLineSession.Ran ran = keyIn("1;1:33.1;162;A;;\n", "1;1:33.1;162;A;;\n");
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("grip").contains("100");
  }

  @Test
  void theEmptyTableCanBeFilledInAndReadBack() throws Exception {
    Path form = folder.resolve("form.csv");
    assertThat(day.run("key-in", session, "--form", form.toString()).code()).isZero();
    List<String> lines = Files.readAllLines(form);
    assertThat(lines.get(0)).startsWith("lap;code;lap time;grip");
    assertThat(lines).hasSize(9);
    assertThat(lines.get(0)).endsWith("guess;sureness;cue;void;note;wind;surface;light;traffic");
    String code = lines.get(1).split(";")[1];
    String row = "1;" + code + ";1:33.1;62;A;hunch;brakes;;;still;dry;;none\n";
    String filled = lines.get(0) + "\n" + row;
    CommandLineSession.Ran ran =
        day.run(
            "key-in",
            session,
            day.file("one.csv", filled).toString(),
            day.file("two.csv", filled).toString());
    assertThat(ran.code()).as(ran.err()).isZero();
  }

  @Test
  void oneFileAloneIsNotEnough() throws Exception {
    CommandLineSession.Ran ran =
        day.run("key-in", session, day.file("one.csv", HEAD + "1;93;62;A;;\n").toString());
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err()).contains("Two files are needed");
  }
}
