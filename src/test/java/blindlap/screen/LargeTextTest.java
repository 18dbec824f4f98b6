package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TestDay;
import blindlap.paper.FourSetups;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.screen.ride.RideModel;
import blindlap.screen.ride.RidePage;
import blindlap.screen.swap.SwapModel;
import blindlap.screen.swap.SwapPage;
import blindlap.screen.swap.SwapPageTest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Swap and Ride in a window of 1280 x 800 at 100 and 200 % text, with short names and with four
 * long ones: what is touched is large enough, nothing falls outside the window, no words are cut.
 */
class LargeTextTest {
  private static final int WIDE = 1280;
  private static final int HIGH = 800;

  /** 12 mm at 96 dots an inch. */
  private static final double TWELVE_MILLIMETRES = 12 / 25.4 * 96;

  private @TempDir(factory = RamFolder.class) Path folder;
  private final List<String> wrong = new ArrayList<>();
  private int targets;
  private int words;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static Look look(double scale) {
    Look look = new Look();
    look.themeProperty().set(Theme.SUNLIGHT);
    look.textScaleProperty().set(scale);
    return look;
  }

  private static Scene scene(Look look, Parent page) {
    Scene scene = new Scene(page, WIDE, HIGH);
    look.dress(scene);
    return scene;
  }

  private void look(Scene scene, String moment) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    look(scene.getRoot(), moment, false);
  }

  private void look(Node node, String moment, boolean scrolled) {
    if (!node.isVisible()) {
      return;
    }
    if (node instanceof Labeled labeled) {
      uncut(labeled, moment);
    }
    if (node.isFocusTraversable() && !(node instanceof ScrollPane)) {
      target(node, moment, scrolled);
    }
    if (node instanceof Parent parent) {
      boolean inside = scrolled || node instanceof ScrollPane;
      parent.getChildrenUnmodifiable().forEach(child -> look(child, moment, inside));
    }
  }

  private void uncut(Labeled labeled, String moment) {
    for (Node child : labeled.getChildrenUnmodifiable()) {
      if (child instanceof Text shown && !labeled.getText().isEmpty()) {
        words++;
        if (!shown.getText().equals(labeled.getText())) {
          wrong.add(moment + ": '" + labeled.getText() + "' is cut to '" + shown.getText() + "'");
        }
      }
    }
  }

  private void target(Node node, String moment, boolean scrolled) {
    targets++;
    Bounds size = node.getLayoutBounds();
    Bounds at = node.localToScene(size);
    boolean small = Math.min(size.getWidth(), size.getHeight()) < TWELVE_MILLIMETRES;
    boolean beside = at.getMinX() < -0.5 || at.getMaxX() > WIDE + 0.5;
    boolean below = !scrolled && (at.getMinY() < -0.5 || at.getMaxY() > HIGH + 0.5);
    if (small || beside || below) {
      String name = node instanceof Labeled labeled ? labeled.getText() : node.getAccessibleText();
      wrong.add(
          String.format(
              Locale.ROOT,
              "%s: '%s' %.0f x %.0f at %.0f, %.0f",
              moment,
              name,
              size.getWidth(),
              size.getHeight(),
              at.getMinX(),
              at.getMinY()));
    }
  }

  private void press(Scene scene, String words) {
    for (Node node : scene.getRoot().lookupAll(".button")) {
      if (node instanceof Button button && button.getText().startsWith(words)) {
        button.fire();
        return;
      }
    }
    throw new AssertionError("there is no button " + words);
  }

  private void swap(TestDay day, double scale) {
    Look look = look(scale);
    SwapModel swap = SwapPageTest.model(day);
    Scene scene = scene(look, new SwapPage(look, swap, () -> {}));
    look(scene, "phrase");
    swap.phrase("wrong words");
    look(scene, "wrong phrase");
    swap.phrase(day.phrase());
    look(scene, "PIN");
    swap.choosePin("4711");
    look(scene, "not begun");
    swap.work().begin();
    day.helper().settings(0, 0).forEach(s -> swap.work().measured(s.name(), "1"));
    look(scene, "outside tolerance");
    press(scene, "Something happened");
    look(scene, "events");
    swap.hide();
    look(scene, "blank");
    scene.setRoot(new Pane());
  }

  private void ride(TestDay day, double scale) {
    Look look = look(scale);
    RideModel ride = Models.ride(day);
    Scene scene = scene(look, new RidePage(look, ride, () -> {}));
    look(scene, "waiting");
    ride.handedOver();
    while (ride.sheetProperty().get().lap() == null) {
      look(scene, "warm-up");
      ride.warmUpRidden();
    }
    ride.handedOver();
    ride.watches().timedBy("RIDER");
    ride.watches().start("lap time");
    look(scene, "watch running");
    ride.watches().stop("lap time");
    look(scene, "watch stopped");
    press(scene, "Something happened");
    look(scene, "events");
    press(scene, "Back to the sheet");
    ride.lapDone();
    look(scene, "done");
    scene.setRoot(new Pane());
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 1.5, 2})
  void nothingOnSwapOrRideIsTooSmallOutsideTheWindowOrCutOff(double scale) {
    for (String plan : List.of(TestDay.EIGHT, FourSetups.plan(24))) {
      try (TestDay day = new TestDay(folder, plan, plan.length())) {
        Window.run(() -> swap(day, scale));
        Window.run(() -> ride(day, scale));
      }
    }
    assertThat(targets).isGreaterThan(250);
    assertThat(words).isGreaterThan(400);
    assertThat(wrong).isEmpty();
  }
}
