package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import java.nio.file.Path;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Levels have no letters, shapes or inks: the Review page of a steps day does without them. */
class StepsReviewTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"levels: [4, 7, 10] | 12 | 3", "levels: [3, 5, 7, 9, 11, 14] | 18 | 6"})
  void anUnsealedStepsDayIsShownWithItsLevelsAndGuesses(String levels, int stints, int number) {
    try (TestDay day = new TestDay(folder, StepsTestDay.plan(levels, stints), 4)) {
      StepsTestDay.ride(day, stints, stint -> 180 + stint * 7 % 5);
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            Scene scene = new Scene(new ReviewPage(look, model, new NoDialogs()), 1280, 2400);
            look.dress(scene);
            Window.picture(scene, "review-steps-" + number);
            assertThat(SceneText.of(scene))
                .contains("Shock K, rebound at ")
                .contains(stints + " of " + stints + " stints used");
          });
    }
  }
}
