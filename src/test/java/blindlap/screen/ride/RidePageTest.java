package blindlap.screen.ride;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import java.nio.file.Path;
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
}
