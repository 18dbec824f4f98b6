package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.plan.Plan;
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
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Predicate;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxToolkit;

/** A steps day on the Plan page: chosen, typed and judged, by keys alone. */
class PlanStepsDayTest {
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
  void aStepsDayIsChosenAndTypedByKeysAlone() {
    assertThat(shown("#one-setup")).isFalse();
    typeInto("Question", "Which rebound is quickest");
    typeInto("Rider", "M. Oss");
    typeInto("Trail", "Quarry loop");
    next("Kind of session");
    keyboard.press(KeyCode.DOWN);
    keyboard.press(KeyCode.DOWN);
    keyboard.press(KeyCode.DOWN);
    assertThat(form().field("kind").get()).isEqualTo("steps day");
    typeInto("Name", "Shock K");
    press("one-setup");
    assertThat(Window.call(() -> form().list("setups").size())).isEqualTo(1);
    assertThat(shown("#one-setup")).isFalse();
    typeInto("Setting", "rebound");
    typeInto("Unit", "clicks");
    typeInto("Levels", "4 7 10 17");
    typeInto("Most the maker allows", "16");
    assertThat(Window.call(() -> form().part("steps_day").field("levels").errorProperty().get()))
        .contains("17 lies above 16, the largest value that the maker allows");
    next("Levels");
    keyboard.press(KeyCode.END);
    keyboard.press(KeyCode.BACK_SPACE);
    keyboard.type("3");
    typeInto("Lap, minutes", "2");
    typeInto("Worthwhile difference", "0.8");

    assertThat(Window.call(() -> model.problems().toString())).isEqualTo("[]");
    Plan plan = Window.call(() -> model.planProperty().get().orElseThrow());
    assertThat(plan.title()).isEqualTo("Shock K, rebound at 4, 7, 10, 13 clicks");
    assertThat(plan.protocol().name()).isEqualTo("four-levels");
    assertThat(Window.call(() -> ((Label) scene.lookup("#handlings")).getText()))
        .contains("26 clicks at each of 17 handlings, 442 on the day");
    assertThat(Window.call(() -> ((RadioButton) scene.lookup("#rule-four-levels")).isSelected()))
        .isTrue();
    assertThat(Window.call(() -> scene.lookup("#rule-blocks-of-four"))).isNull();
  }

  @Test
  void whatIsRefusedIsOneSentenceBesideItsField() {
    Window.run(() -> model.startFromFile(file()));
    String[][] refused = {
      {"4", "3 to 6 levels"},
      {"4 7 7", "Two levels are 7."},
      {"slow middle quick", "is not a number"},
      {"4 7 17", "17 lies above 16, the largest value that the maker allows"},
      {"1 7 13", "1 lies below 2, the least value that the maker allows"},
    };
    for (String[] each : refused) {
      Window.run(() -> form().part("steps_day").field("levels").set(each[0]));
      String said =
          Window.call(() -> form().part("steps_day").field("levels").errorProperty().get());
      assertThat(said).as(each[0]).contains(each[1]);
      assertThat(Window.call(() -> model.answer().shownProperty().get().sentence().marked()))
          .as("nothing is shown of it")
          .isEqualTo("not yet a day");
    }
    Window.run(
        () -> {
          form().part("steps_day").field("levels").set("4 7 10 13");
          form().list("measures").get(0).field("worthwhile").set("");
        });
    assertThat(
            Window.call(
                () -> form().list("measures").get(0).field("worthwhile").errorProperty().get()))
        .contains("from the lowest to the highest level that would change your mind");
    assertThat(Window.call(() -> model.problems().size())).isEqualTo(1);
  }

  @Test
  void whatMadeItOneSetupIsOneStepThatIsTakenBack() {
    Window.run(() -> form().field("kind").set("steps day"));
    Map<String, Object> before = Window.call(() -> form().tree());
    Window.run(() -> model.rules().stepsDay().oneSetup());
    assertThat(Window.call(() -> form().tree())).isNotEqualTo(before);

    Window.run(() -> model.undo().takeBack());

    assertThat(Window.call(() -> form().tree())).isEqualTo(before);
  }

