package blindlap.screen.part;

import javafx.scene.AccessibleRole;
import javafx.scene.layout.StackPane;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/** A caution: an ink bar on the left, the word, then what to heed. */
public final class Caution extends StackPane {
  /**
   * A caution.
   *
   * @param word such as "Caution."
   * @param words what to heed
   */
  public Caution(String word, String words) {
    Text first = new Text(word + " ");
    first.getStyleClass().addAll("words", "first");
    Text rest = new Text(words);
    rest.getStyleClass().add("words");
    TextFlow flow = new TextFlow(first, rest);
    flow.setMinHeight(USE_PREF_SIZE);
    getStyleClass().add("caution");
    setAccessibleRole(AccessibleRole.TEXT);
    setAccessibleText(word + " " + words);
    setMinHeight(USE_PREF_SIZE);
    getChildren().setAll(flow);
  }
}
