package blindlap.screen.part;

import java.util.List;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** What is wrong, where, what was kept, what to do: under a strong line, without a colour. */
public final class ErrorNote extends VBox {
  /**
   * A note.
   *
   * @param wrong what is wrong, in one sentence
   * @param rest where, what was kept, what to do; a line each
   */
  public ErrorNote(String wrong, List<String> rest) {
    getStyleClass().add("error");
    Label first = line(wrong);
    first.getStyleClass().add("strong");
    getChildren().add(first);
    rest.forEach(words -> getChildren().add(line(words)));
    setAccessibleRole(AccessibleRole.TEXT);
    setAccessibleText(wrong + " " + String.join(" ", rest));
  }

  private static Label line(String words) {
    Label label = new Label(words);
    label.setWrapText(true);
    label.setMinHeight(USE_PREF_SIZE);
    return label;
  }
}
