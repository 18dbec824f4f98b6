package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.fault.Unreadable;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Days;
import blindlap.review.Handling;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaitTableTest {
  private static final Plan PLAN = Days.plan(Rule.blocks(2, 8, 4), List.of(Days.lapTime()));

  private static Map<String, String> row() {
    return new HashMap<>(
        Map.of(
            "stint",
            "2",
            "wait",
            "431.5",
            "counts",
            "true",
            "real",
            "true",
            "took",
            "402",
            "given",
            "420",
            "mishap",
            "true",
            "words",
            "a bolt fell"));
  }

  @Test
  void aRowTellsWhatTookHowLongAndAnEmptyCellIsNotKnown() {
    Map<String, String> row = row();
    row.put("took", "");
    Handling handling = WaitTable.read(List.of(row), PLAN).get(2);
    assertThat(handling.waited()).isEqualByComparingTo(new BigDecimal("431.5"));
    assertThat(handling.took()).isNull();
    assertThat(handling.mishap()).isEqualTo("a bolt fell");
  }

  @ParameterizedTest
  @CsvSource({
    "wait, 1e999999999, NOT_A_NUMBER",
    "took, long, NOT_A_NUMBER",
    "given, -1e-999999, NOT_A_NUMBER",
    "stint, 99, NO_SUCH_STINT",
    "stint, -1, NO_SUCH_STINT",
    "stint, 1.5, NOT_A_NUMBER",
    "mishap, maybe, NOT_YES_OR_NO",
  })
  void aCellThatCannotBeMeantIsRefusedByItsColumn(String column, String cell, PackageFault fault) {
    Map<String, String> row = row();
    row.put(column, cell);
    assertThatThrownBy(() -> WaitTable.read(List.of(row), PLAN))
        .isInstanceOfSatisfying(
            Unreadable.class, e -> assertThat(e.problem().fault()).isEqualTo(fault));
  }

  @Test
  void aMissingColumnIsNamed() {
    Map<String, String> row = row();
    row.remove("given");
    assertThatThrownBy(() -> WaitTable.read(List.of(row), PLAN))
        .isInstanceOfSatisfying(
            Unreadable.class, e -> assertThat(e.problem().details()).containsExactly("given"));
  }
}
