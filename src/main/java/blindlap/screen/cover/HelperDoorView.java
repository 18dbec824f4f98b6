package blindlap.screen.cover;

import blindlap.screen.part.Look;
import java.util.function.Consumer;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.value.ObservableStringValue;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.PasswordField;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.InputEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.util.Duration;

/** What the helper's pages share: what is typed to open them, and what closes them. */
public final class HelperDoorView {
  /** Width of what stands in the door. */
  public static final double WIDTH = 620;

  private HelperDoorView() {}

  /**
   * A field for a secret with its button; what was typed is gone from the page once it is used.
   *
   * @param asked what is asked for, a sentence
   * @param title name of the field
   * @param open name of the button
   * @param trouble what was wrong with the last try
   * @param typed gets what was typed
   */
  public static Node[] secret(
      Look look,
      String asked,
      String title,
      String open,
      ObservableStringValue trouble,
      Consumer<String> typed) {
    Label name = new Label(title);
    name.getStyleClass().add("field-title");
    PasswordField field = new PasswordField();
    field.setId("secret");
    field.setAccessibleText(title);
    field.minHeightProperty().bind(look.touch());
    name.setLabelFor(field);
    Button button = new Button(open);
    button.getStyleClass().add("next");
    button.setId("secret-open");
    button.minHeightProperty().bind(look.touch());
    Runnable go =
        () -> {
          String words = field.getText();
          field.clear();
          typed.accept(words);
        };
    button.setOnAction(e -> go.run());
    field.setOnAction(e -> go.run());
    focused(field);
    Label wrong = new Label();
    wrong.setWrapText(true);
    wrong.setMinHeight(Label.USE_PREF_SIZE);
    wrong.getStyleClass().add("strong");
    wrong.textProperty().bind(trouble);
    return new Node[] {lead(asked), name, field, button, wrong};
  }

  /** It is what is needed: whoever comes here types at once. */
  private static void focused(PasswordField field) {
    field
        .sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene != null) {
                field.requestFocus();
              }
            });
  }

  public static Label lead(String words) {
    Label label = new Label(words);
    label.getStyleClass().add("lead");
    label.setWrapText(true);
    label.setMinHeight(Label.USE_PREF_SIZE);
    return label;
  }

  /** Large text may be higher than the window. */
  public static ScrollPane scrolled(Node content) {
    StackPane held = new StackPane(content);
    held.setPadding(new Insets(8)); // the mark of the focus lies around a field
    ScrollPane scroll = new ScrollPane(held);
    scroll.setFitToWidth(true);
    scroll.setFitToHeight(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    return scroll;
  }

  /**
   * Escape hides the page at once, as leaving it does; every touch and every second are told.
   *
   * @param touch someone is at the page
   * @param hide the page has to go blank
   * @param tick a second has passed while the page is in view
   */
  public static void watch(Node page, Runnable touch, Runnable hide, Runnable tick) {
    page.addEventFilter(InputEvent.ANY, e -> touch.run());
    page.addEventFilter(
        KeyEvent.KEY_PRESSED,
        e -> {
          if (e.getCode() == KeyCode.ESCAPE) {
            hide.run();
            e.consume();
          }
        });
    Timeline ticks = new Timeline(new KeyFrame(Duration.seconds(1), e -> tick.run()));
    ticks.setCycleCount(Animation.INDEFINITE);
    Runnable inView =
        () -> {
          if (page.getScene() == null) {
            hide.run(); // whoever leaves the page leaves it closed
            ticks.stop();
          } else {
            ticks.play();
          }
        };
    page.sceneProperty().addListener((o, before, scene) -> inView.run());
    if (page.getScene() != null) {
      ticks.play();
    }
  }
}
