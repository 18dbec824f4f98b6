package blindlap.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ScrollPane.ScrollBarPolicy;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.TitledPane;
import javafx.scene.text.Text;
import org.jspecify.annotations.Nullable;

/**
 * Whether everything of a window can be reached: what does not scroll lies within it, what scrolls
 * lies within the width of what scrolls it, unless that scrolls sideways too, and no words are cut.
 */
public final class Reachable {
  private final Bounds window;
  private final List<String> wrong = new ArrayList<>();
  private int seen;

  private Reachable(Bounds window) {
    this.window = window;
  }

  /** What cannot be reached or is cut, a line each; fails if there is nothing to look at. */
  public static List<String> wrong(Scene scene) {
    scene.getRoot().applyCss();
    scene.getRoot().layout();
    Reachable reachable = new Reachable(scene.getRoot().getLayoutBounds());
    reachable.look(scene.getRoot(), null);
    if (reachable.seen < 3) {
      throw new AssertionError("only " + reachable.seen + " things are in the window");
    }
    return reachable.wrong;
  }

  private void look(Node node, @Nullable ScrollPane within) {
    if (!node.isVisible() || node instanceof ScrollBar) {
      return;
    }
    boolean leaf = node.isFocusTraversable() && !(node instanceof ScrollPane);
    if (leaf || node instanceof Labeled) {
      seen++;
      place(node, within);
      whole(node);
    }
    if (!leaf && node instanceof Parent parent && !(node instanceof TextInputControl)) {
      ScrollPane inner = node instanceof ScrollPane scroll ? scroll : within;
      parent.getChildrenUnmodifiable().forEach(child -> look(child, inner));
    }
  }

  private void place(Node node, @Nullable ScrollPane within) {
    Bounds at = node.localToScene(node.getLayoutBounds());
    Bounds view = within == null ? window : within.localToScene(within.getLayoutBounds());
    boolean sideways = within != null && within.getHbarPolicy() != ScrollBarPolicy.NEVER;
    boolean beside =
        !sideways && (at.getMinX() < view.getMinX() - 1 || at.getMaxX() > view.getMaxX() + 1);
    boolean under = at.getMinY() < view.getMinY() - 1 || at.getMaxY() > view.getMaxY() + 1;
    if (at.getWidth() > 0 && (beside || within == null && under)) {
      wrong.add(
          String.format(
              Locale.ROOT,
              "'%s' from %.0f to %.0f, by %.0f to %.0f",
              name(node),
              at.getMinX(),
              at.getMaxX(),
              at.getMinY(),
              at.getMaxY()));
    }
  }

  private void whole(Node node) {
    if (node instanceof Labeled words
        && !words.getText().isEmpty()
        && node.lookup(own(node)) instanceof Text shown
        && !shown.getText().equals(words.getText())) {
      wrong.add("'" + words.getText() + "' is cut to '" + shown.getText() + "'");
    }
  }

  /**
   * Where the words of a control are drawn: what folds away has the texts of its content inside.
   */
  private static String own(Node node) {
    return node instanceof TitledPane ? ".title > .text" : ".text";
  }

  private static String name(Node node) {
    String words = node instanceof Labeled labeled ? labeled.getText() : "";
    return words.isEmpty() ? String.valueOf(node.getAccessibleText()) : words;
  }
}
