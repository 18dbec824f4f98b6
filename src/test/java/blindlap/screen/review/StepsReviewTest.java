package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Sessions;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.NoDialogs;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.session.DayCommands;
import blindlap.session.LifeCommands;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.Source;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"levels: [4, 7, 10] | 12 | 3", "levels: [3, 5, 7, 9, 11, 14] | 18 | 6"})
  void anUnsealedStepsDayIsShownWithItsLevelsAndGuesses(String levels, int stints, int number) {
    try (TestDay day = new TestDay(folder, StepsTestDay.plan(levels, stints), 4)) {
      List<LapInput> laps = new ArrayList<>();
      for (int stint = 1; stint <= stints; stint++) {
        laps.add(
            LapInput.of(
                new LapId(stint, 1), Map.of("lap time", new BigDecimal(180 + stint * 7 % 5))));
      }
      done(
          day.desk()
              .sessions()
              .act(day.id(), state -> new DayCommands(state).record(laps, Source.FILE)));
      done(day.desk().sessions().act(day.id(), state -> new LifeCommands(state).closeDay()));
      done(day.desk().sessions().act(day.id(), state -> new LifeCommands(state).closeReview()));
      done(day.desk().keys().unseal(day.state(), day.phrase()));
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
