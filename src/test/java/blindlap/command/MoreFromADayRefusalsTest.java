package blindlap.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Medians, covariates and looks that cannot be: each is refused in one sentence that says what,
 * where and what next.
 */
class MoreFromADayRefusalsTest {
  private static final String LEGS =
      "covariates:\n  - {name: legs, kind: fatigue, unit: 0 to 10, by: rider, reason: asked}\n";

  @TempDir Path folder;
  private CommandLineSession day;

  @BeforeEach
  void start() {
    day = new CommandLineSession(folder);
  }

  private String refused(String... line) {
    CommandLineSession.Ran ran = day.run(line);
    assertThat(ran.code()).as(ran.out()).isEqualTo(ExitCode.BAD_INPUT);
    assertThat(ran.err().strip().lines()).hasSize(1);
    return ran.err().strip();
  }

  private String plan(String text) {
    return refused("plan", day.file("plan.yaml", text).toString());
  }

  @Test
  void aMedianOfFewerThanThreeLaps() {
    assertThat(
            plan(
                Plans.SMALL.replace("worthwhile: 0.5}", "worthwhile: 0.5, summary: median}")
                    + "laps: {scored: 2}\n"))
        .endsWith(
            "The median of \"lap time\" needs at least 3 scored laps a stint; the plan has 2. Plan"
                + " more laps, or take the mean.");
  }

  @Test
  void aCovariateAfterTheLap() {
    String id = day.commit(Plans.SMALL + LEGS + "laps: {scored: 2}\n");
    String laps = "lap;lap time;legs\n1;90;4\n2;91;5\n";
    assertThat(refused("record", id, day.file("laps.csv", laps).toString()))
        .contains("\"legs\" is what the rider says before the hand-over of stint 1, not after the")
        .endsWith("nothing was recorded.");
  }

  @Test
  void aThirdCovariate() {
    String more = LEGS.replace("covariates:\n", "");
    assertThat(
            plan(Plans.SMALL + LEGS + more.replace("legs", "arms") + more.replace("legs", "mood")))
        .endsWith(
            "The plan has 3 covariates; at most 2 can be taken out. Leave those that go best with"
                + " the laps.");
  }

  @Test
  void looksOnAShortDay() {
    assertThat(plan(Plans.SMALL + "looks: [4]\n"))
        .contains("need a day planned at 20 stints or more; this one has 8");
  }

  @Test
  void aLookWithAnUndecidedVoid() {
    String id = day.commit(Plans.LOOKS);
    StringBuilder laps = new StringBuilder("lap;lap time;grip\n");
    for (int lap = 1; lap <= 12; lap++) {
      laps.append(lap).append(lap == 7 ? ";" : ";9" + lap % 7).append(";50\n");
    }
    assertThat(day.run("record", id, day.file("laps.csv", laps.toString()).toString()).code())
        .isZero();
    assertThat(refused("look", id))
        .contains("lap 7 (stint 7) has no value in lap time and is not void");
    assertThat(day.run("void", id, "7", "--reason", "crash").code()).isZero();
    assertThat(day.run("look", id).code()).isZero();
  }
}
