package blindlap.screen.part;

import javafx.scene.Parent;
import javafx.scene.control.Label;
import org.jspecify.annotations.Nullable;

/** What is wrong with a field: under it, or under the row that it stands in, with its name then. */
final class FieldMessage extends Label {
  private final TypedForm.Entry entry;
  private final String title;
  private @Nullable Parent row;

  FieldMessage(TypedForm.Entry entry, String title) {
    this.entry = entry;
    this.title = title;
    getStyleClass().addAll("strong", "note", "field-error");
    setWrapText(true);
    setMinHeight(USE_PREF_SIZE);
    textProperty().bind(entry.errorProperty());
    visibleProperty().bind(entry.errorProperty().isNotEmpty());
    managedProperty().bind(visibleProperty());
  }

  /** From now on the row says where it stands. */
  void standUnder(Parent under) {
    if (row == under) {
      return;
    }
    row = under;
    managedProperty().unbind();
    setManaged(false);
    textProperty().unbind();
    entry.errorProperty().addListener((o, before, now) -> say(now));
    say(entry.errorProperty().get());
  }

  private void say(String error) {
    setText(error.isEmpty() ? "" : title + ": " + error);
    Parent under = row;
    if (under != null) {
      under.requestLayout();
    }
  }
}
