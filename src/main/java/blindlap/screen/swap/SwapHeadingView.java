package blindlap.screen.swap;

import javafx.scene.control.Label;

/** The heading of one part of the open Swap page. */
final class SwapHeadingView extends Label {
  SwapHeadingView(String words) {
    super(words);
    getStyleClass().add("h2");
  }
}
