package blindlap.screen;

import java.util.Locale;
import javafx.application.Platform;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.Toggle;
import javafx.scene.text.Text;

/**
 * Everything of a scene that a person or a screen reader could notice, as text: one line a node, in
 * the order of the graph.
 */
public final class SceneText {
  private final StringBuilder lines = new StringBuilder();

  private SceneText() {}

  /**
   * Lays a scene out and writes it down, on the window's thread: a window that shows measures its
   * own words meanwhile, and they can be measured by one at a time.
   */
  public static String of(Scene scene) {
    return Platform.isFxApplicationThread() ? write(scene) : Window.call(() -> write(scene));
  }

  private static String write(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    SceneText text = new SceneText();
    text.node(scene.getRoot(), 0);
    return text.lines.toString();
  }

  private void node(Node node, int depth) {
    Bounds where = node.localToScene(node.getLayoutBounds());
    lines
        .append(" ".repeat(depth))
        .append(node.getClass().getSimpleName())
        .append(node.getStyleClass())
        .append(node.getId() == null ? "" : "#" + node.getId())
        .append(
            String.format(
                Locale.ROOT,
                " %.2f %.2f %.2f %.2f",
                where.getMinX(),
                where.getMinY(),
                where.getWidth(),
                where.getHeight()))
        .append(node.isVisible() ? "" : " hidden")
        .append(node.isManaged() ? "" : " unmanaged")
        .append(node.isDisabled() ? " disabled" : "")
        .append(node.isFocusTraversable() ? " focusable" : "")
        .append(node.isFocused() ? " focused" : "")
        .append(' ')
        .append(node.getAccessibleRole())
        .append(said(node.getAccessibleText()))
        .append(said(node.getAccessibleHelp()))
        .append(said(words(node)))
        .append(node instanceof Toggle toggle && toggle.isSelected() ? " selected" : "")
        .append('\n');
    if (node instanceof Parent parent) {
      parent.getChildrenUnmodifiable().forEach(child -> node(child, depth + 1));
    }
  }

  private static String said(@org.jspecify.annotations.Nullable String words) {
    return words == null ? "" : " '" + words + "'";
  }

  private static @org.jspecify.annotations.Nullable String words(Node node) {
    if (node instanceof Labeled labeled) {
      String tip = labeled.getTooltip() == null ? "" : " tip " + labeled.getTooltip().getText();
      return labeled.getText() + tip;
    }
    if (node instanceof TextInputControl field) {
      return field.getText() + "/" + field.getPromptText();
    }
    return node instanceof Text text ? text.getText() : null;
  }
}
