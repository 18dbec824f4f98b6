package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TrackDay;
import blindlap.screen.Models;
import blindlap.screen.Reachable;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From the Ride page a recording of the day is brought in, once all laps are ridden. */
class RideRecordingTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static Optional<Button> button(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().startsWith("Bring a recording"))
        .map(Button.class::cast)
        .findFirst();
  }

  private static Scene scene(TrackDay day, double scale, Runnable recording) {
    Look look = new Look();
    look.scaleText(scale);
    StackPane holder = new StackPane();
    Scene scene = new Scene(holder, 1366 - 184, 768);
    look.dress(scene);
    RideWays on = new RideWays(() -> {}, recording);
    holder.getChildren().setAll(new RidePage(look, Models.ride(day.day()), null, () -> {}, on));
    // Whoever sees the page for the first time presses nothing at once.
    day.day().clock().move(Duration.ofSeconds(1));
    return scene;
  }

  @Test
  void theWayThereIsInReachOnceAllLapsAreRiddenAndOnceTheDayIsClosedAndNotBefore() {
    try (TrackDay day = new TrackDay(folder, TrackDay.plan(), 3)) {
      day.warmUp().lap(1, 6, 20);
      Window.run(() -> assertThat(button(scene(day, 1, () -> {}))).isEmpty());
      for (int stint = 2; stint <= 8; stint++) {
        day.lap(stint, 6, 20);
      }
      inReach(day);
      day.close(false);
      inReach(day);
    }
  }

  private static void inReach(TrackDay day) {
    Window.run(
        () -> {
          for (double scale : new double[] {1, 2}) {
            List<String> led = new ArrayList<>();
            Scene scene = scene(day, scale, () -> led.add("there"));
            button(scene).orElseThrow().fire();
            assertThat(led).containsExactly("there");
            assertThat(Reachable.wrong(scene)).isEmpty();
          }
        });
  }
}
