package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Finding;
import blindlap.review.WhereDays;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What the finding says of the way is what its requests give again. */
class WhereRequestsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  private static DayRecord day() {
    return WhereDays.day(
        WhereDays.plan(Rule.blocks(2, 12, 4), true),
        "ABBAABABBBAA",
        WhereDays.gain(195, 420, 0.4),
        0.05,
        new Random(2));
  }

  private static JsonNode answer(Finding finding, String about, String of) throws IOException {
    FindingRequests.Named request =
        FindingRequests.of(finding).stream()
            .filter(r -> r.about().equals(about) && r.measure().equals(of))
            .findFirst()
            .orElseThrow();
    return JSON.readTree(
            Calculations.standard()
                .answer(CalculationRequest.parse(request.json()).requests().get(0))
                .print())
        .get("result");
  }

  private static JsonNode where(Finding finding) throws IOException {
    return JSON.readTree(FindingJson.write(finding)).get("where");
  }

  @Test
  void theLineAndTheSectorsComeFromAlong() throws IOException {
    Finding finding = Analysis.of(day());
    JsonNode where = where(finding);
    JsonNode line = answer(finding, "where.line", "");
    for (String field : List.of("estimates", "half_widths_95", "p_adjusted")) {
      assertThat(line.get(field)).as(field).isEqualTo(where.get("line").get(field));
    }
    assertThat(line.get("cumulative")).isEqualTo(where.get("line").get("cumulative"));
    JsonNode sectors = answer(finding, "where.sectors", "");
    for (int i = 0; i < 3; i++) {
      JsonNode said = where.get("sectors").get(i);
      double estimate = sectors.get("estimates").get(i).doubleValue();
      double half = sectors.get("half_widths_95").get(i).doubleValue();
      assertThat(said.get("estimate").doubleValue()).isEqualTo(estimate);
      assertThat(said.get("interval_95").get(0).doubleValue()).isEqualTo(estimate - half);
      assertThat(said.get("interval_95").get(1).doubleValue()).isEqualTo(estimate + half);
      assertThat(said.get("p_adjusted")).isEqualTo(sectors.get("p_adjusted").get(i));
    }
    assertThat(where.get("declared").booleanValue()).isTrue();
    assertThat(where.get("adjusted_by").textValue()).isEqualTo("step down maximum");
    assertThat(where.get("line").get("gates").get(1).get("name").textValue())
        .isEqualTo("Rock garden");
  }

  @Test
  void sectorsWithMasksOfTheirOwnHaveARequestEach() throws IOException {
    DayRecord day = day();
    Finding finding = Analysis.of(WhereDays.with(day, 4, WhereDays.voided(day, 4, 2)));
    JsonNode where = where(finding);
    assertThat(where.get("adjusted_by").textValue()).isEqualTo("holm");
    JsonNode family = answer(finding, "where.family", "");
    for (int i = 0; i < 3; i++) {
      JsonNode alone = answer(finding, "where.sector", "sector " + (i + 1));
      JsonNode said = where.get("sectors").get(i);
      assertThat(said.get("estimate")).isEqualTo(alone.get("estimate"));
      assertThat(said.get("interval_95")).isEqualTo(alone.get("interval_95"));
      assertThat(said.get("p_adjusted")).isEqualTo(family.get("p_adjusted").get(i));
    }
  }

  @Test
  void aDayWithoutRecordingsSaysAndAsksNothing() throws IOException {
    DayRecord day = day().with(blindlap.review.RecordedTimes.NONE);
    Finding finding = Analysis.of(day);
    assertThat(where(finding)).isNull();
    assertThat(FindingRequests.of(finding)).noneMatch(r -> r.about().startsWith("where"));
  }
}
