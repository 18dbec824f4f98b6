package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import blindlap.fault.Unreadable;
import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Days;
import blindlap.review.Masks;
import blindlap.session.MasksRead;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MaskTableTest {
  private static final Plan PLAN =
      Days.at(BlindLevel.MASKED, Days.plan(Rule.blocks(2, 8, 4), List.of(Days.lapTime())));

  private static Map<String, byte[]> file(String rows) {
    String text = "label,setup,guess,read_from\n" + rows;
    return Map.of(MaskTable.FILE, text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void whatIsWrittenIsReadAgain() {
    for (Masks masks :
        List.of(
            new Masks(PLAN, List.of(0, 1), List.of(1, 0), Optional.of(MasksRead.From.MARKS)),
            new Masks(PLAN, List.of(), List.of(0, 1), Optional.of(MasksRead.From.PHRASE)),
            new Masks(PLAN, List.of(1, 0), List.of(), Optional.empty()))) {
      PackageTables tables = new PackageTables();
      MaskTable.write(tables, Optional.of(masks));
      assertThat(MaskTable.of(tables.files("a", "b", "c", root -> {}), PLAN)).contains(masks);
    }
  }

  @Test
  void aPackageWithoutTheTableHasNoLabels() {
    assertThat(MaskTable.of(Map.of(), PLAN)).isEmpty();
  }

  @Test
  void aNameThatIsNoSetupIsRefused() {
    assertThatThrownBy(() -> MaskTable.of(file("X,Shock M,,marks\nY,Shock K,,marks\n"), PLAN))
        .isInstanceOf(Unreadable.class);
  }

  @Test
  void aMappingOfNoStatedSourceIsNotRead() {
    Masks masks = MaskTable.of(file("X,Shock L,,\nY,Shock K,,\n"), PLAN).orElseThrow();
    assertThat(masks.isRead()).isFalse();
  }
}
