package blindlap.screen.trail;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.desk.Desk;
import blindlap.desk.TrailDraft;
import blindlap.exchange.QuarryTrail;
import blindlap.screen.Keyboard;
import blindlap.screen.NoDialogs;
import blindlap.screen.Window;
import blindlap.screen.part.Background;
import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import blindlap.screen.plan.PlanDesk;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The Trail page by someone who has only a keyboard. */
class TrailKeyboardTest {
  @TempDir Path folder;
  private Stage stage;
  private Scene scene;
  private TrailModel model;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private List<TrailDraft.Across> gates() {
    return Window.call(() -> model.hand().sightProperty().get().draft().orElseThrow().gates());
  }

  @Test
  void gatesAreMovedSetNamedTakenAwayTakenBackAndKept() {
    try (Desk desk = PlanDesk.open(folder, 1)) {
      desk.trails().keep(QuarryTrail.trail());
      Window.run(
          () -> {
            Look look = new Look();
            model = new TrailModel(desk.trails(), Background.immediate());
            scene = new Scene(new TrailPage(look, model, new NoDialogs()), 1182, 768);
            look.dress(scene);
            stage = new Stage();
            stage.setScene(scene);
            stage.show();
            model.refresh();
          });
      Keyboard keys = new Keyboard(scene);
      keys.goTo("Gate post");
      keys.press(KeyCode.DOWN);
      keys.press(KeyCode.RIGHT);
      keys.press(KeyCode.RIGHT);
      keys.press(KeyCode.SHIFT, KeyCode.LEFT);
      double moved = gates().get(1).along();
      assertThat(moved).isBetween(201.8, 202.1);
      keys.press(KeyCode.CONTROL, KeyCode.Z);
      assertThat(gates().get(1).along()).isGreaterThan(moved);
      keys.press(KeyCode.DELETE);
      assertThat(gates()).hasSize(3);
      keys.goTo("New gate at");
      keys.type("300");
      keys.press(KeyCode.ENTER);
      assertThat(gates()).hasSize(4);
      keys.goTo("Width");
      keys.press(KeyCode.CONTROL, KeyCode.A);
      keys.type("30");
      keys.press(KeyCode.ENTER);
      assertThat(gates().get(1).width()).isEqualTo(30);
      // After a press on the drawing the arrow keys move the gate that it set.
      Window.run(
          () -> {
            PlotView profile = (PlotView) scene.getRoot().lookup(".along-line");
            TrailPageTest.press(profile, profile.getWidth() * 0.8, profile.getHeight() / 2);
          });
      assertThat(keys.here()).contains("Split 2, split");
      double set =
          Window.call(() -> model.hand().sightProperty().get().gate().orElseThrow().along());
      keys.press(KeyCode.RIGHT);
      assertThat(gates().get(3).along()).isEqualTo(set + 1);
      keys.goTo("Keep as a version");
      keys.press(KeyCode.SPACE);
      assertThat(desk.trails().versions("Quarry loop")).hasSize(2);
      Window.run(stage::hide);
    }
  }
}
