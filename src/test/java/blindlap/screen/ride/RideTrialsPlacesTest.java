package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Keyboard;
import blindlap.screen.Models;
import blindlap.screen.Outside;
import blindlap.screen.Window;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page of a telling run: nothing outside the window, and answered by keys alone. */
class RideTrialsPlacesTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static Optional<ToggleButton> box(Scene scene, String words) {
    return scene.getRoot().lookupAll(".toggle-button").stream()
        .filter(n -> n instanceof ToggleButton b && b.getText().equals(words))
        .map(ToggleButton.class::cast)
        .findFirst();
  }

  private static List<String> words(Scene scene) {
    return scene.getRoot().lookupAll("*").stream()
        .filter(node -> node instanceof Labeled && node.isVisible())
        .map(node -> ((Labeled) node).getText())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void nothingLiesOutsideTheWindowInAnyStageOfATrial(double scale) {
    String plan =
        TellingTestDay.plan(
            "task: two-choice, trials: 100, attribute: support in the second half of the travel,"
                + " more: 6 clicks");
    try (TestDay day = new TestDay(folder, plan, 1)) {
      Map<String, List<String>> wrong = new TreeMap<>();
      Window.run(
          () -> {
            RideModel ride = Models.ride(day);
            Look look = new Look();
            look.textScaleProperty().set(scale);
            Scene scene = new Scene(new RidePage(look, ride, () -> {}), 1366, 768);
            look.dress(scene);
            look(scene, scale, "1-wait", wrong);
            ride.handedOver();
            ride.warmUpRidden();
            ride.handedOver();
            look(scene, scale, "2-first-lap", wrong);
            assertThat(box(scene, "lap 1")).isEmpty();
            ride.lapDone();
            look(scene, scale, "3-done", wrong);
            ride.next();
            ride.handedOver();
            look(scene, scale, "4-asked", wrong);
            assertThat(words(scene))
                .contains("Which lap had more support in the second half of the travel?")
                .doesNotContain("don't know");
            assertThat(box(scene, "certain").orElseThrow().isDisabled()).isTrue();
            ride.done().press();
            look(scene, scale, "5-open", wrong);
            ride.done().withdraw();
            ride.guess().choose(1);
            look(scene, scale, "6-answered", wrong);
            assertThat(box(scene, "certain").orElseThrow().isDisabled()).isFalse();
            assertThat(box(scene, "lap 2").orElseThrow().isSelected()).isTrue();
            ride.done().press();
            look(scene, scale, "7-done", wrong);
            ride.next();
            ride.handedOver();
            ride.voids().spoiled("TRAFFIC");
            look(scene, scale, "8-void", wrong);
            scene.setRoot(new Pane());
          });
      assertThat(wrong).isEmpty();
    }
  }

  private static void look(
      Scene scene, double scale, String moment, Map<String, List<String>> wrong) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    Window.look(scene, "trials-" + (int) (scale * 100) + "-" + moment);
    List<String> found = Outside.of(scene);
    if (scale == 1 && !found.isEmpty()) { // with large text the page is scrolled
      wrong.put(moment, found);
    }
  }

  @Test
  void aTrialIsAnsweredByKeysAlone() {
    try (TestDay day = new TestDay(folder, TellingTestDay.TWO_CHOICES, 2)) {
      RideModel ride = Models.ride(day);
      ride.handedOver();
      ride.warmUpRidden();
      ride.handedOver();
      ride.lapDone();
      ride.next();
      ride.handedOver();
      Stage[] stage = {null};
      Keyboard keys =
          Window.call(
              () -> {
                Scene scene = new Scene(new RidePage(new Look(), ride, () -> {}), 1366, 768);
                stage[0] = new Stage();
                stage[0].setScene(scene);
                stage[0].show();
                stage[0].requestFocus();
                return new Keyboard(scene);
              });
      Window.run(() -> day.clock().move(Deaf.FOR));
      keys.press(KeyCode.SPACE);
      assertThat(ride.guess().chosen()).as("the first box has the focus").isEqualTo(0);
      assertThat(day.state().day().guesses()).containsOnlyKeys(2);
      Window.run(stage[0]::close);
    }
  }
}
