package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Committing;
import blindlap.desk.Desk;
import blindlap.plan.Plan;
import blindlap.plan.PlanOptions;
import blindlap.plan.Plans;
import blindlap.plan.TellingRuns;
import blindlap.plan.TellingTask;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PageGrid;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.part.TypedForm;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxToolkit;

/** A telling run on the Plan page: chosen, typed and judged, by keys alone, and from a file. */
class PlanTellingTest {
  private static final int MOST_TABS = 300;
  private static final double MARGIN = 24;

  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;
  private PlanPage page;
  private Stage stage;
  private Scene scene;
  private Keyboard keyboard;
  private final Look look = new Look();

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void openTheWindow() throws Exception {
    desk = PlanDesk.open(folder, 1);
    stage = FxToolkit.registerStage(Stage::new);
    Window.run(
        () -> {
          model = Models.plan(desk, new Shell(), Background.immediate(), 0);
          page = new PlanPage(look, model, new NoDialogs());
          scene = new Scene(page, 1280, 800);
          look.dress(scene);
          stage.setScene(scene);
          stage.show();
          stage.requestFocus();
          keyboard = new Keyboard(scene);
        });
  }

  @AfterEach
  void closeTheWindow() {
    Window.run(stage::hide);
    desk.close();
  }

  @Test
  void twoLevelsAreChosenAndTypedByKeysAlone() {
    typeInto("Question", "Can M. Oss feel four clicks");
    typeInto("Rider", "M. Oss");
    typeInto("Trail", "Quarry loop");
    next("Kind of session");
    for (int i = 0; i < 4; i++) {
      keyboard.press(KeyCode.DOWN);
    }
    assertThat(form().field("kind").get()).isEqualTo("telling run");
    assertThat(errors())
        .anyMatch(words -> words.contains("telling run says what is asked in how many trials"));
    press("telling-settle");
    assertThat(shown("#telling-settle")).isFalse();
    next("What is asked");
    keyboard.press(KeyCode.DOWN);
    keyboard.press(KeyCode.DOWN);
    keyboard.press(KeyCode.DOWN);
    assertThat(run().field("task").get()).isEqualTo("two choice");
    assertThat(Window.call(() -> ((TextField) scene.lookup("#trials")).getPromptText()))
        .isEqualTo("24");
    typeInto("Which lap had more of what", "support under braking");
    tabTo(node -> "telling-setups".equals(node.getId()));
    keyboard.press(KeyCode.DOWN);
    keyboard.press(KeyCode.SPACE);
    assertThat(Window.call(() -> form().list("setups").size())).isEqualTo(1);
    typeInto("Name", "Shock K");
    typeInto("Setting", "compression");
    typeInto("Unit", "clicks");
    typeInto("Levels", "9 17");
    typeInto("Most the maker allows", "16");
    assertThat(Window.call(() -> one().field("levels").errorProperty().get()))
        .contains("17 lies above 16, the largest value that the maker allows");
    next("Levels");
    keyboard.press(KeyCode.END);
    keyboard.press(KeyCode.BACK_SPACE);
    keyboard.type("3");
    next("Which has more of it");
    keyboard.press(KeyCode.DOWN);
    keyboard.press(KeyCode.DOWN);
    assertThat(run().field("more").get()).isEqualTo("13 clicks");
    typeInto("Lap, minutes", "2");
    press("trials-fewer");

    assertThat(Window.call(() -> model.problems().toString())).isEqualTo("[]");
    Plan plan = plan();
    assertThat(plan.title()).isEqualTo("Telling apart: Shock K, compression at 9 and 13 clicks");
    assertThat(Objects.requireNonNull(plan.telling()).task()).isEqualTo(TellingTask.TWO_CHOICE);
    assertThat(plan.stints()).isEqualTo(46);
    assertThat(plan.measures()).isEmpty();
    assertThat(Window.call(() -> ((Label) scene.lookup("#handlings-of-one_setting")).getText()))
        .contains("26 clicks at each of 47 handlings");
    assertThat(answer().sentence().text()).contains("of 23 right would show that M. Oss can tell");
    assertThat(Window.call(() -> model.titleProperty().get()))
        .startsWith("Can you tell? Shock K, compression at 9 13");
  }

