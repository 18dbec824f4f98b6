package blindlap.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Control;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
import javafx.scene.text.Text;

/**
 * Measures whether everything of a page lies between its left and right edge, with its words whole.
 */
public final class Within {
  private final String moment;
  private final double left;
  private final double right;
  private final List<String> wrong = new ArrayList<>();
  private int controls;

  private Within(String moment, double left, double right) {
    this.moment = moment;
    this.left = left;
    this.right = right;
  }

  /**
   * What lies outside of a page or is cut off, a line each.
   *
   * @param page laid out; what it is folded into should be open
   */
  public static Within of(Parent page, String moment) {
    Bounds at = page.localToScene(page.getLayoutBounds());
    Within within = new Within(moment, at.getMinX(), at.getMaxX());
    within.look(page);
    return within;
  }

  public List<String> wrong() {
    return wrong;
  }

  /** How many controls were measured. */
  public int controls() {
    return controls;
  }

  /** Opens everything that is folded away. */
  public static void unfold(Node node) {
    if (node instanceof TitledPane fold) {
      fold.setExpanded(true);
      unfold(fold.getContent());
    } else if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(Within::unfold);
    }
  }

  private void look(Node node) {
    if (!node.isVisible()) {
      return;
    }
    boolean own = node instanceof Control && !(node instanceof ScrollPane);
    if (own || node instanceof Text) {
      inside(node);
    }
    if (node instanceof Labeled labeled) {
      whole(labeled);
    }
    // What scrolls inside a field is the field's own matter.
    if (node instanceof Parent parent && !(node instanceof TextInputControl)) {
      parent.getChildrenUnmodifiable().forEach(this::look);
    }
  }

  private void inside(Node node) {
    controls += node instanceof Control ? 1 : 0;
    Bounds at = node.localToScene(node.getLayoutBounds());
    if (at.getWidth() > 0 && (at.getMinX() < left - 1 || at.getMaxX() > right + 1)) {
      wrong.add(
          String.format(
              Locale.ROOT,
              "%s: %s '%s' from %.0f to %.0f, the page from %.0f to %.0f",
              moment,
              node.getClass().getSimpleName(),
              name(node),
              at.getMinX(),
              at.getMaxX(),
              left,
              right));
    }
  }

  private void whole(Labeled labeled) {
    for (Node child : labeled.getChildrenUnmodifiable()) {
      if (child instanceof Text shown
          && !labeled.getText().isEmpty()
          && !shown.getText().equals(labeled.getText())) {
        wrong.add(moment + ": '" + labeled.getText() + "' is cut to '" + shown.getText() + "'");
      }
    }
  }

  private static String name(Node node) {
    if (node instanceof Text text) {
      return text.getText();
    }
    return node instanceof Labeled labeled ? labeled.getText() : node.getAccessibleText();
  }
}
