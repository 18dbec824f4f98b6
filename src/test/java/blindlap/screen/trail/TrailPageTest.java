package blindlap.screen.trail;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.exchange.QuarryTrail;
import blindlap.screen.NoDialogs;
import blindlap.screen.ShellView;
import blindlap.screen.Window;
import blindlap.screen.Within;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.screen.plan.PlanDesk;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The Trail page as it is laid out. */
class TrailPageTest {
  @TempDir Path folder;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private record Shown(Scene scene, TrailModel model, TrailPage page) {}

  private static Shown show(Desk desk, Theme theme, double scale, double width, double height) {
    Look look = new Look();
    look.themeProperty().set(theme);
    look.textScaleProperty().set(scale);
    TrailModel model = new TrailModel(desk.trails(), Background.immediate());
    TrailPage page = new TrailPage(look, model, new NoDialogs());
    Shell shell = new Shell();
    Map<Shell.Page, Supplier<? extends Node>> makers = new EnumMap<>(Shell.Page.class);
    for (Shell.Page each : Shell.Page.values()) {
      makers.put(each, javafx.scene.layout.Pane::new);
    }
    makers.put(Shell.Page.TRAIL, () -> page);
    Scene scene =
        new Scene(new ShellView(look, shell, makers, List.of("quarry.blindlap")), width, height);
    look.dress(scene);
    shell.go(Shell.Page.TRAIL);
    model.refresh();
    return new Shown(scene, model, page);
  }