  @Test
  void everyNumberOfLevelsHasItsRuleAndIsAnswered() {
    Window.run(() -> model.startFromFile(file()));
    for (String levels : new String[] {"4 7 10", "4 7 10 13", "3 5 7 9 11", "3 5 7 9 11 13"}) {
      int number = levels.split(" ").length;
      Window.run(
          () -> {
            form().part("steps_day").field("levels").set(levels);
            form().field("stints").set(String.valueOf(number * 3));
            model.answer().simulate(40);
            form().field("trail").set("Mill track " + number);
          });

      assertThat(Window.call(() -> model.problems().toString())).as(levels).isEqualTo("[]");
      assertThat(Window.call(() -> model.rules().protocolsThatFit())).hasSize(1);
      PlanAnswerModel.Shown shown = Window.call(() -> model.answer().shownProperty().get());
      assertThat(shown.sentence().text())
          .startsWith(number * 3 + " stints")
          .contains("from the lowest to the highest level in lap time");
      assertThat(shown.left()).isNotEmpty();
    }
  }

  @Test
  void whatTheDayCanShowIsTheTrendInEverySectionOfThePage() {
    Window.run(
        () -> {
          model.startFromFile(file());
          model.answer().simulate(60);
          form().part("noise").field("usual_difference").set("0.6");
        });
    PlanAnswerModel.Shown shown = Window.call(() -> model.answer().shownProperty().get());

    assertThat(shown.sentence().text())
        .contains("from the lowest to the highest level in lap time");
    assertThat(String.join(" ", shown.lead()))
        .contains("You said 0.8", "from the lowest to the highest level would change your mind")
        .contains("find out that they differ", "Spread evenly from 4 to 13 clicks from closed")
        .contains("A bend, such as a middle that is better than both ends");
    assertThat(shown.heads()).contains("no worthwhile trend");
    assertThat(shown.odds()).hasSize(4);
    assertThat(shown.curveTitle()).startsWith("Smallest difference from the lowest to the highest");
    assertThat(shown.curve()).isPresent();
    assertThat(shown.left()).anyMatch(line -> line.startsWith("If the day ends after stint 8, it"));
    List<String> all = new ArrayList<>(shown.lead());
    all.addAll(shown.swaps());
    all.addAll(shown.left());
    all.addAll(shown.statistician());
    assertThat(all).noneMatch(line -> line.contains("setups") || line.contains("pair"));
    Window.run(
        () -> {
          stage.setScene(null);
          scene.setRoot(new Pane());
          Scene tall = new Scene(page, 1280, 8000);
          look.dress(tall);
          Window.picture(tall, "steps-plan-answer");
        });
  }

  @Test
  void itHoldsInEverySizeOfTextAndIsDrawnInEveryTheme() {
    Window.run(() -> model.startFromFile(file()));
    for (double text : new double[] {1, 2}) {
      Window.run(
          () -> {
            look.textScaleProperty().set(text);
            page.applyCss();
            page.layout();
          });
      Window.run(
          () -> {
            Within within = Within.of((Parent) scene.getRoot(), "steps day at " + text);
            assertThat(within.wrong()).isEmpty();
            assertThat(within.controls()).isGreaterThan(40);
          });
      for (Theme theme : Theme.values()) {
        Window.run(
            () -> {
              look.themeProperty().set(theme);
              page.applyCss();
              page.layout();
              show("#handlings");
              Window.picture(
                  scene,
                  "steps-plan-" + theme.name().toLowerCase(Locale.ROOT) + "-" + (int) (100 * text));
            });
      }
    }
  }

  private void show(String id) {
    PageGrid grid = (PageGrid) page.lookup(".scroll-pane");
    Node node = page.lookup(id);
    double end = grid.getContent().sceneToLocal(node.localToScene(0, 0)).getY() + 4 * MARGIN;
    double seen = grid.getViewportBounds().getHeight();
    double most = grid.getContent().getBoundsInLocal().getHeight() - seen;
    grid.setVvalue(Math.max(0, Math.min(1, (end - seen) / most)));
    page.layout();
  }

  private Path file() {
    try {
      return java.nio.file.Files.writeString(
          folder.resolve("steps.yaml"),
          """
          question: Which rebound is quickest?
          kind: steps day
          rider: M. Oss
          trail: Quarry loop
          day: 2026-11-28
          setups: [{name: Shock K, component: rear shock}]
          steps_day: {setting: rebound, unit: clicks from closed, levels: "4, 7, 10, 13", least: 2, most: 16, source: p. 12}
          stints: 16
          measures:
            - {name: lap time, kind: lap time, unit: s, role: primary, worthwhile: 0.8}
          noise: {usual_difference: 1.2}
          timetable: {lap: 3, climb: 6, swap: 4}
          blinding: {helper: T. Berg}
          """);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private TypedForm form() {
    return model.form();
  }

  private boolean shown(String id) {
    return Window.call(() -> scene.lookup(id).isVisible());
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
