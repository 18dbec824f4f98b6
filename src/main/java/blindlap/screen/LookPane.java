package blindlap.screen;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.Theme;
import blindlap.wording.NotebookWords;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** Text size, theme and the way to the words, in sight under the names of the pages. */
final class LookPane extends VBox {
  private static final double STEP = 0.1;

  /**
   * @param under what stands under them
   */
  LookPane(Look look, Node under) {
    super(6);
    getStyleClass().add("look");
    Label size = new Label();
    size.textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> NotebookWords.say("look.size", Math.round(100 * look.textScale())),
                look.textScaleProperty()));
    size.setMinWidth(USE_PREF_SIZE);
    HBox row =
        new HBox(6, text(look, "−", "smaller", -STEP), size, text(look, "+", "larger", STEP));
    row.setAlignment(Pos.CENTER_LEFT);
    getChildren()
        .setAll(Fields.words(NotebookWords.say("look.text"), "second"), row, theme(look), under);
  }

  private static Button text(Look look, String sign, String key, double by) {
    Button button = Fields.button(sign, () -> look.scaleText(look.textScale() + by));
    button.setAccessibleText(NotebookWords.say("look." + key));
    button.setId("text-" + key);
    button.setMinWidth(USE_PREF_SIZE);
    button.getStyleClass().add("quiet");
    return button;
  }

  private static ComboBox<Theme> theme(Look look) {
    ComboBox<Theme> box = new ComboBox<>();
    box.getItems().setAll(Theme.values());
    box.setConverter(
        new StringConverter<>() {
          @Override
          public String toString(Theme theme) {
            return theme == null ? "" : NotebookWords.say("look." + theme.name());
          }

          @Override
          public Theme fromString(String words) {
            return look.themeProperty().get();
          }
        });
    box.valueProperty().bindBidirectional(look.themeProperty());
    box.setAccessibleText(NotebookWords.say("look.theme"));
    box.setId("theme");
    return box;
  }
}
