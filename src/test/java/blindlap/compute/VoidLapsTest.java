package blindlap.compute;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.review.Analysis;
import blindlap.review.DayRecord;
import blindlap.review.Days;
import blindlap.review.Finding;
import blindlap.review.Sensitivity;
import blindlap.wording.FindingText;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Three scored laps a stint, one of them void on every stint of one setup: said everywhere. */
class VoidLapsTest {
  private static final Rule RULE = Rule.blocks(2, 12, 4);
  private static final String ORDER = "ABBABABAABAB";
  private static final Measure TIME = Days.lapTime();

  /** No true difference; the slowest lap of every stint on the chosen setup is void. */
  private static DayRecord day(char setup, int seed) {
    Random random = new Random(seed);
    double[][] laps = new double[12][3];
    boolean[][] voids = new boolean[12][3];
    for (int stint = 0; stint < 12; stint++) {
      int slowest = 0;
      for (int lap = 0; lap < 3; lap++) {
        laps[stint][lap] = Math.round(9000 + 100 * random.nextGaussian()) / 100.0;
        slowest = laps[stint][lap] > laps[stint][slowest] ? lap : slowest;
      }
      voids[stint][slowest] = ORDER.charAt(stint) == setup;
    }
    Plan plan = Days.plan(RULE, List.of(TIME), 3);
    return Days.laps(plan, ORDER, Map.of("lap time", laps), voids);
  }

  @Test
  void voidLapsOfOneSetupAreFlaggedThoughNoStintIsVoid() {
    Finding finding = Analysis.of(day('B', 1));
    assertThat(finding.voids().voids()).containsExactly(0, 0);
    assertThat(finding.voidLaps().voids()).containsExactly(0, 6);
    // 6 of 6 void laps on one setup: the ridden order and its mirror image alone are as uneven.
    assertThat(finding.voidLaps().p()).isCloseTo(2 / 216.0, within(1e-15));
    assertThat(new FindingText(finding).voids())
        .startsWith("Void laps: 6 (Shock K 0, Shock L 6).")
        .contains(".0093")
        .contains("no longer exact")
        .contains("all ridden laps")
        .endsWith("No whole stint is void.");
    assertThat(new FindingText(finding).evidence())
        .anyMatch(
            line -> line.contains("0 void as a whole") && line.contains("6 scored laps void"));
  }

  @Test
  void theResultWithAllRiddenLapsStandsBesideThoughEveryStintKeepsAValue() {
    Finding finding = Analysis.of(day('B', 1));
    assertThat(finding.primary().orElseThrow().stints().used()).isEqualTo(12);
    Sensitivity all = finding.sensitivities().get(0);
    assertThat(all.kind()).isEqualTo(Sensitivity.Kind.ALL_RIDDEN);
    assertThat(all.stints()).hasSize(6);
    assertThat(all.result().orElseThrow().estimate())
        .isNotEqualTo(finding.primary().orElseThrow().estimate());
  }

  @Test
  void theRequestGivesTheShareAgainThoughEveryStintOfASetupHasAsManyVoids() throws IOException {
    ObjectMapper json = new ObjectMapper();
    for (DayRecord day : List.of(day('A', 2), day('B', 1))) {
      Finding finding = Analysis.of(day);
      FindingRequests.Named voids =
          FindingRequests.of(finding).stream()
              .filter(r -> r.about().equals("voids"))
              .findFirst()
              .orElseThrow();
      JsonNode answer =
          json.readTree(
              Calculations.standard()
                  .answer(CalculationRequest.parse(voids.json()).requests().get(0))
                  .print());
      assertThat(answer.findValue("p").get(0).doubleValue()).isEqualTo(finding.voidLaps().p());
      assertThat(answer.findValue("p").get(1).doubleValue()).isEqualTo(1);
      JsonNode said = json.readTree(FindingJson.write(finding)).get("voids").get("laps");
      assertThat(said.get("p").doubleValue()).isEqualTo(finding.voidLaps().p());
      assertThat(said.get("per_setup").get(0).intValue() + said.get("per_setup").get(1).intValue())
          .isEqualTo(6);
    }
  }

  @Test
  void noStintIsVoidIsSaidOnlyWhereNoLapIs() {
    assertThat(new FindingText(Analysis.of(day('C', 3))).voids()).isEqualTo("No stint is void.");
    assertThat(new FindingText(Analysis.of(day('B', 3))).voids())
        .doesNotContain("No stint is void.");
  }
}
