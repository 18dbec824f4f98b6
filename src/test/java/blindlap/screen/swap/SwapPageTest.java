package blindlap.screen.swap;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.TestDay;
import blindlap.screen.Models;
import blindlap.screen.Window;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.session.SafetyCheck;
import java.nio.file.Path;
import java.time.Duration;
import javafx.scene.Scene;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

public class SwapPageTest {
  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  public static SwapModel model(TestDay day) {
    SwapModel model = Models.swap(day);
    return model;
  }

  @Test
  void thePageInEveryPhaseIsKeptAsAPicture(@TempDir Path folder) {
    try (TestDay day = new TestDay(folder, TestDay.EIGHT, 1)) {
      Window.run(
          () -> {
            Look look = new Look();
            look.themeProperty().set(Theme.SUNLIGHT);
            SwapModel model = model(day);
            Scene scene = new Scene(new SwapPage(look, model, () -> {}), 1280, 1350);
            look.dress(scene);
            Window.picture(scene, "swap-phrase");
            model.phrase(day.phrase());
            Window.picture(scene, "swap-pin");
            model.choosePin("4711");
            model.work().begin();
            day.clock().move(Duration.ofMinutes(8));
            model.touch();
            model.tick();
            for (SafetyCheck check : SafetyCheck.values()) {
              model.work().confirm(check.name(), true);
            }
            model.work().measured("compression", "7");
            model.work().measured("sag", "26.4");
            model.work().measured("front tyre", "1.6");
            Window.picture(scene, "swap-sunlight");
            model.hide();
            Window.picture(scene, "swap-blank");
          });
      assertThat(day.state().helperRecords()).isEmpty();
    }
  }
}
