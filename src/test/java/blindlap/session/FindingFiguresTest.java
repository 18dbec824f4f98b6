package blindlap.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A finding that is written out twice has the same bytes, and so the same hash. */
class FindingFiguresTest {
  @Test
  void figuresStandInTheOrderOfTheirNames() {
    Map<String, BigDecimal> figures = new LinkedHashMap<>();
    for (String name : List.of("p", "low_95", "estimate", "high_95", "low_90", "high_90")) {
      figures.put(name, BigDecimal.valueOf(name.length()));
    }
    assertThat(new Fact.FindingRecorded(3, "not settled", figures).figures().keySet())
        .containsExactly("estimate", "high_90", "high_95", "low_90", "low_95", "p");
    assertThat(new FindingSeenAgain(3, true, 2, "not settled", figures).figures().keySet())
        .containsExactly("estimate", "high_90", "high_95", "low_90", "low_95", "p");
  }
}
