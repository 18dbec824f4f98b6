package blindlap.screen;

import static org.assertj.core.api.Assertions.assertThat;

import blindlap.screen.part.Fonts;
import blindlap.screen.part.Look;
import blindlap.screen.part.Shell;
import blindlap.screen.part.Theme;
import blindlap.wording.day.WordList;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The list of words under F1, by keyboard alone. */
class WordsPaneTest {
  private final Look look = new Look();
  private final Shell shell = new Shell();
  private final TextField field = new TextField();
  private final TextArea text = new TextArea("We ride two stints on each");
  private final Button button = new Button("Close the day");
  private final Button plain = new Button("Go");
  private final VBox swap = new VBox(new Button("Dummy swap: refit Shock K"));

  @BeforeAll
  static void window() throws InterruptedException {
    Window.start();
    Window.run(Fonts::load);
  }

  private Scene scene(int width, int height) {
    Label title = new Label("Worthwhile difference");
    VBox page = new VBox(new VBox(title, field), new StackPane(text), button, plain);
    Map<Shell.Page, Supplier<? extends Node>> makers =
        Map.of(Shell.Page.NOTEBOOK, () -> page, Shell.Page.SWAP, () -> swap);
    Scene scene = new Scene(new ShellView(look, shell, makers, List.of()), width, height);
    look.dress(scene);
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return scene;
  }

  private static void press(Scene scene, KeyCode key) {
    Node focus = scene.getFocusOwner();
    Event.fireEvent(
        focus == null ? scene : focus,
        new KeyEvent(KeyEvent.KEY_PRESSED, "", "", key, false, false, false, false));
    scene.getRoot().applyCss();
    scene.getRoot().layout();
  }

  private static TextField find(Scene scene) {
    return (TextField) scene.lookup("#words-find");
  }

  @SuppressWarnings("unchecked") // it is our own list
  private static ListView<WordList.Word> list(Scene scene) {
    return (ListView<WordList.Word>) scene.lookup("#words-list");
  }

  private static String first(Scene scene) {
    return list(scene).getItems().get(0).name();
  }

  private String lookedUp(Scene scene, Node focus) {
    focus.requestFocus();
    press(scene, KeyCode.F1);
    String typed = find(scene).getText();
    assertThat(scene.getFocusOwner()).isEqualTo(find(scene));
    press(scene, KeyCode.ESCAPE);
    assertThat(scene.lookup("#words")).isNull();
    assertThat(scene.getFocusOwner()).as("what had the focus has it again").isEqualTo(focus);
    return typed;
  }

  @Test
  void theWordInHandIsLookedUpAndWhatHadTheFocusGetsItBack() {
    Window.run(
        () -> {
          Scene scene = scene(900, 700);
          assertThat(lookedUp(scene, field)).isEqualTo("worthwhile difference");
          assertThat(lookedUp(scene, button)).isEqualTo("close the day");
          assertThat(lookedUp(scene, plain)).isEmpty();
          text.positionCaret(15);
          assertThat(lookedUp(scene, text)).isEqualTo("stint");
          field.setText("the drift of a lap");
          field.selectRange(4, 9);
          assertThat(lookedUp(scene, field)).isEqualTo("drift");
          field.setText("Quarry loop");
          field.positionCaret(3);
          assertThat(lookedUp(scene, field)).isEqualTo("worthwhile difference");
        });
  }

  @Test
  void whatIsTypedNextSearchesAndArrowsMoveThroughTheList() {
    Window.run(
        () -> {
          Scene scene = scene(900, 700);
          field.requestFocus();
          press(scene, KeyCode.F1);
          assertThat(find(scene).getSelectedText()).isEqualTo("worthwhile difference");
          find(scene).setText("mask");
          assertThat(first(scene)).isEqualTo("mask");
          press(scene, KeyCode.DOWN);
          assertThat(list(scene).getSelectionModel().getSelectedIndex()).isEqualTo(1);
          press(scene, KeyCode.UP);
          press(scene, KeyCode.UP);
          assertThat(list(scene).getSelectionModel().getSelectedIndex()).isZero();
          find(scene).setText("qqq");
          assertThat(list(scene).getItems()).isEmpty();
          press(scene, KeyCode.DOWN);
          press(scene, KeyCode.F1);
          assertThat(scene.lookup("#words")).isNull();
          plain.requestFocus();
          press(scene, KeyCode.F1);
          assertThat(find(scene).getText()).as("nothing is kept").isEmpty();
          assertThat(list(scene).getItems()).isEqualTo(WordList.bundled().all());
        });
  }

  @Test
  void ofAHelpersPageNothingIsLookedUpAndThePageIsLeft() {
    Window.run(
        () -> {
          Scene scene = scene(900, 700);
          shell.go(Shell.Page.SWAP);
          assertThat(lookedUp(scene, swap.getChildren().get(0))).isEmpty();
          swap.getChildren().get(0).requestFocus();
          press(scene, KeyCode.F1);
          assertThat(swap.getScene()).as("a helper's page that is left closes").isNull();
          shell.go(Shell.Page.NOTEBOOK);
          assertThat(scene.lookup("#words")).as("another page is in view").isNull();
          assertThat(button.getScene()).isEqualTo(scene);
        });
  }

  @Test
  void aQuestionBeforeLeavingIsAskedAboveThePageAndNotAboveTheWords() {
    Window.run(
        () -> {
          Scene scene = scene(900, 700);
          shell.guard(Shell.Page.NOTEBOOK, () -> Shell.Question.of("Lost?", "Leave"), () -> {});
          press(scene, KeyCode.F1);
          shell.close(() -> {});
          assertThat(scene.lookup("#words")).isNull();
          assertThat(scene.lookup("#leave-stay")).isNotNull();
        });
  }

  @ParameterizedTest
  @EnumSource(Theme.class)
  void inEveryThemeAndWithLargeTextAllWordsAreWhole(Theme theme) throws IOException {
    for (double scale : new double[] {1, 2}) {
      Window.call(
          () -> {
            look.themeProperty().set(theme);
            look.textScaleProperty().set(scale);
            Scene scene = scene(1024, 768);
            ((Hyperlink) scene.lookup("#words-door")).fire();
            String name = "words-" + theme + "-" + Math.round(100 * scale);
            Window.picture(scene, name);
            Window.picture(scene, name);
            Node pane = scene.lookup("#words");
            assertThat(Within.of((VBox) pane, name).wrong()).isEmpty();
            long rows =
                pane.lookupAll(".list-cell").stream()
                    .filter(cell -> ((ListCell<?>) cell).getItem() != null)
                    .filter(cell -> cell.prefHeight(-1) <= ((ListCell<?>) cell).getHeight() + 1)
                    .count();
            assertThat(rows).isGreaterThanOrEqualTo(scale == 1 ? 7 : 3);
            return true;
          });
    }
  }
}
