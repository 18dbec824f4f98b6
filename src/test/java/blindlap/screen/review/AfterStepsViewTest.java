package blindlap.screen.review;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.RamFolder;
import blindlap.desk.Sessions;
import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
import blindlap.screen.Models;
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
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.layout.StackPane;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a steps day into new plans, by the buttons of its Review page. */
class AfterStepsViewTest {
  private @TempDir(factory = RamFolder.class) Path folder;

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private static void done(Sessions.Result result) {
    assertThat(result).as(String.valueOf(result)).isInstanceOf(Sessions.Result.Done.class);
  }

  @Test
  void itsButtonsKeepDraftsAndTheCautionStandsBesideThem() {
    String plan = StepsTestDay.plan("levels: [4, 7, 10], least: 2, most: 16", 12);
    try (TestDay day = new TestDay(folder, plan, 4)) {
      List<LapInput> laps = new ArrayList<>();
      String order = day.order();
      for (int stint = 1; stint <= 12; stint++) {
        int level = order.charAt(stint - 1) - 'A';
        laps.add(
            LapInput.of(
                new LapId(stint, 1),
                Map.of("lap time", new BigDecimal(180 + 4 * level + stint * 7 % 3))));
      }
      done(
          day.desk()
              .sessions()
              .act(day.id(), state -> new DayCommands(state).record(laps, Source.FILE)));
      done(day.desk().sessions().act(day.id(), state -> new LifeCommands(state).closeDay()));
      done(day.desk().sessions().act(day.id(), state -> new LifeCommands(state).closeReview()));
      Window.run(
          () -> {
            Look look = new Look();
            ReviewModel model = Models.review(day.desk(), Background.immediate());
            model.open(day.id());
            assertThat(model.afterSteps().offer()).as("while the key is sealed").isEmpty();
            done(day.desk().keys().unseal(day.state(), day.phrase()));
            model.open(day.id());
            AfterStepsView view =
                new AfterStepsView(model.afterSteps(), model.afterSteps().offer().orElseThrow());
            Scene scene = new Scene(new StackPane(view), 760, 300);
            look.dress(scene);
            assertThat(SceneText.of(scene))
                .contains("Compare the two best: 4 clicks and 7 clicks")
                .contains("Take 4 clicks", "Take 7 clicks", "Take 10 clicks")
                .contains("the maker's limits as you typed them")
                .contains("It approves no part and no setting.");
            Node after = scene.lookup("#after-steps");
            Window.picture(scene, "review-after-steps");
            for (Node button : after.lookupAll(".button")) {
              ((Button) button).fire();
            }
          });
      List<Map<String, Object>> drafts = List.copyOf(day.desk().planning().drafts().values());
      assertThat(drafts).hasSize(4);
      assertThat(String.valueOf(drafts.get(0).get("setups")))
          .contains("Shock K, rebound 4 clicks", "Shock K, rebound 7 clicks");
      assertThat(drafts.subList(1, 4))
          .extracting(draft -> String.valueOf(draft.get("setups")))
          .allSatisfy(setups -> assertThat(setups).contains("name=Shock K", "name=sag"))
          .satisfiesExactlyInAnyOrder(
              setups -> assertThat(setups).contains("value=4"),
              setups -> assertThat(setups).contains("value=7"),
              setups -> assertThat(setups).contains("value=10"));
    }
  }
}
