package blindlap.screen.book;

import blindlap.screen.part.Look;
import blindlap.wording.NotebookWords;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * The stints of a day in a row: ridden ones filled, the next one framed. Says nothing of setups.
 */
final class StintStripView extends HBox {
  private static final double MOST = 46;

  private final Look look;

  StintStripView(Look look) {
    super(6);
    this.look = look;
    setAccessibleRole(AccessibleRole.TEXT);
    show(0, 0);
  }

  void show(int stints, int ridden) {
    getChildren().clear();
    setVisible(stints > 0);
    setManaged(stints > 0);
    for (int stint = 1; stint <= stints; stint++) {
      getChildren().add(cell(stint, ridden));
    }
    setAccessibleText(NotebookWords.say("stints", Math.min(stints, ridden + 1), stints, ridden));
  }

  private VBox cell(int stint, int ridden) {
    Region bar = new Region();
    bar.getStyleClass()
        .addAll("stint-bar", stint <= ridden ? "done" : stint == ridden + 1 ? "now" : "to-come");
    bar.minHeightProperty().bind(look.px(12));
    bar.prefHeightProperty().bind(look.px(12));
    Label number = new Label(String.valueOf(stint));
    number.getStyleClass().addAll("note", stint == ridden + 1 ? "strong" : "second");
    number.setMinWidth(0);
    VBox cell = new VBox(4, bar, number);
    cell.setAlignment(Pos.TOP_CENTER);
    cell.maxWidthProperty().bind(look.px(MOST));
    cell.setMinWidth(0);
    HBox.setHgrow(cell, Priority.ALWAYS);
    return cell;
  }
}
