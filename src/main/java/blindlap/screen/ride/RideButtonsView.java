package blindlap.screen.ride;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;

/** What else may be pressed at any time, two side by side. */
final class RideButtonsView extends GridPane {
  RideButtonsView(Look look, List<Button> buttons) {
    setHgap(12);
    setVgap(10);
    for (int i = 0; i < buttons.size(); i++) {
      Button button = Fields.wide(buttons.get(i));
      button.setWrapText(true);
      Fields.holdsWords(button, look.touch(RideScoreView.LOW));
      add(button, i % 2, i / 2);
    }
    for (int i = 0; i < 2; i++) {
      ColumnConstraints half = new ColumnConstraints();
      half.setPercentWidth(50);
      getColumnConstraints().add(half);
    }
  }
}
