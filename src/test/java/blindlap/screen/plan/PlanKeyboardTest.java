package blindlap.screen.plan;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.plan.Plan;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.session.SessionState;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxToolkit;

/** The whole way from an empty draft to a sealed session in the real window, by keys alone. */
class PlanKeyboardTest {
  private static final int MOST_TABS = 300;

  @TempDir Path folder;
  private Desk desk;
  private PlanModel model;
  private Stage stage;
  private Scene scene;
  private Keyboard keyboard;

  @BeforeAll
  static void startWindowSystem() throws Exception {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void openTheWindow() throws Exception {
    desk = PlanDesk.open(folder, 1);
    stage = FxToolkit.registerStage(Stage::new);
    Window.run(
        () -> {
          Look look = new Look();
          model = Models.plan(desk, new Shell(), Background.immediate(), 0);
          scene = new Scene(new PlanPage(look, model, new OneFolder(folder)), 1280, 800);
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
  void aWholePlanIsTypedAndCommittedWithoutAMouse() throws Exception {
    typeInto("Two laps on the same setup usually differ by about", "0.75");
    typeInto("Question", "Is L quicker than K");
    typeInto("Rider", "R. Lind");
    typeInto("Trail", "Quarry loop");
    typeInto("Name", "Shock K");
    next("Mass");
    typeInto("Name", "Shock L");
    typeInto("Lap, minutes", "2");
    typeInto("Climb or shuttle, minutes", "8");
    typeInto("Swap, minutes", "7");
    assertThat(Window.call(() -> List.copyOf(model.problems()))).hasSize(1);
    typeInto("Worthwhile difference", "0.5");
    assertThat(Window.call(() -> List.copyOf(model.problems()))).isEmpty();

    press("commit-begin");
    tabTo(node -> "secret".equals(node.getId()));
    keyboard.type("4711");
    press("secret-open");
    tabTo(node -> "signed".equals(node.getId()));
    keyboard.type("R. Lind");
    press("sign");
    String phrase = Window.call(() -> ((Label) scene.lookup("#phrase")).getText());
    assertThat(desk.sessions().all()).isEmpty();
    press("phrase-noted");
    String question = Window.call(() -> model.commit().phrase().questionProperty().get());
    tabTo(node -> "typed-words".equals(node.getId()));
    keyboard.type(HelperTypes.words(question, phrase));
    press("seal");
    assertThat(Window.call(() -> model.commit().stepProperty().get()))
        .isEqualTo(CommitModel.Step.SEALED);
    press("go-on");
    press("write-A4");
    press("finish");

    List<SessionState> sessions = desk.sessions().all();
    assertThat(sessions).hasSize(1);
    Plan plan = sessions.get(0).plan();
    assertThat(plan.title()).isEqualTo("Shock K against Shock L");
    assertThat(plan.question()).isEqualTo("Is L quicker than K");
    assertThat(plan.stints()).isEqualTo(16);
    try (var files = Files.list(folder)) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .filteredOn(name -> name.startsWith("sheet-") && name.endsWith(".pdf"))
          .hasSize(1);
    }
    assertThat(Window.call(() -> model.commit().phrase().noted())).isEmpty();
  }

  @Test
  void stintsTurnByBlocksOfTheRule() {
    press("more");
    assertThat(Window.call(() -> model.form().field("stints").get())).isEqualTo("20");
    press("fewer");
    press("fewer");
    assertThat(Window.call(() -> model.form().field("stints").get())).isEqualTo("12");
  }

  @Test
  void whatHasTheFocusStaysInViewWhileThePageGrowsAboveIt() {
    // With the lap's minutes the day's strip appears above the field.
    typeInto("Lap, minutes", "2");

    assertThat(
            Window.call(
                () -> {
                  Node owner = scene.getFocusOwner();
                  return scene
                      .getRoot()
                      .localToScene(scene.getRoot().getBoundsInLocal())
                      .contains(owner.localToScene(owner.getBoundsInLocal()));
                }))
        .isTrue();
  }

  /** A press that seems to do nothing is what people would notice, in a field and beside it. */
  @Test
  void everyPressOfCtrlZTakesSomethingBackAcrossFieldsAndEveryOtherBringsSomethingBack() {
    Map<String, Object> start = tree();
    typeInto("Question", "Is L quicker");
    typeInto("Rider", "R. Lind");
    typeInto("Trail", "Quarry");
    keyboard.press(KeyCode.BACK_SPACE);
    Map<String, Object> end = tree();
    assertThat(end).containsEntry("trail", "Quarr");

    goAll(start, KeyCode.CONTROL, KeyCode.Z);
    goAll(end, KeyCode.CONTROL, KeyCode.SHIFT, KeyCode.Z);
    goAll(start, KeyCode.CONTROL, KeyCode.Z);
  }

  private Map<String, Object> tree() {
    return Window.call(() -> model.form().tree());
  }

  private void goAll(Map<String, Object> wanted, KeyCode... keys) {
    for (int presses = 0; presses < 40; presses++) {
      Map<String, Object> before = tree();
      if (before.equals(wanted)) {
        return;
      }
      keyboard.press(keys);
      assertThat(tree()).as("press %d", presses).isNotEqualTo(before);
    }
    assertThat(tree()).isEqualTo(wanted);
  }

  @Test
  void aPressOnAButtonThatIsHalfInViewCounts() {
    int before = Window.call(() -> model.form().list("setups").size());
    for (boolean lower : new boolean[] {true, false}) {
      Window.run(() -> halfInView(lower));
      keyboard.press(KeyCode.SHIFT);
      Window.run(() -> pressed(lower, Robot::mousePress));
      keyboard.press(KeyCode.SHIFT);
      keyboard.press(KeyCode.SHIFT);
      Window.run(() -> new Robot().mouseRelease(MouseButton.PRIMARY));
      keyboard.press(KeyCode.SHIFT);
    }
    assertThat(Window.call(() -> model.form().list("setups").size())).isEqualTo(before + 2);
  }

  private ScrollPane page() {
    return (ScrollPane) Objects.requireNonNull(scene.lookup(".scroll-pane"));
  }

  /** Scrolls so that the middle of the button lies on the lower or upper edge of what is seen. */
  private void halfInView(boolean lower) {
    ScrollPane page = page();
    Node content = page.getContent();
    Node button = scene.lookup("#add-setup");
    Bounds at = content.sceneToLocal(button.localToScene(button.getLayoutBounds()));
    double view = page.getViewportBounds().getHeight();
    double top = at.getCenterY() - (lower ? view : 0);
    page.setVvalue(top / (content.getLayoutBounds().getHeight() - view));
  }

  private void pressed(boolean lower, BiConsumer<Robot, MouseButton> press) {
    Node button = scene.lookup("#add-setup");
    Bounds at = button.localToScreen(button.getLayoutBounds());
    Robot robot = new Robot();
    robot.mouseMove(new Point2D(at.getCenterX(), lower ? at.getMinY() + 4 : at.getMaxY() - 4));
    press.accept(robot, MouseButton.PRIMARY);
  }

  @Test
  void badInputIsToldBesideItsFieldAndTheDraftIsKept() {
    typeInto("Day", " or so");

    assertThat(Window.call(() -> model.form().field("day").errorProperty().get()))
        .contains("2026-11-14 or so")
        .contains("a date such as");
    keyboard.press(KeyCode.TAB);
    assertThat(desk.planning().drafts().values())
        .anySatisfy(draft -> assertThat(draft).containsEntry("day", "2026-11-14 or so"));
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

  /** Tabs at least once, and on until the focus is where it is wanted. */
  private void tabTo(Predicate<Node> wanted) {
    for (int i = 0; i < MOST_TABS; i++) {
      keyboard.strike(KeyCode.TAB);
      boolean there =
          Window.call(
              () -> {
                Node owner = scene.getFocusOwner();
                return owner != null && wanted.test(owner);
              });
      if (there) {
        return;
      }
    }
    String owner =
        Window.call(
            () ->
                model.commit().stepProperty().get()
                    + " "
                    + scene.getFocusOwner()
                    + (scene.getFocusOwner() instanceof Button b ? b.getText() : ""));
    throw new AssertionError("the focus never got there; it is at " + owner);
  }

  /** Always answers with one folder. */
  private static final class OneFolder extends NoDialogs {
    private final Path chosen;

    OneFolder(Path chosen) {
      this.chosen = chosen;
    }

    @Override
    public Optional<Path> folder(String title) {
      return Optional.of(chosen);
    }
  }
}
