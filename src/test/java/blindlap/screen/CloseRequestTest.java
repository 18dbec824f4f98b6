package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A stage that the window system asks to close, while a page has something to lose. */
class CloseRequestTest {
  private final AtomicReference<Optional<Shell.Question>> loses =
      new AtomicReference<>(Shell.Question.of("The phrase is dropped.", "Drop it"));
  private final AtomicInteger dropped = new AtomicInteger();
  private Stage stage;
  private Scene scene;

  @BeforeAll
  static void startWindowSystem() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  @BeforeEach
  void show() {
    Window.run(
        () -> {
          Look look = new Look();
          Shell shell = new Shell();
          shell.guard(Shell.Page.PLAN, loses::get, dropped::incrementAndGet);
          ShellView view =
              new ShellView(
                  look, shell, Map.of(Shell.Page.PLAN, Pane::new), List.of("quarry.blindlap"));
          shell.go(Shell.Page.PLAN);
          scene = new Scene(view, 900, 600);
          look.dress(scene);
          stage = new Stage();
          NotebookWindow.askBeforeClosing(stage, shell);
          stage.setScene(scene);
          stage.show();
        });
  }

  @AfterEach
  void hide() {
    Window.run(stage::hide);
  }

  /** What a window system sends when the corner of a window is pressed. */
  private void close() {
    Window.run(
        () -> {
          Event.fireEvent(stage, new WindowEvent(stage, WindowEvent.WINDOW_CLOSE_REQUEST));
          scene.getRoot().applyCss();
        });
  }

  private void press(String id) {
    Window.run(() -> ((Button) found(id)).fire());
  }

  private Node found(String id) {
    return scene.lookup("#" + id);
  }

  private boolean showing() {
    return Window.call(stage::isShowing);
  }

  @Test
  void asksFirstAndStayingHasTheFocusAndKeepsTheWindow() {
    close();
    assertThat(showing()).isTrue();
    assertThat(found("leaving")).isNotNull();
    assertThat(Window.call(scene::getFocusOwner)).isSameAs(found("leave-stay"));
    press("leave-stay");
    assertThat(showing()).isTrue();
    assertThat(found("leaving")).isNull();
    assertThat(dropped).hasValue(0);
  }

  @Test
  void askedTwiceItIsStillThereAndOnlyTheAnswerCloses() {
    close();
    close();
    assertThat(showing()).isTrue();
    press("leave-go");
    assertThat(showing()).isFalse();
    assertThat(dropped).hasValue(1);
  }

  @Test
  void closesAtOnceWhereNothingIsLost() {
    loses.set(Optional.empty());
    close();
    assertThat(showing()).isFalse();
  }
}
