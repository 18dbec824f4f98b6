package blindlap.screen.part;

import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** A note beside what it explains; never the only place of something needed. */
public final class MarginNote extends VBox {
  private final Label text;

  /** A note with a title. */
  public MarginNote(String title, String body) {
    Label head = new Label(title);
    head.getStyleClass().add("title");
    text = new Label(body);
    text.getStyleClass().add("body");
    for (Label label : new Label[] {head, text}) {
      label.setWrapText(true);
      label.setMinHeight(USE_PREF_SIZE);
    }
    getStyleClass().add("margin-note");
    getChildren().setAll(head, text);
  }

  /** Says something else under the same title. */
  public void say(String body) {
    text.setText(body);
  }
}
