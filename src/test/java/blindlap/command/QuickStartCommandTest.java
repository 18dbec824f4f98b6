package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page for a helper who has never seen the program, written without and with a session. */
class QuickStartCommandTest {
  private @TempDir(factory = RamFolder.class) Path folder;
  private CommandLineSession day;

  @BeforeEach
  void line() {
    day = new CommandLineSession(folder);
  }

  private Stream<String> written(Path where) throws IOException {
    try (Stream<Path> files = Files.list(where)) {
      return files.map(file -> String.valueOf(file.getFileName())).toList().stream();
    }
  }

  @Test
  void itNeedsNoSessionAndNoNotebook() throws IOException {
    Path out = folder.resolve("paper");
    CommandLineSession.Ran ran = day.run("sheets", "--quick-start", "--out", out.toString());

    assertThat(ran.code()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(written(out)).containsExactly("quick-start.pdf");
    assertThat(ran.out()).contains("quick-start.pdf", "The rider may stop at any time");
    assertThat(day.notebook).doesNotExist();
  }

  @Test
  void itLiesBesideTheSheetsOfASession() throws IOException {
    String id = day.commit(Plans.SMALL);
    Path out = folder.resolve("paper");
    CommandLineSession.Ran ran = day.run("sheets", id, "--quick-start", "--out", out.toString());

    assertThat(ran.code()).as(ran.err()).isEqualTo(ExitCode.DONE);
    assertThat(written(out)).contains("quick-start.pdf", "score-sheets.pdf", "timetable.pdf");
  }

  @Test
  void everythingElseNeedsASession() {
    Path out = folder.resolve("paper");
    for (String[] typed :
        new String[][] {
          {"sheets", "--out", out.toString()},
          {"sheets", "--quick-start", "--helper", "--out", out.toString()}
        }) {
      CommandLineSession.Ran ran = day.run(typed);
      assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.err()).startsWith("blindlap sheets needs SESSION. Nothing was done;");
      assertThat(out).doesNotExist();
    }
  }
}
