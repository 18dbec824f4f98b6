package blindlap.screen.part;

import java.util.function.Supplier;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/**
 * A button for what cannot be undone: the first press says what will follow and asks once. The
 * button that goes on stands elsewhere than the one that was pressed, so that a second press on the
 * same place, or Enter pressed twice, changes nothing.
 */
public final class AskedOnce extends VBox {
  private final Look look;
  private final Button first;

  /**
   * What is asked.
   *
   * @param does what the button does: on it, and on the one that goes on
   * @param follows what will follow, a sentence
   * @param not on the button that changes nothing
   */
  public record Words(String does, String follows, String not) {}

  /** A button that asks before it works. */
  public AskedOnce(Look look, Words words, Runnable work) {
    this(look, words, () -> words, work);
  }

  /**
   * A button that asks by what is so when it is pressed.
   *
   * @param now what is asked then
   */
  public AskedOnce(Look look, Words words, Supplier<Words> now, Runnable work) {
    super(10);
    this.look = look;
    this.first = button(look, words.does(), () -> ask(now.get(), work));
    getChildren().setAll(first);
  }

  /** The button as it is before it asks, for its looks. */
  public Button first() {
    return first;
  }

  /**
   * The question alone, to stand below what was pressed first; what changes nothing comes first and
   * has the focus.
   *
   * @param work what goes on
   * @param not what changes nothing
   */
  public static VBox question(Look look, Words words, Runnable work, Runnable not) {
    Label follows = new Label(words.follows());
    follows.setWrapText(true);
    follows.setMinHeight(USE_PREF_SIZE);
    follows.getStyleClass().add("strong");
    Button keeps = button(look, words.not(), not);
    keeps.setAccessibleText(words.not() + ". " + words.follows());
    Button goesOn = button(look, words.does(), work);
    keeps
        .sceneProperty()
        .addListener(
            (o, before, scene) -> {
              if (scene != null) {
                keeps.requestFocus();
              }
            });
    return WholeInView.together(new VBox(10, new FlowPane(12, 12, keeps, goesOn), follows));
  }

  private void ask(Words words, Runnable work) {
    Runnable goOn =
        () -> {
          getChildren().setAll(first);
          first.requestFocus(); // else what comes first on the page had it, under the same key
          work.run();
        };
    Runnable withdraw =
        () -> {
          getChildren().setAll(first);
          first.requestFocus();
        };
    // What changes nothing stands where the finger is.
    getChildren().setAll(question(look, words, goOn, withdraw));
  }

  private static Button button(Look look, String words, Runnable action) {
    Button button = new Button(words);
    button.minHeightProperty().bind(look.touch());
    button.setMinWidth(USE_PREF_SIZE);
    button.setOnAction(e -> action.run());
    return button;
  }
}
