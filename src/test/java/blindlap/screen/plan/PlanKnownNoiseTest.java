package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.LapFiles;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.screen.Models;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.session.SessionState;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rider's noise is taken from earlier days by itself, and the page says from which. */
class PlanKnownNoiseTest {
  private static final Path SAMPLE = Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml");
  private static final String NOISE_RUN =
      """
      kind: noise run
      question: How much do two laps on the same setup differ?
      rider: R. Lind
      trail: Quarry loop
      day: 2026-11-07
      setups: [{name: Shock K}]
      measures: [{name: lap time, kind: lap time, unit: s, role: primary}]
      stints: 8
      """;

  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;

  @BeforeEach
  void aNoiseRunWasRidden() {
    desk = PlanDesk.open(folder, 1);
    Plan plan = desk.planning().preview(NOISE_RUN).plan().orElseThrow();
    SessionState state = desk.committing().fix(plan, List.of("R. Lind")).state();
    StringBuilder laps = new StringBuilder("lap;lap time\n");
    for (int lap = 1; lap <= 8; lap++) {
      laps.append(lap).append(';').append(180 + lap * lap % 5).append('\n');
    }
    new LapFiles(desk.sessions()).record(state, laps.toString().getBytes(StandardCharsets.UTF_8));
    desk.riderDays().closeDay(state.id());
    model = Models.plan(desk, new Shell(), Background.immediate(), 0);
    model.startFromFile(SAMPLE);
    model.form().field("rider").set("R. Lind");
    model.form().field("trail").set("Quarry loop");
    List.of("sd", "df", "source", "usual_difference")
        .forEach(field -> model.form().part("noise").field(field).set(""));
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private NoiseKnown.Kind known() {
    return model.answered().orElseThrow().noise().kind();
  }

  @Test
  void itIsUsedAndSaidWithItsDays() {
    assertThat(known()).isEqualTo(NoiseKnown.Kind.ESTIMATED);
    assertThat(model.noise().saidProperty().get())
        .startsWith("Your noise is ")
        .endsWith("from 1 day, 7 Nov 2026.");
    assertThat(model.answer().shownProperty().get().lead())
        .noneMatch(line -> line.contains("Your noise is not known"));
    assertThat(model.hints()).noneMatch(hint -> hint.contains("Nothing is known of the rider"));
    assertThat(model.form().part("noise").field("sd").get()).as("nothing is typed").isEmpty();
  }

  @Test
  void itFeedsTheTrendOfAStepsDayAsAnyOtherPlan() {
    model.form().field("kind").set("steps day");
    model.rules().stepsDay().oneSetup();
    model.form().list("setups").get(0).list("settings").clear();
    model.form().part("steps_day").field("setting").set("rebound");
    model.form().part("steps_day").field("levels").set("4 7 10 13");

    assertThat(model.problems()).isEmpty();
    assertThat(known()).isEqualTo(NoiseKnown.Kind.ESTIMATED);
    assertThat(model.noise().saidProperty().get()).endsWith("from 1 day, 7 Nov 2026.");
    assertThat(model.answer().shownProperty().get().lead())
        .anyMatch(line -> line.startsWith("Spread evenly from 4 to 13, that is "))
        .anyMatch(line -> line.startsWith("It may be anything from "));
  }

  @Test
  void whatIsTypedByHandIsUsedAndSaidToBe() {
    model.form().part("noise").field("sd").set("2.5");
    assertThat(known()).isEqualTo(NoiseKnown.Kind.GUESSED);
    assertThat(model.noise().saidProperty().get())
        .startsWith("The noise of 2.5 s that was given by hand is used; your own days tell ")
        .endsWith("from 1 day, 7 Nov 2026.");
  }

  @Test
  void anotherTrailOrRiderOrMeasureIsNotKnown() {
    model.form().field("trail").set("Quarry loop, upper half");
    assertThat(known()).isEqualTo(NoiseKnown.Kind.UNKNOWN);
    assertThat(model.noise().saidProperty().get()).isEmpty();
    model.form().field("trail").set("quarry loop ");
    assertThat(known()).isEqualTo(NoiseKnown.Kind.ESTIMATED);
    model.form().field("rider").set("M. Oster");
    assertThat(known()).isEqualTo(NoiseKnown.Kind.UNKNOWN);
    model.form().field("rider").set("R. Lind");
    model.primary().orElseThrow().field("name").set("sector time");
    assertThat(known()).isEqualTo(NoiseKnown.Kind.UNKNOWN);
  }
}
