package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.QuarryTrack;
import blindlap.desk.SetClock;
import blindlap.exchange.QuarryTrail;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A recording on the command line: what is shown, asked, refused and kept. */
class RecordingCommandTest {
  @TempDir Path folder;

  private CommandLineSession day(String plan, int laps) {
    CommandLineSession day = new CommandLineSession(folder);
    try (Desk desk = day.setting().opener().open(day.notebook)) {
      desk.notebook().trails().keep(QuarryTrail.trail(), Instant.parse("2026-11-01T08:00:00Z"));
    }
    String id = day.commit(plan);
    if (laps > 0) {
      String file = day.file("laps.csv", Plans.laps(laps)).toString();
      assertThat(day.run("record", id, file).code()).isZero();
    }
    return day;
  }

  private String recording(String name, int laps, int extraAfter) {
    QuarryTrack track =
        new QuarryTrack(new SetClock(Instant.parse("2026-11-14T08:00:00Z")), Duration.ZERO);
    for (int lap = 1; lap <= laps; lap++) {
      track.aside(0.01, 500 + 10 * lap, 5).ride(lap == 3 ? 100 : 0, 700, 6);
      if (lap == extraAfter) {
        track.aside(0.01, 300, 5).ride(0, 700, 5);
      }
    }
    Path file = folder.resolve(name);
    try {
      return Files.write(file, track.gpx()).toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String withTrail() {
    return Plans.SMALL + QuarryTrack.ofPlan();
  }

  @Test
  void theTableNamesEveryLapItsTimeAndItsPassAndNoTimeOfDay() {
    CommandLineSession day = day(withTrail(), 8);
    CommandLineSession.Ran ran =
        day.run("recording", "latest", recording("q.gpx", 8, 0), "--settle=3=keep");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("By the gates of Quarry loop, version 1.")
        .containsPattern("(?m)^  1 +\\d{3}  1:53\\.3 ± 0\\.6     1  one pass fits$")
        .containsPattern("(?m)^  3 +\\d{3} +–     3  kept: not through Gate post$")
        .contains("All 8 laps have their pass in the recording, and nothing waits for you.")
        .contains("Taken in from q.gpx: the times of 8 laps.")
        .contains("Leave it with helper or starter")
        .doesNotContainPattern("\\d\\d:\\d\\d:\\d\\d|2026-11");
    CommandLineSession.Ran again =
        day.run("recording", "latest", folder.resolve("q.gpx").toString(), "--settle=3=keep");
    assertThat(again.code()).isEqualTo(2);
    assertThat(again.err()).contains("was brought in already and says the same");
  }

  @Test
  void whatWaitsIsAskedAndWithoutAnAnswerNothingIsKept() {
    CommandLineSession day = day(withTrail(), 8);
    String file = recording("q.gpx", 8, 5);
    day.answers.add("");
    CommandLineSession.Ran open = day.run("recording", "latest", file);
    assertThat(open.code()).isEqualTo(2);
    assertThat(open.err()).contains("wait for a person").contains("Nothing was kept");
    // What is only proposed is no lap's pass yet.
    assertThat(open.out())
        .contains("Answer with --settle")
        .contains("0 of 8 laps have their pass in the recording; 9 passes wait for you.");
    String session = day.run("notebook").out();
    day.answers.clear();
    // Without clocks one pass too many leaves all open; that it is none leaves the rest in order.
    day.answers.addAll(List.of("perhaps", "keep", "keep", "keep", "keep", "keep", "none"));
    CommandLineSession.Ran ran = day.run("recording", "latest", file, "--no-positions");
    assertThat(ran.code()).as(ran.out() + ran.err()).isZero();
    assertThat(ran.err()).contains("\"perhaps\" is not an answer");
    assertThat(ran.out()).contains("the times of 8 laps", "No positions are kept.");
    assertThat(session).isEqualTo(day.run("notebook").out());
  }

  @Test
  void refusalsAreOneSentenceThatSaysThatNothingWasKept() throws IOException {
    CommandLineSession day = day(Plans.SMALL, 8);
    String file = recording("q.gpx", 8, 0);
    refused(
        day, "no version 4 of the trail \"Quarry loop\"; it has: 1.", file, "--trail-version=4");
    refused(day, "no trail \"Mill\"; it has: Quarry loop.", file, "--trail=Mill");
    refused(day, "is not an answer", file, "--settle=3:keep");
    refused(day, "no pass 77", file, "--settle=77=keep");
    refused(day, "Pass 1 fits its lap without doubt", file, "--settle=1=out");
    refused(day, "fits its lap without doubt", file, "--settle=2=none");
    refused(day, "about the passes of one file", file, file, "--settle=1=keep");
    Path text = Files.writeString(folder.resolve("notes.gpx"), "no track at all");
    refused(day, "GPX", text.toString());
    CommandLineSession.Ran gone = day.run("recording", "latest", folder + "/none.gpx");
    assertThat(gone.code()).isEqualTo(3);
    CommandLineSession.Ran ran = day.run("recording", "latest", file, "--settle=3=out");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("exploratory", "the times of 7 laps");
  }

  private static void refused(CommandLineSession day, String why, String... more) {
    String[] typed = new String[more.length + 2];
    typed[0] = "recording";
    typed[1] = "latest";
    System.arraycopy(more, 0, typed, 2, more.length);
    CommandLineSession.Ran ran = day.run(typed);
    assertThat(ran.code()).as(why + ran.out()).isEqualTo(2);
    assertThat(ran.err()).contains(why);
    assertThat(ran.err().strip().lines()).hasSize(1);
  }

  @Test
  void aSectorAloneCanBeVoidAndThatIsTakenBack() {
    CommandLineSession day = day(withTrail(), 6);
    CommandLineSession.Ran ran =
        day.run("void", "latest", "4", "--from=Bridge", "--to=Ford", "--reason=traffic");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("The sector from Bridge to Ford of lap 4 is void");
    assertThat(day.run("void", "latest", "4", "--from=Bridge", "--to=Ford", "--reason=traffic"))
        .matches(twice -> twice.code() == 2 && twice.err().contains("already void"));
    assertThat(day.run("void", "latest", "4", "--from=Bridge", "--to=Gate", "--reason=traffic"))
        .matches(no -> no.code() == 2 && no.err().contains("Rock garden to Bridge"));
    assertThat(day.run("void", "latest", "7", "--from=Bridge", "--to=Ford", "--reason=traffic"))
        .matches(no -> no.code() == 2 && no.err().contains("Lap 7 has not been recorded"));
    assertThat(day.run("void", "latest", "4", "--from=Bridge", "--to=Ford", "--reason=slow"))
        .matches(no -> no.code() == 2 && no.err().contains("not an event"));
    assertThat(day.run("void", "latest", "4", "--from=Bridge", "--reason=traffic"))
        .matches(
            no ->
                no.code() == 2
                    && no.err().contains("blindlap void needs --from GATE and --to GATE."));
    CommandLineSession.Ran back =
        day.run(
            "void", "latest", "4", "--from=Bridge", "--to=Ford", "--withdraw", "--reason=lap 5");
    assertThat(back.out()).contains("of lap 4 counts again");
    assertThat(
            day.run("void", "latest", "4", "--from=Bridge", "--to=Ford", "--withdraw", "--reason=x")
                .err())
        .contains("is not void");
  }
}
