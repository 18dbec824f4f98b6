package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.review.TellingFinding;
import blindlap.review.TellingRuns;
import blindlap.stats.tell.Discrimination;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TellingJsonTest {
  /** Whoever has the request alone gets the numbers of the finding again. */
  @ParameterizedTest
  @CsvSource({
    "TRIANGLE, 15, 11, 0.5",
    "DUO_TRIO, 24, 13, 0.4",
    "TWO_CHOICE, 24, 4, 0.5",
    "TRIANGLE, 2, 2, 1",
    "TRIANGLE, 15, 15, 0.5"
  })
  void theRequestGivesTheNumbersAgain(Discrimination task, int trials, int right, double matters)
      throws Exception {
    TellingFinding finding = TellingRuns.run(task, trials, trials, right, matters, false);
    ObjectNode json = TellingJson.of(finding);
    FindingRequests.Named request = TellingJson.request(finding);
    ComputeRun.Outcome outcome =
        new ComputeRun(Calculations.standard())
            .over(List.of(new ComputeRun.Source("request", request.json())));
    assertThat(outcome).isInstanceOf(ComputeRun.Computed.class);
    JsonNode result =
        new ObjectMapper().readTree(((ComputeRun.Computed) outcome).json()).path("result");
    int compared = 0;
    for (Map.Entry<String, JsonNode> each : result.properties()) {
      if (json.has(each.getKey())) {
        assertThat(json.get(each.getKey()).toString()).isEqualTo(each.getValue().toString());
        compared++;
      }
    }
    assertThat(compared).isEqualTo(9);
    assertThat(json.path("trials")).hasSize(trials);
    int counted = 0;
    for (JsonNode trial : json.path("trials")) {
      assertThat(trial.path("right").asBoolean())
          .isEqualTo(trial.path("differed").asInt() == trial.path("named").asInt());
      counted += trial.path("right").asBoolean() ? 1 : 0;
    }
    assertThat(counted).isEqualTo(right).isEqualTo(json.path("correct").asInt());
  }
}
