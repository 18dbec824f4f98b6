package blindlap.screen.part;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.Keyboard;
import blindlap.screen.Window;
import java.util.Objects;
import javafx.geometry.Bounds;
import javafx.scene.Scene;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class FocusInViewTest {
  private final Look look = new Look();
  private final Region above = new Region();
  private final TextField field = new TextField();
  private final Region bar = new Region();
  private final PageGrid page = new PageGrid(look);
  private final BorderPane root = new BorderPane(page, null, null, bar, null);

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @Test
  void whatIsTypedIntoStaysInViewWhileThePageAboveItAndTheBarBelowItGrowAtOnce() {
    Stage stage = Window.call(this::window);
    Keyboard keys = new Keyboard(Objects.requireNonNull(root.getScene()));
    keys.press(KeyCode.SHIFT);
    Window.run(
        () -> {
          field.requestFocus();
          double hidden =
              page.getContent().getBoundsInLocal().getHeight()
                  - page.getViewportBounds().getHeight();
          // Its lower edge lies just above the bar.
          page.setVvalue(page.getVvalue() - (lower() - 8) / hidden);
        });
    keys.press(KeyCode.SHIFT);
    assertThat(Window.call(this::lower)).isBetween(0.0, 10.0);
    Window.run(
        () -> {
          high(above, 960);
          high(bar, 120);
        });
    keys.press(KeyCode.SHIFT);
    keys.press(KeyCode.SHIFT);
    assertThat(Window.call(this::lower)).isBetween(0.0, 400.0);
    Window.run(stage::close);
  }

  private Stage window() {
    high(above, 900);
    high(bar, 60);
    Region below = new Region();
    high(below, 900);
    page.add(new VBox(above, field, below));
    FocusInView inView = new FocusInView(page);
    Scene scene = new Scene(root, 900, 600);
    look.dress(scene);
    inView.watch(scene);
    scene.focusOwnerProperty().addListener((o, before, now) -> inView.focus(now));
    Stage stage = new Stage();
    stage.setScene(scene);
    stage.show();
    return stage;
  }

  /** How far above the bar the field ends. */
  private double lower() {
    Bounds at = field.localToScene(field.getLayoutBounds());
    return bar.localToScene(bar.getLayoutBounds()).getMinY() - at.getMaxY();
  }

  private static void high(Region region, double height) {
    region.setMinHeight(height);
    region.setPrefHeight(height);
  }
}
