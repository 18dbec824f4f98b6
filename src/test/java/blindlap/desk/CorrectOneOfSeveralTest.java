package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.session.day.LapState;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whoever corrects one value of a lap of several measures corrects that one. */
class CorrectOneOfSeveralTest {
  @TempDir Path folder;
  private TestDay day;
  private LapFiles files;

  @BeforeEach
  void aLapOfTwoValues() {
    day = new TestDay(folder, TestDay.EIGHT, 2);
    files = new LapFiles(day.desk().sessions());
    record("lap;lap time;trust\n1;95.1;6\n");
  }

  @AfterEach
  void close() {
    day.close();
  }

  private void record(String text) {
    assertThat(files.record(day.state(), text.getBytes(StandardCharsets.UTF_8)))
        .isInstanceOf(Sessions.Result.Done.class);
  }

  private LapState lap() {
    return day.state().laps().iterator().next();
  }

  private void correct(String text) {
    assertThat(files.correct(day.state(), text.getBytes(StandardCharsets.UTF_8), "misread"))
        .isInstanceOf(Sessions.Result.Done.class);
  }

  @Test
  void oneValueCorrectedLeavesTheOthersOfItsLap() {
    assertThat(files.correct(day.state(), "1", "lap time", "94.2", "misread"))
        .isInstanceOf(Sessions.Result.Done.class);
    assertThat(lap().values().get("lap time")).isEqualByComparingTo("94.2");
    assertThat(lap().values().get("trust")).isEqualByComparingTo("6");
  }

  @Test
  void aFileWithoutAColumnLeavesItsValuesAndAnEmptyCellTakesItsValueOut() {
    correct("lap;trust\n1;5\n");
    assertThat(lap().values().get("lap time")).isEqualByComparingTo("95.1");
    assertThat(lap().values().get("trust")).isEqualByComparingTo("5");
    correct("lap;lap time;trust\n1;95.1;\n");
    assertThat(lap().values()).containsOnlyKeys("lap time");
  }
}
