package blindlap.screen.part;

import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/**
 * "Saved 11:44:07" and, below it, what is still open. The caller says "saved" only after the disk
 * has it.
 */
public final class SavedLine extends VBox {
  private final Label saved = new Label();
  private final Label open = new Label();

  /** A line that says nothing yet. */
  public SavedLine() {
    super(4);
    getStyleClass().add("saved");
    saved.getStyleClass().add("word");
    open.getStyleClass().add("open");
    open.setWrapText(true);
    open.managedProperty().bind(open.textProperty().isNotEmpty());
    open.visibleProperty().bind(open.managedProperty());
    getChildren().setAll(saved, open);
  }

  /** Says what is saved and what is open, in finished words. */
  public void say(String savedWords, String openWords) {
    saved.setText(savedWords);
    open.setText(openWords);
  }
}
