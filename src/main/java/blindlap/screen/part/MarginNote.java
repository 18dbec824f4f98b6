package blindlap.screen.part;

import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** A note beside what it explains; never the only place of something needed. */
public final class MarginNote extends VBox {
  private final Label text;

  /** A note with a title. */
  public MarginNote(String title, String body) {
    this(title, new Region(), body);
    getChildren().remove(1);
  }

  /** A note with rows between its title and its words. */
  public MarginNote(String title, Region rows, String body) {
    Label head = new Label(title);
    head.getStyleClass().add("title");
    text = new Label(body);
    text.getStyleClass().add("body");
    for (Label label : new Label[] {head, text}) {
      label.setWrapText(true);
      label.setMinHeight(USE_PREF_SIZE);
    }
    getStyleClass().add("margin-note");
    getChildren().setAll(head, rows, text);
  }

  /** Says something else under the same title. */
  public void say(String body) {
    text.setText(body);
  }
}
