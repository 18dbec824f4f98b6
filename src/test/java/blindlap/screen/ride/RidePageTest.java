package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.StepsTestDay;
import blindlap.desk.TestDay;
import blindlap.plan.StepsDay;
import blindlap.screen.Models;
import blindlap.screen.SceneText;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.GuessWords;
import blindlap.session.day.Guess;
import java.nio.file.Path;
import java.util.Objects;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

public class RidePageTest {
  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void thePageInEveryStageIsKeptAsAPicture(@TempDir Path folder) {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      Window.run(
          () -> {
            Look look = new Look();
            look.themeProperty().set(Theme.SUNLIGHT);
            RideModel model = Models.ride(day);
            Scene scene = new Scene(new RidePage(look, model, () -> {}), 1280, 1250);
            look.dress(scene);
            Window.picture(scene, "ride-wait");
            model.handedOver();
            model.warmUpRidden();
            model.handedOver();
            Window.picture(scene, "ride-ready");
            model.watches().timedBy("RIDER");
            model.watches().start("lap time");
            model.watches().stop("lap time");
            model.answer("grip in the rocks", java.math.BigDecimal.valueOf(55));
            Window.picture(scene, "ride-sunlight");
            model.lapDone();
            Window.picture(scene, "ride-done");
          });
      assertThat(day.state().lapsRidden()).isEqualTo(1);
    }
  }

  /** Nobody tells five levels apart by name: the guess is the end that the level was nearer to. */
  @Test
  void onAStepsDayTheEndIsGuessed(@TempDir Path folder) {
    try (TestDay day = new TestDay(folder, StepsTestDay.NINE, 1)) {
      Window.run(
          () -> {
            Look look = new Look();
            RideModel model = Models.ride(day);
            Scene scene = new Scene(new RidePage(look, model, () -> {}), 1280, 1250);
            look.dress(scene);
            model.handedOver();
            model.warmUpRidden();
            model.handedOver();
            model.watches().timedBy("RIDER");
            model.watches().start("lap time");
            model.watches().stop("lap time");
            model.guess().choose(1);
            Window.picture(scene, "ride-steps");
            assertThat(model.questions().setups())
                .containsExactly("nearer the low end", "nearer the high end");
            assertThat(SceneText.of(scene))
                .contains("nearer the low end", "nearer the high end", "don't know")
                .doesNotContain("clicks");
          });
      Guess guess = Objects.requireNonNull(day.state().guesses().get(1));
      assertThat(guess.setup()).isEqualTo(StepsDay.End.HIGH.ordinal());
      assertThat(GuessWords.text(day.state().plan(), guess)).isEqualTo("high");
    }
  }
}
