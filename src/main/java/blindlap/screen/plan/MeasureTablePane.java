package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.wording.MeasureAnswers;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** What the day can show in each measure: a table, or sentences where text is large. */
final class MeasureTablePane extends SteadyBox {
  private static final double[] WIDTHS = {30, 22, 48};

  MeasureTablePane() {
    super(8);
  }

  void show(PlanAnswerModel.Shown now, boolean table) {
    List<Object> same = List.of(now.measures(), now.measureLines(), now.measureNotes(), table);
    if (same.equals(getUserData())) {
      return;
    }
    setUserData(same);
    getChildren().clear();
    if (table && !now.measures().isEmpty()) {
      getChildren().add(grid(now.measures()));
    } else {
      now.measureLines().forEach(line -> getChildren().add(Fields.words(line)));
    }
    now.measureNotes().forEach(line -> getChildren().add(Fields.words(line, "note", "second")));
  }

  private static GridPane grid(List<List<String>> rows) {
    GridPane grid = new GridPane();
    List<String> heads = MeasureAnswers.heads();
    for (int i = 0; i < heads.size(); i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(WIDTHS[i]);
      grid.getColumnConstraints().add(column);
      grid.add(cell(Fields.words(heads.get(i), "second"), "table-head"), i, 0);
    }
    for (int row = 0; row < rows.size(); row++) {
      for (int i = 0; i < rows.get(row).size(); i++) {
        grid.add(cell(Fields.words(rows.get(row).get(i)), "table-row"), i, row + 1);
      }
    }
    return grid;
  }

  private static VBox cell(Label words, String style) {
    VBox cell = new VBox(words);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    return cell;
  }
}
