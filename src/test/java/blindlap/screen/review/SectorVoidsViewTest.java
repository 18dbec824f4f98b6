package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Desk;
import blindlap.desk.TestDay;
import blindlap.desk.TrackDay;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.session.SectorVoided;
import blindlap.session.day.LapId;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sector is void alone in the blind review, and that is taken back there. */
class SectorVoidsViewTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static Scene scene(TrackDay day) {
    Look look = new Look();
    Desk desk = day.day().desk();
    BlindReviewModel model =
        new BlindReviewModel(
            desk.sessions(),
            desk.keys(),
            new MasksModel(desk.masks(), Background.immediate(), () -> {}),
            Background.immediate(),
            () -> {},
            words -> {});
    model.show(day.state());
    Scene scene = new Scene(new BlindReviewPage(look, model), 1180, 2400);
    look.dress(scene);
    SceneText.of(scene);
    return scene;
  }

  private static Button button(Scene scene, String words) {
    SceneText.of(scene);
    return scene.getRoot().lookupAll(".button").stream()
        .filter(node -> node instanceof Button b && b.getText().equals(words))
        .map(Button.class::cast)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no button " + words));
  }

  @SuppressWarnings("unchecked")
  private static void choose(Scene scene, String name, int which) {
    scene.getRoot().lookupAll(".combo-box").stream()
        .filter(node -> ("One sector void: " + name).equals(node.getAccessibleText()))
        .map(node -> (ComboBox<Object>) node)
        .forEach(box -> box.getSelectionModel().select(which));
  }

  @Test
  void oneSectorIsDeclaredVoidAndKeptAfterAll() {
    try (TrackDay day = new TrackDay(folder, TrackDay.plan(), 3).clear()) {
      day.close(false);
      Window.run(
          () -> {
            Scene scene = scene(day);
            assertThat(button(scene, "Void this sector").isDisabled()).isTrue();
            choose(scene, "lap", 4);
            choose(scene, "sector", 1);
            choose(scene, "event", BlindReviewModel.events().indexOf("traffic"));
            button(scene, "Void this sector").fire();
            List<SectorVoided> standing =
                List.copyOf(day.state().recorded().sectorVoids().get(new LapId(5, 1)).values());
            assertThat(standing).hasSize(1);
            assertThat(standing.get(0).sector().to()).isEqualTo("Bridge");
            assertThat(standing.get(0).afterValuesSeen()).isTrue();
            assertThat(SceneText.of(scene))
                .contains("Lap 5, Rock garden to Bridge: void, traffic, made after values");
            button(scene, "Keep it after all").fire();
            assertThat(day.state().recorded().sectorVoids().get(new LapId(5, 1))).isEmpty();
          });
    }
  }

  @Test
  void withoutATrailInThePlanNoSectorIsAskedFor() {
    try (TrackDay day = new TrackDay(folder, TestDay.EIGHT, 3).clear()) {
      day.close(false);
      Window.run(() -> assertThat(SceneText.of(scene(day))).doesNotContain("sector"));
    }
  }
}
