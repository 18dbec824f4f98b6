package blindlap.screen.swap;

import blindlap.screen.part.Caution;
import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.WholeInView;
import blindlap.wording.SwapWords;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/**
 * What to do, in order. A step can be ticked off: an aid to memory that is kept with the draft and
 * is no part of the record. The first that is open is the step to do now.
 */
final class SwapStepsView extends VBox {
  private static final double ROW = 54;
  private static final double LOW = 46;
  private static final double BESIDE = 52;

  private final SwapWork work;
  private final List<ToggleButton> rows = new ArrayList<>();

  SwapStepsView(Look look, SwapWork work, SwapSheet now) {
    this.work = work;
    getStyleClass().add("swap-steps");
    getChildren().add(new SwapHeadingView(SwapWords.say("do")));
    for (int i = 0; i < now.steps().size(); i++) {
      ToggleButton row = row(look, i, now.steps().get(i));
      rows.add(row);
      getChildren().add(row);
    }
    for (String limit : now.limits()) {
      getChildren().add(Fields.words(limit, "note"));
    }
    now.cautions().forEach(c -> getChildren().add(new Caution(SwapWords.say("caution"), c)));
    show(now);
  }

  private ToggleButton row(Look look, int step, String words) {
    Label number = new Label(String.valueOf(step + 1));
    number.getStyleClass().add("number");
    number.setMinWidth(USE_PREF_SIZE);
    Label said = new Label(words);
    said.setWrapText(true);
    HBox line = new HBox(16, number, said);
    line.setAlignment(Pos.CENTER_LEFT);
    ToggleButton row = Fields.wide(new ToggleButton());
    row.setGraphic(line);
    row.getStyleClass().add("step");
    row.setAccessibleText(SwapWords.say("step.key", step + 1, words));
    // Rows give way, but never so far that words are cut.
    row.minHeightProperty()
        .bind(
            Bindings.createDoubleBinding(
                () ->
                    Math.max(
                        look.touch(LOW).get(),
                        said.prefHeight(row.getWidth() - look.px(BESIDE).get()) + 2),
                row.widthProperty(),
                said.fontProperty(),
                look.textScaleProperty()));
    row.prefHeightProperty().bind(look.touch(ROW));
    // As wide as the row, so that long words break instead of being cut.
    said.maxWidthProperty().bind(row.widthProperty().subtract(look.px(BESIDE)));
    row.setOnAction(e -> work.step(step, row.isSelected()));
    return row;
  }

  /** Ticks a step off, or not. */
  void toggle(int step) {
    if (step < rows.size()) {
      rows.get(step).fire();
      WholeInView.show(rows.get(step));
    }
  }

  /** Shows what is done. */
  void show(SwapSheet now) {
    boolean found = false;
    for (int i = 0; i < rows.size(); i++) {
      ToggleButton row = rows.get(i);
      boolean done = now.stepsDone().contains(i);
      row.setSelected(done);
      row.getStyleClass().removeAll("now");
      if (!done && !found) {
        row.getStyleClass().add("now");
        found = true;
      }
    }
  }
}
