package blindlap.wording;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.Comparison;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.stats.order.Orders;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A day on which nothing varied says numbers as short as they are. */
class NoNoiseWordsTest {
  private static final String ORDER = "ABBABAABABAB";

  @ParameterizedTest
  @CsvSource({"3.5, 3.5 s", "0.25, 0.25 s", "2, 2.0 s"})
  void aDifferenceWithoutNoiseKeepsItsOwnDigits(double difference, String said) {
    double[] times =
        Days.values(Orders.parse(ORDER), 90, new double[] {0, difference}, 0, 2, new Random(1));
    Finding finding =
        Analysis.of(
            Days.day(
                Days.plan(Rule.blocks(2, 12, 4), List.of(Days.lapTime())),
                ORDER,
                Map.of("lap time", times)));
    Comparison primary = finding.primary().orElseThrow();
    String all =
        String.join("\n", new FindingText(finding).lines())
            + new FindingWords(finding.day().plan(), primary).signed()
            + NotebookWords.verdict(finding.day().plan(), false, primary, false);
    assertThat(all)
        .contains("+" + said, "Rider noise 0.00 s")
        .doesNotContainPattern("[0-9]\\.[0-9]{4,}");
  }
}
