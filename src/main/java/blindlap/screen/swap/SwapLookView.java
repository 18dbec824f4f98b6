package blindlap.screen.swap;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.wording.LookWords;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableStringValue;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** A row on looks before the end, for days that declare any; gone while there is nothing to say. */
final class SwapLookView extends HBox {
  SwapLookView(Look look, SwapLook model) {
    super(16);
    setAlignment(Pos.CENTER_LEFT);
    getStyleClass().add("swap-look");
    Label said = words(model.saidProperty());
    said.getStyleClass().add("strong");
    Label trouble = words(model.troubleProperty());
    trouble.getStyleClass().add("note");
    HBox.setHgrow(trouble, Priority.ALWAYS);
    Button button = new Button(LookWords.say("button"));
    button.setId("look-now");
    button.setTooltip(new Tooltip(LookWords.say("what")));
    button.setAccessibleHelp(LookWords.say("what"));
    button.minHeightProperty().bind(look.touch());
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.visibleProperty().bind(model.dueProperty());
    button.managedProperty().bind(button.visibleProperty());
    button.setOnAction(e -> model.look());
    Label hint =
        words(Bindings.when(model.dueProperty()).then(LookWords.say("hint")).otherwise(""));
    hint.getStyleClass().add("note");
    getChildren().setAll(button, said, hint, Fields.wide(trouble));
    visibleProperty()
        .bind(model.saidProperty().isNotEmpty().or(model.troubleProperty().isNotEmpty()));
    managedProperty().bind(visibleProperty());
  }

  private static Label words(ObservableStringValue text) {
    Label label = new Label();
    label.setWrapText(true);
    label.setMinHeight(Region.USE_PREF_SIZE);
    label.textProperty().bind(text);
    label.managedProperty().bind(label.textProperty().isNotEmpty());
    return label;
  }
}
