package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The table of how a day can be divided. */
class DivideTest {
  private static final String PLAN =
      """
      question: Is Shock L quicker than Shock K on Quarry loop?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-14
      setups: [{name: Shock K}, {name: Shock L}]
      measures: [{name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 1}]
      stints: 16
      laps: {warm_up: 2, settling: 0, scored: 2}
      timetable: {start: "09:00", daylight_end: "15:00", lap: 2, climb: 4, swap: 5, scoring: 1,
        rest_every: 8, rest: 20, lap_budget: 42}
      noise: {usual_difference: 0.72}
      """;

  @TempDir Path folder;
  private CommandLineSession session;

  @BeforeEach
  void start() {
    session = new CommandLineSession(folder);
  }

  private CommandLineSession.Ran divide(String plan, String... more) {
    String[] line = new String[more.length + 3];
    line[0] = "plan";
    line[1] = "--divide";
    line[2] = session.file("day.yaml", plan).toString();
    System.arraycopy(more, 0, line, 3, more.length);
    return session.run(line);
  }

  @Test
  void theTableHasEveryRuleWithItsLongestDivisionsAndWhatTheyReach() {
    CommandLineSession.Ran ran = divide(PLAN);
    assertThat(ran.code()).isZero();
    assertThat(ran.out())
        .contains("How to spend the day: 6 h 00 min from 09:00, over by 15:00.")
        .containsPattern("24 stints of 1 +26 laps, over at 14:45 +14.5 of 25 +0.78.s")
        .containsPattern("16 stints of 2 .*0.70 to 0.99.s +reaches 1.s either way; as planned")
        .containsPattern("12 stints of 3 .*reaches 1.s if at most 53.% of the noise lies in the")
        .contains("Pairs", "(simulated)", "None shows most whatever the share");
    assertThat(session.notebook).doesNotExist();
  }

  @Test
  void asJsonEveryDivisionIsThereWithTheFiguresOfTheTable() throws Exception {
    CommandLineSession.Ran ran = divide(PLAN, "--json");
    assertThat(ran.code()).isZero();
    JsonNode root = new ObjectMapper().readTree(ran.out());
    List<JsonNode> all = new ArrayList<>();
    root.get("divisions").forEach(all::add);
    JsonNode planned =
        all.stream().filter(each -> each.get("planned").asBoolean()).findFirst().orElseThrow();
    assertThat(planned.get("stints").asInt()).isEqualTo(16);
    assertThat(planned.get("scored_laps").asInt()).isEqualTo(2);
    JsonNode shows = planned.get("shows");
    assertThat(shows.get("least").asDouble()).isCloseTo(0.70, within(0.005));
    assertThat(shows.get("most").asDouble()).isCloseTo(0.99, within(0.005));
    assertThat(shows.get("unit").asText()).isEqualTo("s");
    assertThat(shows.get("worthwhile").asText()).isEqualTo("either way");
    assertThat(shows.get("approximate").asBoolean()).isFalse();
    JsonNode three =
        all.stream()
            .filter(e -> e.get("stints").asInt() == 12 && e.get("scored_laps").asInt() == 3)
            .findFirst()
            .orElseThrow();
    assertThat(three.get("shows").get("worthwhile_stint_share").asDouble())
        .isCloseTo(0.53, within(0.005));
    assertThat(root.get("left_out").get("not_fitting").isInt()).isTrue();
  }

  @Test
  void ofLevelsEveryFigureIsFromTheLowestToTheHighest() throws Exception {
    String steps =
        PLAN.replace("setups: [{name: Shock K}, {name: Shock L}]", "setups: [{name: Shock K}]")
                .replace("stints: 16", "stints: 15")
            + """
            kind: steps day
            steps_day: {setting: rebound, unit: clicks, levels: [4, 7, 10]}
            """;
    CommandLineSession.Ran ran = divide(steps);
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("Three levels, blocks of three")
        .contains("Figures are for the difference from the lowest to the highest level.")
        .containsPattern("12 stints of 3 .* reaches 1.s if at most")
        .doesNotContain("pair of setups", "approximated");

    JsonNode root = new ObjectMapper().readTree(divide(steps, "--json").out());
    assertThat(root.get("difference").asText()).isEqualTo("lowest to highest level");
    assertThat(root.get("divisions"))
        .allMatch(each -> each.get("stints").asInt() % 3 == 0)
        .noneMatch(each -> each.get("shows").get("approximate").asBoolean())
        .allSatisfy(
            each -> {
              JsonNode shows = each.get("shows");
              assertThat(shows.get("per_unit_most").asDouble() * 6)
                  .isCloseTo(shows.get("most").asDouble(), within(1e-9));
              assertThat(shows.get("bend_most").asDouble()).isPositive();
              assertThat(shows.get("bend_deeper").asBoolean())
                  .isEqualTo(each.get("stints").asInt() < 9);
            });
    assertThat(new ObjectMapper().readTree(divide(PLAN, "--json").out()).get("difference").asText())
        .isEqualTo("two setups");
  }

  @Test
  void ofThreeSetupsEveryFigureIsSaidToBeAnApproximationForOnePair() {
    String three =
        PLAN.replace("{name: Shock L}", "{name: Shock L}, {name: Shock M}")
            .replace("stints: 16", "stints: 12");
    CommandLineSession.Ran ran = divide(three);
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("(approximated)")
        .contains("Figures are for one named pair of setups, by an approximation.");
    assertThat(divide(three, "--json").out())
        .contains("\"approximate\" : true", "\"source\" : \"pairs\"")
        .doesNotContain("\"approximate\" : false");
  }

  @Test
  void aDayThatIsTooLongAsPlannedIsDividedAllTheSame() {
    assertThat(divide(PLAN.replace("stints: 16", "stints: 40")).code()).isZero();
  }

  @Test
  void whatCannotBeDividedIsRefusedInOneSentence() {
    refused(PLAN.replace("15:00", "09:30"), "No division that can show anything fits the day");
    refused(PLAN.replaceAll("(?s)timetable: .*?}\n", ""), "the plan has no timetable");
    refused(
        PLAN.replace("question", "kind: noise run\nquestion")
            .replace(", {name: Shock L}", "")
            .replace("noise: {usual_difference: 0.72}\n", ""),
        "compares nothing");
    refused(PLAN.replace("worthwhile: 1", "worthwhile: -1"), "worthwhile");
    CommandLineSession.Ran ran = divide(PLAN, "--days", "5");
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("--divide takes a plan file").hasLineCount(1);
    assertThat(session.run("plan", "--divide", "--like", "latest").code()).isEqualTo(2);
  }

  private void refused(String plan, String why) {
    CommandLineSession.Ran ran = divide(plan);
    assertThat(ran.code()).as(why).isEqualTo(2);
    assertThat(ran.out()).as(why).isEmpty();
    assertThat(ran.err()).contains(why).hasLineCount(1);
  }
}
