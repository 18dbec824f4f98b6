package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.stats.tell.TrialsPower;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A telling run on the command line: what it can show beforehand. */
class TellingRunPlanTest {
  private static final String PLAN =
      """
      question: Can M. Oss feel four clicks of compression on Fern trail?
      kind: telling run
      rider: M. Oss
      trail: Fern trail
      day: 2026-12-05
      setups:
        - {name: 9 clicks, settings: [{name: compression, value: 9, unit: clicks from closed}]}
        - {name: 13 clicks, settings: [{name: compression, value: 13, unit: clicks from closed}]}
      telling_run: {%s}
      blinding: {helper: T. Berg}
      timetable: {zone: Europe/Vienna, start: "08:00", daylight_end: "20:00", lap: 2, climb: 1, swap: 1, scoring: 0.5}
      """;

  @TempDir private Path folder;

  private CommandLineSession.Ran plan(String run) throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    return day.run("plan", day.file("plan.yaml", PLAN.formatted(run)).toString());
  }

  @Test
  void fifteenTrianglesSayWhatTheyCanShow() throws IOException {
    CommandLineSession.Ran ran = plan("task: triangle, trials: 15");

    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("Telling 9 clicks from 13 clicks, Fern trail, M. Oss, 2026-12-05")
        .contains("9 of 15 right would show that M. Oss can tell; guessing gives 5.")
        .contains("If 50 % of the trials are really told, as declared to matter, 80 of 100")
        .contains("If nothing is felt, 78 of 100 such runs show that less than 50 % is told")
        .contains("which of them differed?")
        .contains("Handlings: 46 in the day, at most 31 of one setup")
        .contains("A trial takes 12.5 minutes: 3 laps")
        .contains("15 trials take 3 h 07 min. Warm-up and rests come on top.")
        .contains("15 trials (45 laps): least right 9; felt 80, nothing 78 (this plan); 3 h 07 min")
        .contains("30 trials (90 laps): least right 15;")
        .contains("Follow the maker's manual")
        .contains("Nothing is committed yet.", "blindlap commit");
  }

  @Test
  void twoChoiceSaysWhatIsAskedAndWhoHasMoreOfIt() throws IOException {
    CommandLineSession.Ran ran =
        plan("task: two-choice, attribute: support under braking, more: 9 clicks");

    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("17 of 24 right would show that M. Oss can tell; guessing gives 12.")
        .contains("which had more support under braking? Declared to have more is 9 clicks")
        .contains("6 trials (12 laps): least right 6;");
  }

  @Test
  void trialsThatCannotShowAnythingAreRefusedWithoutAReasonAndSaidWithOne() throws IOException {
    CommandLineSession.Ran refused = plan("trials: 2");

    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("2 trials could not show anything").contains("override");

    CommandLineSession.Ran ridden = plan("trials: 2}\noverride: to try the sheets\nlaps: {");
    assertThat(ridden.code()).as(ridden.err()).isZero();
    assertThat(ridden.out())
        .contains("This plan cannot show anything, whatever happens on the day.")
        .contains("Even 2 of 2 right has p = .11 by guessing")
        .contains("2 trials (6 laps): could not show that anything is felt");
  }

  @Test
  void theTableIsGivenAsJson() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    Path file = day.file("plan.yaml", PLAN.formatted("task: triangle, trials: 13"));

    CommandLineSession.Ran ran = day.run("plan", file.toString(), "--json");
    assertThat(ran.code()).as(ran.err()).isZero();
    JsonNode shown = new ObjectMapper().readTree(ran.out());
    assertThat(shown.path("laps_a_trial").asInt()).isEqualTo(3);
    assertThat(shown.path("matters").asDouble()).isEqualTo(0.5);
    List<JsonNode> planned = new ArrayList<>();
    shown.path("trials").forEach(row -> planned.add(row));
    planned.removeIf(row -> !row.path("planned").asBoolean());
    assertThat(planned).hasSize(1);
    JsonNode own = planned.get(0);
    assertThat(own.path("trials").asInt()).isEqualTo(13);
    assertThat(own.path("least").asInt()).isEqualTo(8);
    TrialsPower exact = TrialsPower.of(13, 1.0 / 3, 0.5);
    assertThat(own.path("power").asDouble()).isEqualTo(exact.power());
    assertThat(own.path("shows_nothing_felt").asDouble()).isEqualTo(exact.cannot());
  }

  @Test
  void anotherPlanHasJsonOfItsDivisionsOnly() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    String noise = PLAN.replace("telling run", "noise run").replaceAll("telling_run.*\n", "");
    Path file =
        day.file(
            "plan.yaml",
            noise + "measures: [{name: lap time, kind: lap time, unit: s, role: primary}]\n");

    CommandLineSession.Ran ran = day.run("plan", file.toString(), "--json");
    assertThat(ran.code()).isEqualTo(2);
    assertThat(ran.err()).contains("--json goes with --divide").hasLineCount(1);
  }

  private static final String LEVELS =
      PLAN.replaceFirst("(?s)setups:\n.*?telling_run", "setups: [{name: Shock K}]\ntelling_run");

  @Test
  void anotherRunLikeItIsOfTheSameTwoLevelsAndOfNoSeries() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    String run =
        "task: triangle, trials: 6, one_setting: {setting: compression, unit: clicks, levels: [9,"
            + " 13], least: 2, most: 16}";
    Path file = day.file("plan.yaml", LEVELS.formatted(run));
    assertThat(day.run("plan", file.toString()).out())
        .startsWith("Telling apart: Shock K, compression at 9 and 13 clicks, Fern trail")
        .contains("5 of 6 right would show")
        .contains("Handlings: 19 in the day, the same before every lap")
        .contains("26 clicks at each of 19 handlings, 494 on the day");
    CommandLineSession.Ran committed = day.run("commit", file.toString(), "--yes");
    assertThat(committed.code()).as(committed.err()).isZero();
    String id = committed.after("sealed: session");

    CommandLineSession.Ran like =
        day.run("plan", "--like", id, "--out", folder.resolve("again.yaml").toString());
    assertThat(like.code()).as(like.err()).isZero();
    String again = Files.readString(folder.resolve("again.yaml"));
    assertThat(again)
        .contains("kind: telling run", "name: Shock K", "levels: 9, 13", "trials: 6")
        .doesNotContain("protocol:")
        .doesNotContain("stints:")
        .doesNotContain("13 clicks");
    Path dated = day.file("dated.yaml", again.replaceFirst("(?m)^day:", "day: 2026-12-06"));
    CommandLineSession.Ran shown = day.run("plan", dated.toString());
    assertThat(shown.code()).as(shown.err()).isZero();
    assertThat(shown.out()).contains("5 of 6 right would show");

    CommandLineSession.Ran series = day.run("plan", "--like", id, "--series-of", "3");
    assertThat(series.code()).isEqualTo(2);
    assertThat(series.err()).contains("this one is a telling run. Nothing was made");
  }

  @Test
  void dividingIsRefusedInASentence() throws IOException {
    CommandLineSession day = new CommandLineSession(folder);
    Path file = day.file("plan.yaml", PLAN.formatted("task: triangle"));

    CommandLineSession.Ran divided = day.run("plan", file.toString(), "--divide");
    assertThat(divided.code()).isEqualTo(2);
    assertThat(divided.err()).contains("A telling run is made of trials");
  }
}
