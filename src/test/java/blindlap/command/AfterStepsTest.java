package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.exchange.PlanText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a steps day into new plans, on the command line. */
class AfterStepsTest {
  private static final String PLAN =
      """
      question: Which rebound is quickest?
      kind: steps day
      rider: M. Oss
      trail: Quarry loop
      day: 2026-11-28
      setups: [{name: Shock K, component: rear shock}]
      steps_day: {setting: rebound, unit: clicks, levels: [4, 7, 10], least: 2, most: 16, source: p. 12}
      measures:
        - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.8}
      blinding: {helper: T. Berg}
      stints: 9
      """;

  @TempDir private Path folder;
  private CommandLineSession day;
  private String session = "";

  @BeforeEach
  void commit() {
    day = new CommandLineSession(folder);
    session = day.commit(PLAN);
  }

  /** Rides it: 7 clicks are quickest and 10 slowest, by far. */
  private void ride() throws IOException {
    Matcher way =
        Pattern.compile("(?m)^ *(\\d+) +\\d+ +(4|7|10) clicks")
            .matcher(day.run("helper", session).out());
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    int stints = 0;
    while (way.find()) {
      double seconds = Map.of("4", 92.0, "7", 90.0, "10", 97.0).get(way.group(2));
      laps.append(way.group(1)).append(';').append(seconds + 0.1 * (stints++ % 3)).append('\n');
    }
    assertThat(stints).as(day.run("helper", session).out()).isEqualTo(9);
    assertThat(day.run("record", session, day.file("l.csv", laps.toString()).toString()).code())
        .isZero();
    assertThat(day.run("close-day", session).code()).isZero();
    assertThat(day.run("close-review", session).code()).isZero();
  }

  private Map<String, Object> made(String... options) throws IOException {
    Path out = folder.resolve("next.yaml");
    Files.deleteIfExists(out);
    String[] all = new String[5 + options.length];
    System.arraycopy(
        new String[] {"plan", "--like", session, "--out", out.toString()}, 0, all, 0, 5);
    System.arraycopy(options, 0, all, 5, options.length);
    CommandLineSession.Ran ran = day.run(all);
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out())
        .contains("meant from the lowest to the highest level, so it is not taken over")
        .contains("rebound: 2 to 16 clicks, the maker's limits as you typed them (p. 12)")
        .contains("It approves no part and no setting", "Follow the maker's manual");
    return PlanText.read(Files.readString(out)).fields();
  }

  private static List<?> list(Map<String, Object> fields, String name) {
    return (List<?>) fields.get(name);
  }

  @Test
  void nothingIsOfferedBeforeItIsUnsealedWhateverTheOrder() throws IOException {
    ride();
    for (String[] option : new String[][] {{"--two-best"}, {"--level", "7"}, {"--level", "8"}}) {
      String[] all = new String[3 + option.length];
      System.arraycopy(new String[] {"plan", "--like", session}, 0, all, 0, 3);
      System.arraycopy(option, 0, all, 3, option.length);
      CommandLineSession.Ran ran = day.run(all);
      assertThat(ran.code()).isEqualTo(ExitCode.BAD_INPUT);
      assertThat(ran.out()).isEmpty();
      assertThat(ran.err()).contains("The order is not opened yet").doesNotContain("click");
    }
  }

  @Test
  void theTwoBestLevelsBecomeAnOrdinaryComparisonOnceTheWorthwhileDifferenceIsTyped()
      throws IOException {
    ride();
    assertThat(day.run("unseal", session).code()).isZero();

    Map<String, Object> fields = made("--two-best");

    assertThat(list(fields, "setups")).hasSize(2);
    assertThat(list(fields, "setups").toString())
        .contains("name=Shock K, rebound 4 clicks", "name=Shock K, rebound 7 clicks")
        .contains("what=rebound, value=2 to 16 clicks, source=p. 12")
        .doesNotContain("10 clicks");
    assertThat(fields.get("question"))
        .isEqualTo(
            "Which is better on Quarry loop: Shock K, rebound 4 clicks or Shock K, rebound 7"
                + " clicks?");
    assertThat(fields).doesNotContainKeys("steps_day").containsEntry("rider", "M. Oss");
    assertThat(list(fields, "measures").toString()).doesNotContain("worthwhile");
    assertThat(String.valueOf(fields.get("noise"))).contains("sd=", "df=");

    String text = Files.readString(folder.resolve("next.yaml"));
    String dated = text.replaceFirst("(?m)^day:", "day: 2026-11-30");
    Path open = day.file("open.yaml", dated);
    assertThat(day.run("plan", "--days", "20", open.toString()).err()).contains("worthwhile");
    Path typed =
        day.file(
            "typed.yaml", dated.replaceFirst("(?m)^( *)role: primary", "$0\n$1worthwhile: 0.5"));
    CommandLineSession.Ran planned = day.run("plan", "--days", "20", typed.toString());
    assertThat(planned.code()).as(planned.err() + dated).isZero();
    assertThat(planned.out())
        .contains("Shock K, rebound 4 clicks against Shock K, rebound 7 clicks");
    assertThat(day.run("commit", typed.toString()).code()).isZero();
    assertThat(day.run("review", session).out()).doesNotContain("Other sessions of this question");
  }

  @Test
  void aLevelThatWasRiddenIsTakenIntoANewPlanAndNoOtherIs() throws IOException {
    ride();
    assertThat(day.run("unseal", session).code()).isZero();

    for (String typed : List.of("7", "7.0", "7 clicks")) {
      Map<String, Object> fields = made("--level", typed);
      assertThat(list(fields, "setups")).hasSize(1);
      assertThat(list(fields, "setups").get(0).toString())
          .contains("name=Shock K", "component=rear shock", "name=rebound", "value=7, unit=clicks");
      assertThat(fields.get("question")).isIn("", null);
    }
    CommandLineSession.Ran other = day.run("plan", "--like", session, "--level", "8");
    assertThat(other.code()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(other.err())
        .contains("The level \"8\" is not offered: of this day only 4, 7, 10 clicks were ridden");
    assertThat(day.run("plan", "--like", session, "--level", "4").out())
        .contains("Draft kept in the notebook as \"plan 1\"")
        .contains("Shock K with rebound at 4 clicks, as the first setup of a new plan.");
  }

  @Test
  void whatDoesNotGoTogetherIsOneSentence() {
    assertThat(day.run("plan", "--like", session, "--series-of", "3").err())
        .contains("this one is a steps day")
        .hasLineCount(1);
    assertThat(day.run("plan", "--like", session, "--two-best", "--level", "4").err())
        .contains("one of them at a time");
    assertThat(day.run("plan", "--two-best", "x.yaml").err()).contains("go with --like alone");
    String two = day.commit(Plans.SMALL);
    assertThat(day.run("plan", "--like", two, "--two-best").err())
        .contains("Only a steps day has levels to take");
  }
}
