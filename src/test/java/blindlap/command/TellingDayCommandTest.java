package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The day of a telling run on the command line: recorded, voided, ended early, closed. */
class TellingDayCommandTest {
  private static final String PLAN =
      """
      question: Can R. Lind feel three clicks?
      kind: telling run
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-28
      setups:
        - {name: 9 clicks, settings: [{name: compression, value: 9, unit: clicks}]}
        - {name: 6 clicks, settings: [{name: compression, value: 6, unit: clicks}]}
      telling_run: {task: duo-trio, trials: 6}
      laps: {warm_up: 0, settling: 0, scored: 1}
      blinding: {helper: M. Oster}
      """;

  @TempDir private Path folder;
  private CommandLineSession day;

  @BeforeEach
  void commit() throws IOException {
    day = new CommandLineSession(folder);
    String plan = day.file("plan.yaml", PLAN).toString();
    CommandLineSession.Ran ran = day.run("commit", "--yes", plan);
    assertThat(ran.code()).as(ran.err()).isZero();
    ran = record("lap,guess,sureness,void\n1,,,\n2,,,\n3,lap 2,hunch,\n4,,,traffic\n");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).contains("4 of 18 laps are recorded, 1 of them void.");
  }

  private CommandLineSession.Ran record(String table) throws IOException {
    return day.run("record", "latest", day.file("laps.csv", table).toString());
  }

  @Test
  void anAnswerNamesALapThatCanBePickedAndComesAfterAllLaps() throws IOException {
    CommandLineSession.Ran reference = record("lap,guess\n7,\n8,\n9,1\n");
    assertThat(reference.code()).isEqualTo(2);
    assertThat(reference.err()).contains("\"1\" names no lap that can be picked in a trial.");
    CommandLineSession.Ran early = record("lap,guess\n7,\n9,2\n");
    assertThat(early.code()).isEqualTo(2);
    assertThat(early.err()).contains("Trial 3 is not ridden to its end: lap 8 is missing.");
  }

  @Test
  void anAnswerOnRecordIsNotCorrectedAndNothingSaysThatItWas() throws IOException {
    String file = day.file("laps.csv", "lap,answer,sureness\n3,3,hunch\n").toString();
    CommandLineSession.Ran other =
        day.run("record", "latest", file, "--correct", "--reason", "typing error");
    assertThat(other.code()).isEqualTo(2);
    assertThat(other.err()).startsWith("Line 2: \"answer\" of lap 3 is not what is recorded");
    assertThat(other.out()).doesNotContain("Saved");
  }

  @Test
  void aVoidIsOfATrialAndComesBeforeItsAnswer() {
    CommandLineSession.Ran answered = day.run("void", "latest", "3", "--reason", "crash");
    assertThat(answered.code()).isEqualTo(2);
    assertThat(answered.err()).contains("Trial 1 was answered");
    CommandLineSession.Ran back = day.run("void", "latest", "4", "--reason", "typo", "--withdraw");
    assertThat(back.out()).contains("The void is taken back: trial 2 goes on.");
    CommandLineSession.Ran again = day.run("void", "latest", "4", "--reason", "crash");
    assertThat(again.out()).contains("Trial 2 is void and does not count");
  }

  @Test
  void endingSaysWhatIsAnsweredAndWhichTrialsAreNot() {
    CommandLineSession.Ran cut =
        day.run(
            "cut-short",
            "latest",
            "--after-stint",
            "4",
            "--reason",
            "rain",
            "--decided-by",
            "R. Lind");
    assertThat(cut.code()).as(cut.err()).isZero();
    assertThat(cut.out()).contains("The run ends here. 1 trial is answered and counts, too few");
    CommandLineSession.Ran closed = day.run("close-day", "latest", "--yes");
    assertThat(closed.code()).as(closed.err()).isZero();
    assertThat(closed.out()).contains("4 trials have no answer and do not count: 3, 4, 5, 6.");
  }
}
