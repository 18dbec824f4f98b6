package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.plan.Plan;
import blindlap.screen.Models;
import blindlap.screen.book.NotebookModel;
import blindlap.screen.part.Background;
import blindlap.screen.part.Shell;
import blindlap.screen.part.TypedForm;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole plans of invented days, typed field by field from an empty draft. */
class PlanScenariosTest {
  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;

  @BeforeEach
  void open() {
    desk = PlanDesk.open(folder, 1);
    model = Models.plan(desk, new Shell(), Background.immediate(), 0);
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private PlanAnswerModel.Shown shown() {
    return model.answer().shownProperty().get();
  }

  private void type(TypedForm form, Map<String, String> fields) {
    fields.forEach((name, text) -> form.field(name).set(text));
  }

  private TypedForm setup(int index) {
    return model.form().list("setups").get(index);
  }

  private TypedForm setting(int setup, String name) {
    return setup(setup).list("settings").stream()
        .filter(s -> s.field("name").get().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private void set(int setup, String name, String value) {
    setting(setup, name).field("value").set(value);
  }

  private void day(String question) {
    type(model.form(), Map.of("question", question, "rider", "R. Lind", "trail", "Fern trail"));
    type(
        model.form().part("timetable"),
        Map.of("lap", "3", "climb", "9", "swap", "6", "scoring", "2", "lap_budget", "20"));
    model.form().part("noise").field("usual_difference").set("0.9");
    model.primary().orElseThrow().field("worthwhile").set("1");
  }

  @Test
  void aWheelChangeWithLimitsPricesAndRefits() {
    day("Are the Bearing P wheels quicker than the Bearing R wheels?");
    model.form().field("change").set("wheel change");
    type(setup(0), Map.of("name", "Bearing P wheels", "mass", "1.84 kg", "most_refits", "40"));
    type(setup(1), Map.of("name", "Bearing R wheels", "mass", "1850 g"));
    for (int i = 0; i < 2; i++) {
      type(setup(i).part("price"), Map.of("amount", i == 0 ? "640" : "410", "currency", "EUR"));
      model.starters().addStartingSet(setup(i), "wheel");
      set(i, "wheel", i == 0 ? "Bearing P" : "Bearing R");
      set(i, "tyre", "Tyre S");
      set(i, "insert", "none");
      set(i, "pressure", "1.60");
      set(i, "spoke tension", "even");
      setup(i).add("limits", Map.of("what", "axle", "value", "12 N.m", "source", "invented, p. 3"));
    }
    assertThat(model.problems()).isEmpty();
    assertThat(shown().pay())
        .containsExactly(
            "Bearing R wheels costs EUR 230 less and puts 10 g more on the bike than Bearing P"
                + " wheels: for what gain would you take that?");

    set(1, "pressure", "1.66");
    assertThat(model.problems().toString()).contains("pressure").contains("equal");
    set(1, "pressure", "23.2");
    setting(1, "pressure").field("unit").set("psi");
    assertThat(model.problems()).isEmpty();
    assertThat(model.commit().summary().toString())
        .contains("Meant to be equal within 0.03: pressure (1.60 bar and 23.2 psi)")
        .contains("Limit typed in by the tester: axle, 12 N.m (invented, p. 3)");
    assertThat(model.commit().summary().toString()).contains("Scored laps a stint: 1");

    model.form().field("change").set("refit");
    setup(0).field("most_refits").set("6");
    assertThat(setup(0).field("most_refits").errorProperty().get()).contains("6");
  }

  @Test
  void twoBikesAddTheirOwnDifferencesToTheTableAndAskForAReason() {
    day("Does the longer bike lose time?");
    type(setup(0), Map.of("name", "Long bike"));
    type(setup(1), Map.of("name", "Short bike"));
    model.form().field("change").set("two bikes");
    assertThat(model.problems()).isNotEmpty();
    TypedForm bikes = model.form().part("bikes");
    TypedForm.Entry reason = model.form().field("differences_reason");
    type(bikes, Map.of("first", "Frame M", "second", "Frame N"));
    type(bikes.add("differences"), Map.of("name", "reach", "first", "480 mm", "second", "455 mm"));
    type(bikes.add("differences"), Map.of("name", "mass", "first", "15.1 kg", "second", "14.8 kg"));

    assertThat(shown().differences())
        .extracting(PlanDiffers.Row::name, PlanDiffers.Row::values)
        .contains(
            org.assertj.core.api.Assertions.tuple("reach", List.of("480 mm", "455 mm")),
            org.assertj.core.api.Assertions.tuple("mass", List.of("15.1 kg", "14.8 kg")));
    assertThat(reason.errorProperty().get()).contains("reach, mass");
    reason.set("The frames differ in both.");
    bikes.field("change_after").set("8");
    assertThat(model.problems()).isEmpty();
    assertThat(model.hints().toString()).contains("The frames differ in both.");
  }

  @Test
  void threeTyresWithATimetableAcrossMidnightAndAClockChange() {
    day("Which of three front tyres is quickest?");
    model.form().add("setups");
    model.rules().chooseProtocol("three-setups");
    model.form().field("stints").set("18");
    for (int i = 0; i < 3; i++) {
      setup(i).field("name").set("Tyre " + (char) ('S' + i));
      model.starters().addStartingSet(setup(i), "front tyre");
      set(i, "casing", "Casing " + (char) ('S' + i));
      set(i, "insert", "none");
      set(i, "width", "60");
      set(i, "pressure", "1.55");
    }
    model.form().field("day").set("2026-10-24");
    type(
        model.form().part("timetable"),
        Map.of("zone", "Europe/Vienna", "start", "21:30", "daylight_end", "06:00"));

    assertThat(model.problems()).isEmpty();
    assertThat(shown().sentence().text()).contains("between two named setups of 3");
    assertThat(shown().lead().toString()).contains("approximation");
    assertThat(shown().times()).hasSize(18);
    assertThat(shown().times().get(0)).isEqualTo("Stint 1: handling at 22:00, riding from 22:06.");
    // The clocks go back at 03:00 on 25 October 2026 (the zone's rules in the JDK).
    assertThat(shown().times().get(17)).contains("CET").contains("the next day");
    assertThat(shown().day().get(0)).contains("2026-10-24 21:30 CEST", "CET");

    model.form().part("timetable").field("daylight_end").set("01:00");
    assertThat(shown().day()).hasSize(3);
    assertThat(shown().day().get(1)).startsWith("Stints 10 to 18 fall into the dark");
    assertThat(shown().day().get(2)).startsWith("It fits if you").contains("stints");
  }

  @Test
  void everyComponentKindHasAStartingSetWhoseHolesAreNamed() {
    for (String component : model.starters().componentNames()) {
      model.start(Shell.Beginning.COMPARISON);
      model.starters().addStartingSet(setup(0), component);
      int settings = setup(0).list("settings").size();
      assertThat(settings).as(component).isGreaterThan(component.equals("free form") ? -1 : 2);
      String missing = model.problems().get(0);
      assertThat(missing).startsWith("Still to fill in: ").contains("Question", "Setup 1, Name");
      assertThat(missing.split("Setup 1, Setting [0-9]+, Value", -1))
          .as(component)
          .hasSize(settings + 1);
    }
    assertThat(model.starters().componentNames()).hasSize(10);
  }

  @Test
  void clicksBeyondTheDialAndBetweenHalfTurnsAreNamedBesideTheField() {
    model.starters().addStartingSet(setup(0), "rear shock with coil");
    TypedForm preload = setting(0, "preload");
    preload.field("value").set("1.25");
    assertThat(preload.field("value").errorProperty().get()).contains("0.5");
    preload.field("value").set("1.5");
    assertThat(preload.field("value").errorProperty().get()).isEmpty();
    TypedForm rebound = setting(0, "rebound");
    type(rebound, Map.of("range", "14", "value", "15"));
    assertThat(rebound.field("value").errorProperty().get()).contains("14");
  }

  @Test
  void theSecondSetupTakesOverWhatTheFirstHasSet() {
    model.starters().addStartingSet(setup(0), "front tyre");
    set(0, "pressure", "1.55");
    setup(1).add("settings", Map.of("name", "casing", "value", "Casing T"));

    model.starters().takeSettings(setup(1));

    assertThat(setting(1, "pressure").field("value").get()).isEqualTo("1.55");
    assertThat(setting(1, "casing").field("value").get()).isEqualTo("Casing T");
    assertThat(setup(1).list("settings")).hasSize(4);
    assertThat(setup(1).field("component").get()).isEqualTo("front tyre");
    set(1, "pressure", "1.60");
    assertThat(setting(0, "pressure").field("value").get()).isEqualTo("1.55");
  }

  @Test
  void aSessionCopiedOnTheNotebookPageIsTheDraftThatThePlanPageShows() {
    Shell shell = new Shell();
    PlanModel page = Models.plan(desk, shell, Background.immediate(), 0);
    page.startFromFile(Path.of("sample-sessions/shocks-on-quarry-loop/plan.yaml"));
    page.commit().begin();
    page.commit().handedOver("4711");
    page.commit().signedProperty().set("R. Lind");
    HelperTypes.seals(page.commit());
    page.commit().finish();
    assertThat(page.form().field("question").get()).isEmpty();
    NotebookModel notebook = Models.notebook(desk, shell, Background.immediate());
    notebook.refresh();

    notebook.copyAsPlan(notebook.answerProperty().get().about().orElseThrow().id());

    assertThat(shell.pageProperty().get()).isEqualTo(Shell.Page.PLAN);
    assertThat(page.form().field("question").get()).startsWith("Is Shock L quicker");
    assertThat(page.form().field("day").get()).isEmpty();
    Plan plan = page.planProperty().get().orElseThrow();
    assertThat(plan.setups()).hasSize(2);
  }
}
