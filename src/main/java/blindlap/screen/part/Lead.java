package blindlap.screen.part;

import javafx.scene.control.Label;

/** What the answer means, in at most three lines of serif. */
public final class Lead extends Label {
  /** A lead that says the words. */
  public Lead(String words) {
    super(words);
    getStyleClass().add("lead");
    setWrapText(true);
    setMinHeight(USE_PREF_SIZE);
  }
}