  @Test
  void inEveryThemeAndAtTwiceTheTextAllOfItLiesWithinThePage() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Window.run(
          () -> {
            laidOut(desk, Theme.PAPER, 1, "trail-empty");
            desk.trails().keep(QuarryTrail.trail());
            laidOut(desk, Theme.PAPER, 1, "trail-paper");
            laidOut(desk, Theme.DARK, 1, "trail-dark");
            laidOut(desk, Theme.SUNLIGHT, 1, "trail-sunlight");
            laidOut(desk, Theme.PAPER, 2, "trail-200");
            laidOut(desk, Theme.PAPER, 2, 1366, 2600, "trail-200-tall");
            laidOut(desk, Theme.PAPER, 1, 900, 1500, "trail-narrow");
          });
    }
  }

  private static void laidOut(Desk desk, Theme theme, double scale, String name) {
    laidOut(desk, theme, scale, 1366, 768, name);
  }

  private static void laidOut(
      Desk desk, Theme theme, double scale, double width, double height, String name) {
    Shown shown = show(desk, theme, scale, width, height);
    Window.look(shown.scene(), name);
    Within within = Within.of(shown.page(), name);
    assertThat(within.controls()).isGreaterThan(4);
    assertThat(within.wrong()).isEmpty();
  }

  /** One filled button at a time: reading a recording while there is no trail, then keeping it. */
  @Test
  void readingARecordingIsTheNextStepOnlyWhileThereIsNoTrail() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      Shown shown = Window.call(() -> show(desk, Theme.PAPER, 1, 1366, 768));
      assertThat(Window.call(() -> filled(shown))).containsExactly("Read a recording …");
      System.gc(); // what nothing but its own listener holds would be gone now
      desk.trails().keep(QuarryTrail.trail());
      Window.run(shown.model()::refresh);
      assertThat(Window.call(() -> filled(shown))).containsExactly("Keep as a version");
    }
  }

  private static List<String> filled(Shown shown) {
    shown.scene().getRoot().applyCss();
    shown.scene().getRoot().layout();
    return shown.page().lookupAll(".next").stream()
        .filter(TrailPageTest::seen)
        .map(node -> ((Button) node).getText())
        .toList();
  }

  private static boolean seen(Node node) {
    return node == null || node.isVisible() && seen(node.getParent());
  }

  /** A screen of 1366 x 768 holds drawing, profile, gates, fields and the buttons. */
  @Test
  void theTaskFitsOneSmallScreen() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      desk.trails().keep(QuarryTrail.trail());
      Window.run(
          () -> {
            Shown shown = show(desk, Theme.PAPER, 1, 1366, 768);
            Window.look(shown.scene(), "trail-whole");
            List<String> below = new ArrayList<>();
            for (Node node : shown.page().lookupAll("*")) {
              boolean counts =
                  node instanceof Button
                      || node instanceof ToggleButton
                      || node instanceof PlotView;
              Bounds at = node.localToScene(node.getLayoutBounds());
              if (counts && node.isManaged() && node.isVisible() && at.getMaxY() > 768) {
                below.add(node + " to " + at.getMaxY());
              }
            }
            assertThat(below).isEmpty();
            assertThat(shown.page().lookupAll(".plot")).hasSize(2);
          });
    }
  }

  private static List<String> spoken(Shown shown) {
    return ((javafx.scene.Parent) shown.page().lookup(".gate-lines"))
        .getChildrenUnmodifiable().stream().map(Node::getAccessibleText).toList();
  }

  @Test
  void aPressOnTheDrawnLineSetsAGateThere() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      desk.trails().keep(QuarryTrail.trail("Quarry loop", 10, 690));
      Window.run(
          () -> {
            Shown shown = show(desk, Theme.PAPER, 1, 1366, 768);
            Window.look(shown.scene(), "trail-two");
            PlotView profile = (PlotView) shown.page().lookup(".along-line");
            press(profile, profile.getWidth() / 2, profile.getHeight() / 2);
            assertThat(shown.model().hand().sightProperty().get().draft().orElseThrow().gates())
                .hasSize(3);
            assertThat(shown.model().hand().sightProperty().get().gate().orElseThrow().along())
                .isBetween(300.0, 400.0);
            Window.look(shown.scene(), "trail-three");
            PlotView above = (PlotView) shown.page().lookup(".from-above");
            assertThat(button(shown, "Take back: Split 1 set").isVisible()).isTrue();
            // Far from the line nothing is meant.
            press(above, 2, 2);
            assertThat(spoken(shown)).hasSize(3);
            assertThat(spoken(shown).get(1)).startsWith("split Split 1 at 3");
          });
    }
  }

  private static Button button(Shown shown, String words) {
    return shown.page().lookupAll(".button").stream()
        .map(Button.class::cast)
        .filter(button -> button.getText().equals(words))
        .findFirst()
        .orElseThrow();
  }

  static void press(Node node, double x, double y) {
    Point2D at = node.localToScene(x, y);
    node.fireEvent(
        new MouseEvent(
            MouseEvent.MOUSE_PRESSED,
            at.getX(),
            at.getY(),
            at.getX(),
            at.getY(),
            MouseButton.PRIMARY,
            1,
            false,
            false,
            false,
            false,
            true,
            false,
            false,
            true,
            false,
            true,
            null));
  }

  /** What is said in letters, in the drawing and to a screen reader. */
  @Test
  void theAnswerSaysBothEndsAndHowExactly() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      desk.trails().keep(QuarryTrail.trail());
      Window.run(
          () -> {
            Shown shown = show(desk, Theme.PAPER, 1, 1366, 768);
            Window.look(shown.scene(), "trail-answer");
            assertThat(shown.page().lookup(".answer").getAccessibleText())
                .matches("At Gate post and at Ford, to about 0\\.\\d s a lap\\.");
            assertThat(spoken(shown))
                .containsExactly(
                    "start Gate post at 10 m, 12 m wide. Left and right arrow move it by a metre,"
                        + " Delete takes it away.",
                    "split Rock garden at 200 m, 12 m wide. Left and right arrow move it by a"
                        + " metre, Delete takes it away.",
                    "split Bridge at 420 m, 12 m wide. Left and right arrow move it by a metre,"
                        + " Delete takes it away.",
                    "finish Ford at 690 m, 12 m wide. Left and right arrow move it by a metre,"
                        + " Delete takes it away.");
            assertThat(shown.page().lookup(".from-above").getAccessibleText())
                .contains("Quarry loop from above")
                .contains("Bridge 420 m");
          });
    }
  }
}
