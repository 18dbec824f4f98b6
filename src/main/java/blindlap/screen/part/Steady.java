package blindlap.screen.part;

import javafx.scene.Node;
import javafx.scene.Parent;

/** A part that remembers how high it is until something in it changes. */
interface Steady {
  /** Measures again when asked next. */
  void forget();

  /** Something within has changed while its parents were being laid out: they hear of it here. */
  static void forgetAround(Node node) {
    for (Parent at = node.getParent(); at != null; at = at.getParent()) {
      if (at instanceof Steady steady) {
        steady.forget();
      }
    }
  }
}