  @Test
  void twoSetupsAreChosenAndTypedByKeysAlone() {
    typeInto("Rider", "M. Oss");
    typeInto("Trail", "Quarry loop");
    next("Kind of session");
    for (int i = 0; i < 4; i++) {
      keyboard.press(KeyCode.DOWN);
    }
    press("telling-settle");
    press("trials-more");
    typeInto("Question", "Shock K or Shock L");
    typeInto("Name", "Shock K");
    typeInto("Name", "Shock L");
    typeInto("Lap, minutes", "2");

    assertThat(Window.call(() -> model.problems().toString())).isEqualTo("[]");
    assertThat(plan().title()).isEqualTo("Telling Shock K from Shock L");
    assertThat(plan().stints()).isEqualTo(48);
    assertThat(Window.call(() -> ((RadioButton) scene.lookup("#telling-setups")).isSelected()))
        .isTrue();
    assertThat(String.join(" ", answer().swaps())).contains("49 in the day, at most 33 of one");
    for (String hidden : List.of("#stints", "#add-setup", "#divide")) {
      assertThat(inSight(hidden)).as(hidden).isFalse();
    }
  }

  @Test
  void thePageAsksForTrialsWhereItAskedForStints() {
    Window.run(() -> model.startFromFile(file("task: triangle, trials: 15", "levels: '9, 13'")));
    PlanAnswerModel.Shown shown = answer();

    assertThat(Window.call(() -> model.problems().toString())).isEqualTo("[]");
    assertThat(shown.sentence().text())
        .isEqualTo("9 of 15 right would show that R. Lind can tell; guessing gives 5.");
    assertThat(shown.trials().heads()).hasSize(6);
    assertThat(shown.trials().rows())
        .filteredOn(row -> row.planned())
        .singleElement()
        .satisfies(
            row ->
                assertThat(row.cells()).containsExactly("15", "45", "9", "80", "78", "6 h 00 min"));
    assertThat(shown.odds()).isEmpty();
    assertThat(shown.curve()).isEmpty();
    assertThat(shown.stint()).isEmpty();
    assertThat(String.join(" ", shown.lead())).contains("A trial takes 24 minutes: 3 laps");
    assertThat(shown.times().get(0)).startsWith("Trial 1: first handling at");
    assertThat(shown.times()).hasSize(15);
    assertThat(shown.strip()).isPresent();
    Window.run(() -> form().field("rider").set("M. Oss"));
    assertThat(answer().sentence().text()).contains("M. Oss can tell");
    Window.run(
        () -> {
          stage.setScene(null);
          scene.setRoot(new Pane());
          Scene tall = new Scene(page, 1366, 6200);
          look.dress(tall);
          Window.picture(tall, "telling-plan-whole");
        });
  }

  /** Every refusal of a telling run that can be typed on the page, beside the field it is about. */
  @Test
  void whatIsRefusedIsOneSentenceBesideItsField() {
    String[][] refused = {
      {"telling_run.trials", "0", "1 to 100 trials"},
      {"telling_run.trials", "101", "1 to 100 trials"},
      {"telling_run.trials", "many", "whole number"},
      {"telling_run.matters", "0", "above 0 and at most at 1"},
      {"telling_run.matters", "50", "above 0 and at most at 1"},
      {"telling_run.attribute", "grip", "asks which lap was unlike or like another"},
      {"telling_run.more", "13", "asks which lap was unlike or like another"},
      {"telling_run.task", "two choice", "it is not said of what"},
      {"telling_run.one_setting.levels", "9", "two levels of its setting, and this one has 1"},
      {"telling_run.one_setting.levels", "9 11 13", "and this one has 3"},
      {"telling_run.one_setting.levels", "9 9", "Two levels are 9"},
      {"telling_run.one_setting.levels", "open closed", "is not a number"},
      {"telling_run.one_setting.levels", "9 17", "17 lies above 16"},
      {"telling_run.one_setting.levels", "1 13", "1 lies below 2"},
      {"telling_run.one_setting.levels", "9 13.5", "cannot be counted out in clicks"},
      {"telling_run.one_setting.least", "17", "must lie below"},
      {"telling_run.one_setting.low", "3", "belong to a pressure alone"},
      {"telling_run.one_setting.way", "pressure", "goes down to a low and up to a high"},
      {"series", "s-1", "belongs to no series"},
      {"looks", "15", "no looks before its end"},
      {"stints", "44", "Leave stints out"},
      {"protocol", "blocks-of-four", "names another rule"},
      {"blinding.level", "drawn", "needs a helper who fits every lap"},
      {"change", "two bikes", "is ridden on one bike"},
      {"laps.settling", "1", "this plan has 2 laps in a stint"},
      {"timetable.rest_every", "10", "would part the laps of a trial"},
      {"timetable.lap_budget", "40", "Plan 12 trials at most"},
    };
    for (String[] each : refused) {
      Window.run(
          () -> {
            model.startFromFile(file("task: triangle", "levels: '9, 13', least: 2, most: 16"));
            field(each[0]).set(each[1]);
          });
      assertThat(errors()).as(each[0] + " " + each[1]).anyMatch(words -> words.contains(each[2]));
      assertThat(errors().size()).as(each[0] + " " + each[1] + errors()).isLessThanOrEqualTo(2);
      // Whatever is refused can be gone to: its field is in sight.
      Window.run(() -> ((javafx.scene.control.Hyperlink) scene.lookup("#mend-next")).fire());
      Node at = Window.call(scene::getFocusOwner);
      assertThat(at.getProperties()).as(each[0]).containsKey(TypedForm.Entry.class);
    }
  }

