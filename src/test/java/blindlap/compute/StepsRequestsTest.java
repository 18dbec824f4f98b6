package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.desk.SampleDays;
import blindlap.review.Finding;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the finding of a steps day says is what its requests give again. */
class StepsRequestsTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String WRONGLY_FITTED = "rebound-on-heron-line";
  private static final String BENT = "air-on-otter-traverse";

  private static JsonNode json(String text) {
    try {
      return JSON.readTree(text);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The finding as JSON, with what each of its requests answers. */
  private record Said(JsonNode finding, List<FindingRequests.Named> requests, List<JsonNode> got) {
    static Said of(Finding finding) {
      List<FindingRequests.Named> requests = FindingRequests.of(finding);
      List<JsonNode> answers = new ArrayList<>();
      for (FindingRequests.Named each : requests) {
        CalculationRequest request = CalculationRequest.parse(each.json()).requests().get(0);
        answers.add(json(Calculations.standard().answer(request).print()).get("result"));
      }
      return new Said(json(FindingJson.write(finding)), requests, answers);
    }

    static Said of(String name) {
      List<Said> found = new ArrayList<>();
      SampleDays.ride(name, (desk, state) -> found.add(of(desk.reviews().finding(state))));
      return found.get(0);
    }

    JsonNode answer(String about, String measure) {
      return got.get(
          IntStream.range(0, requests.size())
              .filter(
                  i ->
                      requests.get(i).about().equals(about)
                          && requests.get(i).measure().equals(measure))
              .findFirst()
              .orElseThrow());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {WRONGLY_FITTED, BENT})
  void everyMeasureComesFromItsTrend(String name) {
    Said said = Said.of(name);
    assertThat(said.finding.get("measures")).hasSize(3);
    for (JsonNode measure : said.finding.get("measures")) {
      JsonNode answer = said.answer("comparison", measure.get("measure").textValue());
      for (String field :
          List.of(
              "estimate",
              "noise_sd",
              "df",
              "p",
              "interval_95",
              "interval_90",
              "per_unit",
              "bend",
              "means",
              "between")) {
        assertThat(measure.get(field)).as(field).isNotNull().isEqualTo(answer.get(field));
      }
      boolean primary = measure.get("role").textValue().equals("primary");
      for (String field : List.of("middle_better", "still_better")) {
        assertThat(measure.has(field)).as(field).isEqualTo(primary);
        assertThat(measure.get(field)).as(field).isEqualTo(answer.get(field));
      }
      if (primary) {
        assertThat(measure.get("verdict").textValue()).isEqualTo(answer.get("verdict").textValue());
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {WRONGLY_FITTED, BENT})
  void guessesAreTestedByTheLevelsThatTheyNamed(String name) {
    Said said = Said.of(name);
    JsonNode guesses = said.finding.get("guesses");
    JsonNode answer = said.answer("guesses.levels", "");
    for (String field : List.of("right", "wrong", "t", "p", "mid_p")) {
      assertThat(guesses.get(field)).as(field).isNotNull().isEqualTo(answer.get(field));
    }
    assertThat(guesses.get("unknown")).isEqualTo(answer.get("unsure"));
    assertThat(guesses.get("flagged").booleanValue()).isFalse();
  }

  @Test
  void whatBendsIsSaidOfThePrimaryMeasureAndNotOfATrend() {
    Said said = Said.of(BENT);
    JsonNode primary = said.finding.get("measures").get(0);
    assertThat(said.finding.get("steps_day").get("levels").toString()).isEqualTo("[150,160,170]");
    assertThat(said.finding.get("steps_day").get("unit").textValue()).isEqualTo("psi");
    assertThat(primary.get("bend").get("p").doubleValue()).isLessThan(.05);
    assertThat(primary.get("middle_better").doubleValue()).isEqualTo(160);
    assertThat(primary.get("still_better").isNull()).isTrue();
  }

  @Test
  void aWatchedHarmIsTestedAtTheShiftsThatItsRequestAsksFor() {
    Said said = Said.of(BENT);
    JsonNode dabs = said.finding.get("measures").get(2);
    JsonNode at = said.answer("comparison", "dabs").get("at");
    int count = said.answer("comparison", "dabs").get("count").intValue();
    assertThat(dabs.get("harm").get("p_above_d").doubleValue())
        .isCloseTo(at.get(1).get("count_plus").doubleValue() / count, within(1e-12));
    assertThat(dabs.get("harm").get("p_below_minus_d").doubleValue())
        .isCloseTo(at.get(0).get("count_minus").doubleValue() / count, within(1e-12));
  }

  @Test
  void aLevelWronglyFittedCountsAtItsMeasuredValueAndWithoutP() {
    Said said = Said.of(WRONGLY_FITTED);
    JsonNode masked = said.finding.get("sensitivity").get(0);
    JsonNode fitted = said.finding.get("sensitivity").get(1);
    assertThat(fitted.get("kind").textValue()).isEqualTo("as fitted");
    JsonNode answer = said.answer("sensitivity.AS_FITTED", "lap time");
    assertThat(answer.get("estimate")).isEqualTo(fitted.get("estimate"));
    assertThat(answer.has("p")).isFalse();
    assertThat(answer.get("estimate"))
        .isNotEqualTo(said.finding.get("measures").get(0).get("estimate"));
    JsonNode without = said.answer("sensitivity.WRONG_FITS_MASKED", "lap time");
    for (String field : List.of("estimate", "p", "interval_95")) {
      assertThat(without.get(field)).as(field).isEqualTo(masked.get(field));
    }
  }
}
