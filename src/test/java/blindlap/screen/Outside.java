package blindlap.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.Bounds;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.text.Text;

/**
 * What of a page lies outside the window, or is cut, or has to be scrolled to: a page that is meant
 * to be seen whole has none.
 */
public final class Outside {
  private Outside() {}

  /** A line for each; none where all of the page is seen. */
  public static List<String> of(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    return outside(scene.getRoot(), scene.getRoot().getLayoutBounds(), new ArrayList<>());
  }

  private static List<String> outside(Node node, Bounds view, List<String> found) {
    if (!node.isVisible()) {
      return found;
    }
    Bounds within = view;
    if (node instanceof ScrollPane scroll) {
      within = scroll.localToScene(scroll.getLayoutBounds());
    }
    if (node instanceof ScrollBar bar && bar.getOrientation() == Orientation.VERTICAL) {
      found.add("a scroll bar");
    }
    if (node instanceof Labeled words
        && node.lookup(".text") instanceof Text shown
        && !shown.getText().equals(words.getText())) {
      found.add("'" + words.getText() + "' is cut to '" + shown.getText() + "'");
    }
    boolean leaf = node.isFocusTraversable() && !(node instanceof ScrollPane);
    if (leaf || node instanceof Labeled || node.getStyleClass().contains("caution")) {
      Bounds at = node.localToScene(node.getLayoutBounds());
      if (at.getMinX() < view.getMinX() - 1
          || at.getMaxX() > view.getMaxX() + 1
          || at.getMinY() < view.getMinY() - 1
          || at.getMaxY() > view.getMaxY() + 1) {
        String name = node instanceof Labeled words ? words.getText() : node.getAccessibleText();
        found.add(
            String.format(Locale.ROOT, "'%s' at %.0f to %.0f", name, at.getMinY(), at.getMaxY()));
      }
    } else if (node instanceof Parent parent) {
      for (Node child : parent.getChildrenUnmodifiable()) {
        outside(child, within, found);
      }
    }
    return found;
  }
}
