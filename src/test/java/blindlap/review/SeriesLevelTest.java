package blindlap.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.wording.DeclaredWords;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SeriesLevelTest {
  @ParameterizedTest
  @EnumSource(BlindLevel.class)
  void aSeriesHoldsSessionsOfOneLevel(BlindLevel level) {
    Plan plan = Days.plan(Rule.blocks(2, 12, 4), List.of(Days.lapTime()));
    SeriesDeclaration declared = new SeriesDeclaration("0123456789abcdef", Days.at(level, plan));
    for (BlindLevel other : BlindLevel.values()) {
      List<SeriesDeclaration.Difference> found = declared.differences(Days.at(other, plan));
      if (other == level) {
        assertThat(found).isEmpty();
      } else {
        assertThat(found)
            .containsExactly(
                new SeriesDeclaration.Difference(SeriesDeclaration.Field.LEVEL, "blinding.level"));
        assertThat(DeclaredWords.value(SeriesDeclaration.Field.LEVEL, Days.at(other, plan)))
            .isNotEqualTo(DeclaredWords.value(SeriesDeclaration.Field.LEVEL, Days.at(level, plan)));
      }
    }
  }
}