  @Test
  void trialsThatCannotShowAnythingNeedAReasonAndTheVerdictIsFixed() {
    Window.run(() -> model.startFromFile(file("task: triangle, trials: 2", "levels: '9, 13'")));
    assertThat(errors()).singleElement().asString().contains("2 trials could not show anything");
    assertThat(form().field("override").errorProperty().get()).contains("2 trials could not show");
    assertThat(String.join(" ", answer().lead()))
        .contains("its finding can only be \"this plan could not show anything\"");

    Window.run(() -> form().field("override").set("to try the sheets"));

    assertThat(errors()).isEmpty();
    assertThat(answer().trials().rows())
        .filteredOn(row -> row.planned())
        .singleElement()
        .satisfies(row -> assertThat(row.cells()).contains("none would do"));
    assertThat(Window.call(() -> model.completeProperty().get())).isTrue();
  }

  @Test
  void aTaskHasItsUsualNumberOfTrialsUntilOneIsTyped() {
    Window.run(() -> model.startFromFile(file("task: triangle", "levels: '9, 13'")));
    assertThat(trials()).isEqualTo(15);
    Window.run(() -> run().field("task").set("duo trio"));
    assertThat(trials()).isEqualTo(24);
    Window.run(() -> model.rules().telling().turnTrials(1));
    assertThat(trials()).isEqualTo(25);
    Window.run(() -> run().field("task").set("triangle"));
    assertThat(trials()).isEqualTo(25);
    Window.run(() -> run().field("trials").set("100"));
    Window.run(() -> model.rules().telling().turnTrials(1));
    assertThat(trials()).isEqualTo(100);
  }

  /** Of a day that no clock holds the trials are told all the same, without their time. */
  @Test
  void aLapBeyondAllMeasureIsSaidBesideItsFieldAndTheTrialsStand() {
    for (String minutes : List.of("999999999999999", "0", "-3", "1441", "two")) {
      Window.run(
          () -> {
            model.startFromFile(file("task: triangle", "levels: '9, 13'"));
            field("timetable.lap").set(minutes);
          });
      assertThat(errors()).as(minutes).isNotEmpty();
      assertThat(answer().sentence().text()).as(minutes).startsWith("9 of 15 right");
    }
  }

  @Test
  void whatAComparisonHasIsLeftOutInOneStepThatIsTakenBack() {
    Window.run(
        () -> {
          form().field("kind").set("telling run");
          form().add("setups", Map.of("name", "Shock M"));
          form().add("covariates", Map.of("name", "wind", "kind", "free"));
          form().add("measures", Map.of("name", "grip", "kind", "line scale", "unit", "points"));
        });
    assertThat(shown("#telling-settle")).isTrue();
    Map<String, Object> before = Window.call(() -> form().tree());
    Window.run(
        () -> {
          page.applyCss();
          page.layout();
          show("#telling-settle");
          Window.picture(scene, "telling-plan-unlike");
        });

    Window.run(() -> model.rules().telling().settle());

    assertThat(Window.call(() -> form().list("setups").size())).isEqualTo(2);
    assertThat(Window.call(() -> form().list("measures").size())).isEqualTo(1);
    assertThat(shown("#telling-settle")).isFalse();
    assertThat(answer().sentence().text()).startsWith("9 of 15 right");
    Window.run(() -> model.undo().takeBack());
    assertThat(Window.call(() -> form().tree())).isEqualTo(before);
  }

