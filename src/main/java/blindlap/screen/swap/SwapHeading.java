package blindlap.screen.swap;

import javafx.scene.control.Label;

/** The heading of one part of the open Swap page. */
final class SwapHeading extends Label {
  SwapHeading(String words) {
    super(words);
    getStyleClass().add("h2");
  }
}
