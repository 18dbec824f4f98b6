package blindlap.screen.part;

import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/**
 * A button for what cannot be undone: the first press says what will follow and asks once. The
 * button that goes on stands elsewhere than the one that was pressed, so that a second press on the
 * same place, or Enter pressed twice, changes nothing.
 */
public final class AskedOnce extends VBox {
  private final Look look;
  private final Button first;
  private final ReadOnlyBooleanWrapper asking = new ReadOnlyBooleanWrapper();
  private boolean inOneRow;

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

  /** True from the first press until one of the two buttons is pressed. */
  public ReadOnlyBooleanProperty askingProperty() {
    return asking.getReadOnlyProperty();
  }

  /** Asks beside its buttons, where there is width and no height. */
  public void inOneRow() {
    inOneRow = true;
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
    return WholeInView.together(
        new VBox(10, choice(look, words, work, not), follows(words.follows())));
  }

  /**
   * The same in less height: what will follow stands beside its two buttons.
   *
   * @param work what goes on
   * @param not what changes nothing
   */
  public static HBox beside(Look look, Words words, Runnable work, Runnable not) {
    Label follows = follows(words.follows());
    HBox.setHgrow(follows, Priority.ALWAYS);
    FlowPane choice = choice(look, words, work, not);
    choice.setMinWidth(USE_PREF_SIZE);
    HBox row = WholeInView.together(new HBox(16, choice, follows));
    row.setAlignment(Pos.CENTER_LEFT);
    return row;
  }

  private static Label follows(String words) {
    Label follows = new Label(words);
    follows.setWrapText(true);
    follows.setMinHeight(USE_PREF_SIZE);
    follows.getStyleClass().add("strong");
    return follows;
  }

  private static FlowPane choice(Look look, Words words, Runnable work, Runnable not) {
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
    return new FlowPane(12, 12, keeps, goesOn);
  }

  private void ask(Words words, Runnable work) {
    Runnable goOn =
        () -> {
          withdrawn(); // else what comes first on the page had the focus, under the same key
          work.run();
        };
    asking.set(true);
    // What changes nothing stands where the finger is.
    getChildren()
        .setAll(
            inOneRow
                ? beside(look, words, goOn, this::withdrawn)
                : question(look, words, goOn, this::withdrawn));
  }

  private void withdrawn() {
    asking.set(false);
    getChildren().setAll(first);
    first.requestFocus();
  }

  private static Button button(Look look, String words, Runnable action) {
    Button button = new Button(words);
    button.minHeightProperty().bind(look.touch());
    button.setMinWidth(USE_PREF_SIZE);
    button.setOnAction(e -> action.run());
    return button;
  }
}