  @Test
  void fromTwoSetupsToTwoLevelsAndBackIsAStepEachAndNothingTypedIsLostByMistake() {
    Window.run(() -> model.startFromFile(file("task: triangle", "levels: '9, 13'")));
    Map<String, Object> levels = Window.call(() -> form().tree());
    assertThat(Window.call(() -> ((RadioButton) scene.lookup("#telling-levels")).isSelected()))
        .isTrue();

    Window.run(() -> model.rules().telling().betweenSetups());
    assertThat(Window.call(() -> form().list("setups").size())).isEqualTo(2);
    assertThat(plan().oneSetting()).isNull();
    Window.run(() -> model.undo().takeBack());
    assertThat(Window.call(() -> form().tree())).isEqualTo(levels);
    Window.run(() -> model.undo().doAgain());
    Window.run(() -> model.rules().telling().betweenLevels());
    assertThat(Window.call(() -> form().list("setups").size())).isEqualTo(1);
    assertThat(Window.call(() -> one().field("way").get())).isEqualTo("clicks");
  }

  @Test
  void trialsOfAPlanOfAnotherKindStayInSightUntilTheyAreTakenOut() {
    Window.run(
        () -> {
          model.startFromFile(file("task: triangle", "levels: '9, 13'"));
          form().field("kind").set("comparison");
        });
    assertThat(inSight("#telling-leave")).isTrue();

    Window.run(() -> model.rules().telling().leave());

    assertThat(inSight("#telling-leave")).isFalse();
    assertThat(Window.call(() -> form().tree())).doesNotContainKey("telling_run");
  }

  @Test
  void aNewPlanBeginsWithTheQuestionAndIsKeptAsADraft() {
    Window.run(() -> model.start(Shell.Beginning.TELLING_RUN));

    assertThat(shown("#telling-settle")).isFalse();
    assertThat(plan().kind()).isEqualTo(Plan.Kind.TELLING_RUN);
    assertThat(plan().question()).isEqualTo("Can the difference be felt at all?");
    assertThat(Window.call(() -> model.problems().toString())).contains("Still to fill in");
    Window.run(() -> model.keep());
    assertThat(desk.planning().drafts().values())
        .anyMatch(draft -> "telling run".equals(draft.get("kind")));
    Window.run(() -> model.starters().addMeasure(model.starters().measureNames().get(0)));
    assertThat(Window.call(() -> form().list("measures").get(0).field("role").get()))
        .isEqualTo("secondary");
  }

  @Test
  void aFileIsReadAndWrittenAndWhatItPlansCanBeCommitted() throws IOException {
    Path file = folder.resolve("setups.yaml");
    Files.writeString(file, Plans.text(TellingRuns.text("task: triangle, trials: 15")));
    Window.run(() -> model.startFromFile(file));
    assertThat(errors()).isEmpty();
    assertThat(plan().stints()).isEqualTo(45);
    Path out = folder.resolve("written.yaml");
    Window.run(() -> model.writeFile(out));
    assertThat(Files.readString(out)).contains("kind: telling run", "trials: 15");
    Committing.Begun begun = Window.call(() -> desk.planning().begin(model.fields()));
    assertThat(begun).isInstanceOf(Committing.Begun.Phrase.class);
  }

  @Test
  void everyKindOfSessionIsOffered() {
    assertThat(PlanOptions.of("session"))
        .containsExactly("comparison", "noise run", "steps day", "telling run");
  }

