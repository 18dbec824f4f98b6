package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.wording.day.Problems;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A cell that no correction changes is refused where it says something else, never passed over. */
class UncorrectedCellsTest {
  private static final String HEAD = "lap,lap time,guess,sureness,cue,wind,void,note\n";
  private static final String RIDDEN = "1,90,Shock K,hunch,a click,calm,traffic,slow\n";

  @TempDir Path folder;

  private static Sessions.Result correct(TestDay day, String row) {
    byte[] file = (HEAD + row).getBytes(StandardCharsets.UTF_8);
    return new LapFiles(day.desk().sessions()).correct(day.state(), file, "typing error");
  }

  private TestDay ridden() {
    TestDay day = new TestDay(folder, TestDay.EIGHT, 3);
    byte[] file = (HEAD + RIDDEN).getBytes(StandardCharsets.UTF_8);
    assertThat(new LapFiles(day.desk().sessions()).record(day.state(), file))
        .isInstanceOf(Sessions.Result.Done.class);
    return day;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "guess|1,91,Shock L,hunch,a click,calm,traffic,slow",
        "guess|1,91,-,,,,,",
        "sureness|1,91,,certain,,,,",
        "cue|1,91,,,a sound,,,",
        "wind|1,91,,,,gusty,,",
        "void|1,91,,,,,crash,",
      })
  void oneThatSaysSomethingElseRefusesTheWholeRow(String column, String row) {
    try (TestDay day = ridden()) {
      List<?> before = List.copyOf(day.state().laps());

      Sessions.Result result = correct(day, row + "\n");

      assertThat(result).isInstanceOf(Sessions.Result.Refused.class);
      assertThat(((Sessions.Result.Refused) result).problems())
          .extracting(Problems::sentence)
          .containsExactly(
              "Line 2: \""
                  + column
                  + "\" of lap 1 is not what is recorded, and a correction changes values,"
                  + " covariates and notes only. Nothing was changed; leave that cell empty, and"
                  + " write what happened as a note.");
      assertThat(List.copyOf(day.state().laps())).isEqualTo(before);
    }
  }

  @Test
  void theWholeRowAsItIsRecordedChangesTheValueThatDiffers() {
    try (TestDay day = ridden()) {
      Sessions.Result result = correct(day, RIDDEN.replace("90", "91").replace("Shock K", "A"));

      assertThat(result).isInstanceOf(Sessions.Result.Done.class);
      assertThat(day.state().corrections())
          .extracting(each -> each.measure())
          .containsExactly("lap time");
    }
  }
}
