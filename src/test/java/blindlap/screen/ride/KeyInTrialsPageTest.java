package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.TellingTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.TellingTask;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Deaf;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import java.nio.file.Path;
import java.util.List;
import javafx.geometry.Insets;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The table to key a telling run into, as it is seen. */
class KeyInTrialsPageTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static List<String> asked(Scene scene, String column) {
    return scene.getRoot().lookupAll(".text-field").stream()
        .filter(TextField.class::isInstance)
        .map(node -> node.getAccessibleText())
        .filter(words -> words.endsWith(", " + column))
        .toList();
  }

  private static List<String> labels(Scene scene, String begins) {
    return scene.getRoot().lookupAll(".label").stream()
        .map(Labeled.class::cast)
        .map(Labeled::getText)
        .filter(words -> words.startsWith(begins))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2})
  void everyTrialHasItsNameAndOneAnswerAndARefusalStandsAtIt(double scale) {
    try (TestDay day = new TestDay(folder, TellingTestDay.shocks(TellingTask.TRIANGLE, 4), 2)) {
      Window.run(
          () -> {
            Look look = new Look();
            look.textScaleProperty().set(scale);
            KeyInModel model =
                new KeyInModel(
                    day.desk().keyingIn(), day.desk().riderDays(), Background.immediate());
            model.open(day.id());
            KeyInView view = new KeyInView(look, model, new Deaf(() -> 0));
            view.setPadding(new Insets(24));
            ScrollPane page = new ScrollPane(view);
            page.setFitToWidth(true);
            Scene scene = new Scene(page, 1280, 768);
            look.dress(scene);
            Stage stage = new Stage();
            stage.setScene(scene);
            stage.show();
            int event = model.columns().indexOf("void");
            model.cell(KeyInModel.Stage.FIRST, 1, event, "traffic");
            model.cell(KeyInModel.Stage.FIRST, 2, model.columns().indexOf("answer"), "2");
            scene.getRoot().applyCss();
            scene.getRoot().layout();
            Window.look(scene, "ride-key-in-trials-" + (int) (100 * scale));

            assertThat(asked(scene, "answer"))
                .containsExactlyInAnyOrder(
                    "trial 1, lap 3, answer",
                    "trial 2, lap 6, answer",
                    "trial 3, lap 9, answer",
                    "trial 4, lap 12, answer");
            assertThat(asked(scene, "void")).hasSize(12);
            assertThat(labels(scene, "Trial "))
                .contains("Trial 1: laps 1 to 3", "Trial 4: laps 10 to 12");
            assertThat(labels(scene, "lap 3: Trial 1 has both a void and an answer")).hasSize(1);
            assertThat(labels(scene, "Timed or scored by")).isEmpty();
            stage.close();
          });
    }
  }
}
