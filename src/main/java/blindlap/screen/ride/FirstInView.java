package blindlap.screen.ride;

import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ScrollPane;

/** The first thing in a part of the page that takes the focus. */
final class FirstInView {
  private FirstInView() {}

  /** The first, if there is one. */
  static Optional<Node> of(Node node) {
    if (!node.isVisible() || node.isDisabled()) {
      return Optional.empty();
    }
    if (node.isFocusTraversable() && !(node instanceof ScrollPane)) {
      return Optional.of(node);
    }
    return node instanceof Parent parent
        ? parent.getChildrenUnmodifiable().stream()
            .map(FirstInView::of)
            .flatMap(Optional::stream)
            .findFirst()
        : Optional.empty();
  }
}
