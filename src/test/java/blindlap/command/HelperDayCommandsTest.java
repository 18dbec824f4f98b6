package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A helper's day by commands: paper keyed in, a wrong fit noticed later, the day over. */
class HelperDayCommandsTest {
  @TempDir Path folder;
  private CommandLineSession day;
  private String id;

  @BeforeEach
  void committed() {
    day = new CommandLineSession(folder);
    id = day.commit(Plans.SMALL);
  }

  private String ok(String... typed) {
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.code()).as(ran.err()).isZero();
    return ran.out();
  }

  private String refused(String... typed) {
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.out()).isEmpty();
    assertThat(ran.err().strip().lines()).as(ran.err()).hasSize(1);
    return ran.err().strip();
  }

  /** What is said of answers that are refused; the notebook stays as it was. */
  private String answered(String... answers) {
    long before = changes();
    day.answers.addAll(List.of(answers));
    CommandLineSession.Ran ran = day.run("helper", id);
    day.answers.clear();
    assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).as(ran.err()).hasSize(1);
    assertThat(changes()).isEqualTo(before);
    return ran.err().strip();
  }

  private String paper(int from, int to) {
    StringBuilder typed = new StringBuilder("stint;fitted;safe: brakes;confirmed by\n");
    for (int stint = from; stint <= to; stint++) {
      typed.append(stint).append(";as scheduled;x;J. Ask\n");
    }
    return day.file("paper.csv", typed.toString()).toString();
  }

  private String setupOf(int stint) {
    return ok("helper", id)
        .lines()
        .filter(line -> line.matches(" +" + stint + " .*"))
        .findFirst()
        .orElseThrow();
  }

  private String other(int stint) {
    return setupOf(stint).matches(".*\\d  Shock K .*") ? "Shock L" : "Shock K";
  }

  @Test
  void aDayFromPaperToTheReport() throws IOException {
    assertThat(ok("catch-up", id, "--form", folder.resolve("form.csv").toString()))
        .contains("Empty table written");
    assertThat(Files.readString(folder.resolve("form.csv"))).contains("1;").doesNotContain("Shock");
    assertThat(ok("catch-up", id, paper(0, 4)))
        .contains("recorded: 5 stints. Without a record: 4.", "Delete");
    String fifth = setupOf(5);
    String wrong = other(4);
    day.answers.addAll(List.of("4", wrong, "The box was wrong."));
    assertThat(ok("helper", id)).contains("Kept, encrypted");
    assertThat(setupOf(4)).endsWith("; " + wrong + " was on");
    assertThat(setupOf(5).contains("real")).isEqualTo(!fifth.contains("real"));
    ok("catch-up", id, paper(5, 8));
    ok("record", id, day.file("laps.csv", Plans.laps(8)).toString());
    assertThat(ok("helper", id, "--day-over")).contains("The helper's day is closed.");
    ok("close-day", id);
    ok("close-review", id);
    assertThat(ok("unseal", id)).contains("Unsealed");
    String review = ok("review", id);
    assertThat(review)
        .contains("Wrongly fitted: stint 4.", "Stint 4: " + wrong + " was on, not")
        .contains("In words: The box was wrong.");
    Path report = folder.resolve("report");
    ok("report", id, "--out", report.toString());
    Path html;
    try (Stream<Path> written = Files.list(report)) {
      html = written.filter(file -> file.toString().endsWith(".html")).findFirst().orElseThrow();
    }
    assertThat(Files.readString(html))
        .contains("Stint 4: " + wrong + " was on, not")
        .contains("Stint 3, kept on paper: fitted as scheduled")
        .contains("of the safety list J. Ask confirmed on paper: brakes");
    Path out = folder.resolve("package");
    ok("export", id, "--out", out.toString());
    assertThat(Files.readString(out.resolve("record.csv")))
        .contains("fit_corrected,4", "on_paper,3");
    assertThat(ok("review", "--from", out.toString())).contains("Wrongly fitted: stint 4.");
  }

  @Test
  void whatIsWrongIsSaidInOneSentence() {
    ok("catch-up", id, paper(0, 2));
    assertThat(answered("3", "A", ""))
        .startsWith("Stint 3 has no record of the helper yet. Nothing was recorded;");
    assertThat(answered("third")).startsWith("\"third\" is not the number of a stint.");
    assertThat(answered("1", "Shock"))
        .startsWith("\"Shock\" is none of the setups (Shock K, Shock L), or begins several");
    assertThat(refused("catch-up", id))
        .startsWith("A table is needed: blindlap catch-up SESSION --form FILE");
    assertThat(refused("catch-up", id, paper(4, 5)))
        .startsWith("Stint 4 is out of turn: stint 3 is the next without a record,");
    assertThat(refused("helper", id, "--day-over"))
        .startsWith("The helper's day is not over: stint 3 has no record.");
    ok("catch-up", id, paper(3, 8));
    assertThat(refused("catch-up", id, paper(8, 8)))
        .startsWith("There is no stint to catch up with.");
    ok("helper", id, "--day-over");
    assertThat(refused("helper", id, "--day-over"))
        .startsWith("The record that closes the helper's day is already there");
    day.answers.addAll(List.of("1", "A", ""));
    assertThat(ok("helper", id)).as("nothing is asked any more").doesNotContain("Kept");
    day.answers.clear();
    ok("record", id, day.file("laps.csv", Plans.laps(8)).toString());
  }

  @Test
  void lookingAndCorrectingWriteTheSame() {
    ok("catch-up", id, paper(0, 2));
    long before = changes();
    String wrong = other(1);
    long looked = changes() - before;
    day.answers.addAll(List.of("1", wrong, "seen late"));
    assertThat(ok("helper", id)).contains("Kept");
    assertThat(looked).isPositive();
    assertThat(changes() - before).isEqualTo(2 * looked);
  }

  /** The file change counter of the SQLite format. */
  private long changes() {
    try {
      return ByteBuffer.wrap(Files.readAllBytes(day.notebook)).getInt(24);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
