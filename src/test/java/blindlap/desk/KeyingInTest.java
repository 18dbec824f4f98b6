package blindlap.desk;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.day.DayResult;
import blindlap.desk.day.LapTable;
import blindlap.session.Fact;
import blindlap.session.day.Source;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeyingInTest {
  @TempDir Path folder;

  /** The table of a day with its first two laps typed. */
  private static LapTable typed(LapTable empty, String grip) {
    List<List<String>> rows = new ArrayList<>(empty.rows());
    for (int i = 0; i < 2; i++) {
      List<String> row = new ArrayList<>(rows.get(i));
      row.set(empty.columns().indexOf("lap time"), "1:3" + i + ".5");
      row.set(empty.columns().indexOf("grip in the rocks"), i == 0 ? grip : "71");
      row.set(empty.columns().indexOf("guess"), "A");
      row.set(empty.columns().indexOf("note"), "loose; \"dusty\"");
      rows.set(i, row);
    }
    return new LapTable(empty.columns(), rows);
  }

  @Test
  void theEmptyTableHasEveryLapInRiddenOrderWithItsCode() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      LapTable empty = LapTable.empty(day.state().day());

      assertThat(empty.rows()).hasSize(8);
      assertThat(empty.rows().stream().map(row -> Integer.valueOf(row.get(1))).toList())
          .isEqualTo(day.state().codes());
    }
  }

  @Test
  void aSlipInTheSecondTypingIsFoundWithItsPlaceAndBothValues() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      PaperKeying keying = day.desk().keyingIn();
      LapTable empty = LapTable.empty(day.state().day());

      List<LapTable.Difference> found = typed(empty, "45").differences(typed(empty, "54"));

      assertThat(found).hasSize(1);
      assertThat(found.get(0).lap()).isEqualTo("1");
      assertThat(found.get(0).heading()).isEqualTo("grip in the rocks");
      assertThat(found.get(0).first()).isEqualTo("45");
      assertThat(found.get(0).second()).isEqualTo("54");
      assertThat(typed(empty, "45").differences(typed(empty, "45,0"))).isEmpty();
    }
  }

  @Test
  void aSettledTableIsRecordedFromPaperAndEmptyRowsAreLeftOut() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      PaperKeying keying = day.desk().keyingIn();
      LapTable empty = LapTable.empty(day.state().day());
      LapTable first = typed(empty, "45");
      LapTable.Difference slip = first.differences(typed(empty, "54")).get(0);

      DayResult result = keying.record(day.state().day(), first.settled(slip, "46"), List.of());

      assertThat(result).isInstanceOf(DayResult.Done.class);
      assertThat(day.state().lapsRidden()).isEqualTo(2);
      assertThat(day.state().laps().iterator().next().values().get("grip in the rocks"))
          .isEqualByComparingTo("46");
      assertThat(day.state().laps().iterator().next().note()).isEqualTo("loose; \"dusty\"");
      assertThat(day.state().entries())
          .anyMatch(
              e ->
                  e.entry().fact() instanceof Fact.LapRidden ridden
                      && ridden.source() == Source.PAPER);
      // Six laps are not ridden; of the two that are, trust and more was left open.
      assertThat(LapTable.empty(day.state().day()).rows()).hasSize(8);
    }
  }

  @Test
  void aValueOffTheScaleIsRefusedAndNothingIsRecorded() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      PaperKeying keying = day.desk().keyingIn();

      DayResult result =
          keying.record(
              day.state().day(), typed(LapTable.empty(day.state().day()), "101"), List.of());

      assertThat(result).isInstanceOf(DayResult.Refused.class);
      assertThat(day.state().lapsRidden()).isZero();
    }
  }

  @Test
  void twoFilesThatDifferNameTheLapAndColumn() {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 2)) {
      PaperKeying keying = day.desk().keyingIn();
      LapTable empty = LapTable.empty(day.state().day());
      byte[] one = keying.csv(typed(empty, "45"));

      assertThat(keying.compare(day.state(), one, keying.csv(typed(empty, "54"))).found())
          .extracting(LapTable.Difference::heading)
          .containsExactly("grip in the rocks");
      assertThat(keying.compare(day.state(), one, one).found()).isEmpty();
    }
  }
}
