package blindlap.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.compute.FindingJson;
import blindlap.desk.SampleDays;
import blindlap.plan.BlindLevel;
import blindlap.review.Beside;
import blindlap.review.QuestionHistory;
import blindlap.session.day.Step;
import blindlap.stats.compare.Verdict;
import blindlap.wording.HistoryWords;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A past steps day keeps that its verdict is one of a trend: the middle may still be best. */
class PastTrendTest {
  private static QuestionHistory history(boolean trend) {
    return new QuestionHistory(
        List.of(
            new QuestionHistory.Past(
                "00001000-0000",
                LocalDate.of(2026, 3, 4),
                "P. Halle",
                "Otter traverse",
                Step.UNSEALED,
                "",
                "lap time",
                QuestionHistory.Told.FOUND,
                Optional.of(Verdict.NO_WORTHWHILE_DIFFERENCE),
                true,
                false,
                BlindLevel.HELPER,
                trend,
                Optional.empty())));
  }

  @Test
  void itComesBackFromAPackageAndIsSaidAsATrend() {
    List<String> written = new ArrayList<>();
    SampleDays.ride(
        "air-on-otter-traverse",
        (desk, state) -> {
          for (boolean trend : new boolean[] {true, false}) {
            Beside beside = new Beside(history(trend), Optional.empty(), Optional.empty());
            written.add(FindingJson.write(desk.reviews().finding(state), beside));
          }
        });
    for (int i = 0; i < 2; i++) {
      boolean trend = i == 0;
      byte[] bytes = written.get(i).getBytes(StandardCharsets.UTF_8);
      assertThat(PackageBeside.read(Map.of("finding.json", bytes)).beside().history())
          .isEqualTo(history(trend));
      assertThat(written.get(i).contains("\"no worthwhile trend\"")).isEqualTo(trend);
      assertThat(String.join("\n", HistoryWords.lines(history(trend))))
          .contains(trend ? "no worthwhile trend" : "no worthwhile difference");
    }
  }
}