  @Test
  void itHoldsInEverySizeOfTextAndIsDrawnInEveryTheme() {
    Window.run(
        () ->
            model.startFromFile(
                file(
                    "task: two choice, attribute: support under braking, more: 13",
                    "levels: '9, 13', least: 2, most: 16, source: p. 12")));
    Window.run(
        () -> {
          stage.setScene(null);
          scene.setRoot(new Pane());
          scene = new Scene(page, 1366, 768);
          look.dress(scene);
        });
    for (double text : new double[] {1, 2}) {
      Window.run(
          () -> {
            look.textScaleProperty().set(text);
            page.applyCss();
            page.layout();
          });
      Window.run(
          () -> {
            Within within = Within.of((Parent) scene.getRoot(), "telling run at " + text);
            assertThat(within.wrong()).isEmpty();
            assertThat(within.controls()).isGreaterThan(40);
          });
      for (Theme theme : Theme.values()) {
        for (String id : List.of("#trials", "#handlings-of-one_setting", "#commit-begin")) {
          Window.run(
              () -> {
                look.themeProperty().set(theme);
                page.applyCss();
                page.layout();
                show(id);
                Window.picture(
                    scene,
                    "telling-plan-%s-%d-%s"
                        .formatted(
                            theme.name().toLowerCase(Locale.ROOT),
                            (int) (100 * text),
                            id.substring(1)));
              });
        }
      }
    }
  }

  private void show(String id) {
    PageGrid grid = (PageGrid) page.lookup(".scroll-pane");
    Node node = page.lookup(id);
    double end = grid.getContent().sceneToLocal(node.localToScene(0, 0)).getY() + 14 * MARGIN;
    double seen = grid.getViewportBounds().getHeight();
    double most = grid.getContent().getBoundsInLocal().getHeight() - seen;
    grid.setVvalue(Math.max(0, Math.min(1, (end - seen) / most)));
    page.layout();
  }

  private Path file(String run, String setting) {
    try {
      return Files.writeString(
          folder.resolve("telling.yaml"),
          """
          question: Can R. Lind feel four clicks on Quarry loop?
          kind: telling run
          rider: R. Lind
          trail: Quarry loop
          day: 2026-11-28
          setups: [{name: Shock K, component: rear shock}]
          telling_run: {%s, one_setting: {setting: compression, unit: clicks from closed, way: clicks, %s}}
          timetable: {start: "08:00", daylight_end: "20:00", lap: 2, climb: 3, swap: 2.5, scoring: 1.5}
          blinding: {helper: T. Berg}
          """
              .formatted(run, setting));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private TypedForm.Entry field(String path) {
    TypedForm form = form();
    String[] names = path.split("\\.", -1);
    for (int i = 0; i < names.length - 1; i++) {
      form = form.part(names[i]);
    }
    return form.field(names[names.length - 1]);
  }

  private List<String> errors() {
    return Window.call(() -> List.copyOf(model.problems()));
  }

  private int trials() {
    return Objects.requireNonNull(plan().telling()).trials();
  }

  private Plan plan() {
    return Window.call(() -> model.planProperty().get().orElseThrow());
  }

  private PlanAnswerModel.Shown answer() {
    return Window.call(() -> model.answer().shownProperty().get());
  }

  private TypedForm form() {
    return model.form();
  }

  private TypedForm run() {
    return form().part("telling_run");
  }

  private TypedForm one() {
    return run().part("one_setting");
  }

  private boolean shown(String id) {
    return Window.call(() -> scene.lookup(id).isVisible());
  }

  /** With whatever it stands in. */
  private boolean inSight(String id) {
    return Window.call(
        () -> {
          for (Node node = scene.lookup(id); node != null; node = node.getParent()) {
            if (!node.isVisible()) {
              return false;
            }
          }
          return true;
        });
  }

  private void typeInto(String field, String text) {
    next(field);
    keyboard.press(KeyCode.END);
    keyboard.type(text);
  }

  private void next(String field) {
    tabTo(node -> field.equals(node.getAccessibleText()));
  }

  private void press(String id) {
    tabTo(node -> id.equals(node.getId()));
    keyboard.press(KeyCode.SPACE);
  }

  private void tabTo(Predicate<Node> wanted) {
    for (int i = 0; i < MOST_TABS; i++) {
      keyboard.strike(KeyCode.TAB);
      if (Window.call(() -> scene.getFocusOwner() != null && wanted.test(scene.getFocusOwner()))) {
        return;
      }
    }
    throw new AssertionError("the focus never got there; it is at " + keyboard.here());
  }
}
