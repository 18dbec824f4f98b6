package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.MistakeLog;
import blindlap.session.NotebookFiles;
import blindlap.store.SqliteFiles;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What comes in at the command line, and what nobody foresaw. */
class DoorTest {
  @TempDir Path folder;

  private CommandLineSession.Ran broken(RuntimeException why, Path log) {
    NotebookFiles files = new SqliteFiles(Clock.systemUTC(), () -> new byte[16]);
    CommandSetting setting =
        new CommandSetting(
            file -> {
              throw why;
            },
            (file, clock, sources, ids) -> {
              throw why;
            },
            folder.resolve("own.blindlap"),
            new ConsoleTerminal(),
            files,
            file -> false,
            desk -> {
              throw why;
            },
            new MistakeLog(log, Clock.systemUTC(), "0"));
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        Blindlap.run(setting, new PrintWriter(out), new PrintWriter(err), "review", "latest");
    return new CommandLineSession.Ran(code, out.toString(), err.toString());
  }

  @Test
  void whatNobodyForesawIsOneSentenceAndItsLogQuotesNothing() throws IOException {
    Path log = folder.resolve("new folder/mistakes.log");
    RuntimeException why =
        new IllegalStateException("order ABBA", new IllegalArgumentException("six secret words"));

    CommandLineSession.Ran ran = broken(why, log);

    assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(ran.err().lines().toList())
        .singleElement()
        .asString()
        .startsWith("The program has made a mistake")
        .contains("kept", log.toString())
        .doesNotContain("Exception", "ABBA", "secret");
    assertThat(Files.readString(log))
        .contains("IllegalStateException", "IllegalArgumentException", "blindlap.command.DoorTest")
        .doesNotContain("ABBA", "secret");
  }

  @Test
  void whereNoLogCanBeWrittenTheSentenceIsSaidAllTheSame() throws IOException {
    Path file = Files.writeString(folder.resolve("a file"), "");
    CommandLineSession.Ran ran = broken(new NullPointerException(), file.resolve("mistakes.log"));
    assertThat(ran.err())
        .startsWith("The program has made a mistake")
        .doesNotContain("mistakes.log");
    assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
  }

  @Test
  void aMistypedNotebookIsNotBegunInSilence() {
    CommandLineSession day = new CommandLineSession(folder);
    day.display = true;
    Path typo = folder.resolve("tset.blindlap");
    for (String[] typed :
        new String[][] {
          {"notebook", "--notebook", typo.toString()},
          {"review", "latest", "--notebook", typo.toString()},
          {"--notebook", typo.toString()}
        }) {
      CommandLineSession.Ran ran = day.run(typed);
      assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
      assertThat(ran.err()).contains("There is no notebook " + typo, "none was made", "--new");
    }
    assertThat(typo).doesNotExist();
    assertThat(day.windows).isEmpty();

    assertThat(day.run("notebook", "--new", "--notebook", typo.toString()).code()).isZero();
    assertThat(typo).exists();
    assertThat(day.run("notebook", "--notebook", typo.toString()).out()).contains("empty");
  }

  @Test
  void aFolderInPlaceOfAFileIsCalledAFolder() {
    CommandLineSession day = new CommandLineSession(folder);
    CommandLineSession.Ran ran = day.run("plan", folder.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.FILE_TROUBLE);
    assertThat(ran.err()).contains(folder + " is a folder, where a file is wanted.");
  }

  @Test
  void aLatinPlanIsRefusedAndNotMangled() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    byte[] latin = Plans.SMALL.replace("Quarry", "Güte").getBytes(StandardCharsets.ISO_8859_1);
    Path file = Files.write(folder.resolve("latin.yaml"), latin);
    for (String command : new String[] {"plan", "commit"}) {
      CommandLineSession.Ran ran = day.run(command, file.toString());
      assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.err()).contains(file + ": The file is not UTF-8 text. Nothing was changed;");
    }
  }

  @Test
  void filesAreRefusedByTheirSizeBeforeTheyAreRead() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    Path plan = day.file("plan.yaml", " ".repeat(1_000_001));
    Path laps = day.file("laps.csv", "1".repeat(10_000_001));

    CommandLineSession.Ran planned = day.run("plan", plan.toString());
    CommandLineSession.Ran recorded = day.run("record", session, laps.toString());

    assertThat(planned.err())
        .contains("The file holds 1,000,001 bytes, but at most 1,000,000 are read");
    assertThat(recorded.err()).contains("holds 10,000,001 bytes, but at most 10,000,000 are read");
    assertThat(planned.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(recorded.code()).isEqualTo(ExitCode.BAD_INPUT);
  }

  @Test
  void ofManyMistakesTheFirstTwentyAreToldAndTheOthersCounted() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    Path laps = day.file("laps.csv", "lap;lap time\n" + "x;1\n".repeat(12_365));

    CommandLineSession.Ran ran = day.run("record", session, laps.toString());

    assertThat(ran.err().lines()).hasSize(21);
    assertThat(ran.err()).contains("Line 21: ", "And 12,345 more like these");
  }

  @Test
  void moreRowsThanAnyoneRidesAreRefusedWhileTheyAreRead() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    Path laps = day.file("laps.csv", "lap;lap time\n" + "1;1\n".repeat(200_000));
    assertThat(day.run("record", session, laps.toString()).err())
        .contains("it holds more than 100,000 rows");
  }

  @Test
  void nothingThatATerminalActsOnIsPrinted() {
    CommandLineSession day = new CommandLineSession(folder);
    CommandLineSession.Ran ran = day.run("review", "\u001B[2J\u202E");
    assertThat(ran.err()).contains("\"␛[2J‹U+202E›\"").doesNotContain("\u001B", "\u202E");
  }

  @Test
  void aNoteWithAControlCharacterIsNamedWithItsPlace() {
    CommandLineSession day = new CommandLineSession(folder);
    String session = day.commit(Plans.SMALL);
    Path laps = day.file("laps.csv", "lap;lap time;note\n1;90;a\u0007b\n");
    CommandLineSession.Ran ran = day.run("record", session, laps.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err())
        .contains(
            "Line 2, column 3: This text holds a control character (U+0007) as its character 2");
  }
}
