package blindlap.screen.part;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Toggle;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyEvent;

/**
 * The one rule for arrow keys in every choice of the window: an arrow goes to the next box and
 * chooses nothing. By itself it would select a box of which nobody is told, so that a page showed
 * what is not on record. A page needs to do nothing for it and cannot go past it.
 */
final class ChoiceArrows {
  private ChoiceArrows() {}

  /** Keeps every choice of a scene so. */
  static void keep(Scene scene) {
    scene.addEventFilter(KeyEvent.KEY_PRESSED, ChoiceArrows::arrow);
  }

  private static void arrow(KeyEvent event) {
    int step =
        switch (event.getCode()) {
          case LEFT, KP_LEFT, UP, KP_UP -> -1;
          case RIGHT, KP_RIGHT, DOWN, KP_DOWN -> 1;
          default -> 0;
        };
    if (step != 0
        && event.getTarget() instanceof ToggleButton box
        && box.getToggleGroup() != null) {
      event.consume();
      go(box, step);
    }
  }

  private static void go(ToggleButton from, int step) {
    List<Toggle> all = from.getToggleGroup().getToggles();
    for (int at = all.indexOf(from) + step; at >= 0 && at < all.size(); at += step) {
      if (all.get(at) instanceof ToggleButton to
          && to.getScene() == from.getScene()
          && to.isFocusTraversable()
          && !to.isDisabled()
          && seen(to)) {
        to.requestFocus();
        return;
      }
    }
  }

  /** False for what is folded away. */
  private static boolean seen(Node node) {
    for (Node part = node; part != null; part = part.getParent()) {
      if (!part.isVisible()) {
        return false;
      }
    }
    return true;
  }
}
