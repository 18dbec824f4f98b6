package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.RecordedDay;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A review that is to be closed before the recording was brought in. */
class CloseWithoutRecordingTest {
  @TempDir Path folder;

  @Test
  void itIsRefusedOnceAndClosedWhereSomebodySaysSo() {
    CommandLineSession day = new CommandLineSession(folder);
    String id = day.commit(RecordedDay.PLAN);
    StringBuilder laps = new StringBuilder("lap;upper half\n");
    for (int lap = 1; lap <= 16; lap++) {
      laps.append(lap).append(";45,").append(lap % 7).append('\n');
    }
    assertThat(day.run("record", id, day.file("laps.csv", laps.toString()).toString()).code())
        .isZero();
    assertThat(day.run("close-day", id).out())
        .contains(
            "No recording has given \"lap time\" and \"upper half\" a time yet.",
            "with blindlap recording, before the review is closed");

    CommandLineSession.Ran refused = day.run("close-review", id);
    assertThat(refused.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(refused.err().strip())
        .isEqualTo(
            "No recording has given a time yet of: lap time, upper half. Once the review is closed"
                + " nothing can be added. Bring the recording in, or close without it"
                + " (--without-recording). Nothing was closed.");
    assertThat(day.run("close-review", id, "--without-recording").code()).isZero();
  }
}
