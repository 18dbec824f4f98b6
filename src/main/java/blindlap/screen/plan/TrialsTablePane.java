package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.SteadyBox;
import blindlap.wording.TrialsWords;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/** What other numbers of trials can show: a table, or sentences where text is large. */
final class TrialsTablePane extends SteadyBox {
  private static final double[] WIDTHS = {12, 12, 20, 26, 30};
  private static final double[] WITH_TIME = {10, 10, 16, 23, 25, 16};

  TrialsTablePane() {
    super(8);
  }

  void show(PlanTrials now, boolean table) {
    List<Object> same = List.of(now, table);
    if (same.equals(getUserData())) {
      return;
    }
    setUserData(same);
    getChildren().clear();
    if (now.rows().isEmpty()) {
      return;
    }
    if (table) {
      getChildren().add(grid(now));
    } else {
      now.lines().forEach(line -> getChildren().add(Fields.words(line)));
    }
  }

  private static GridPane grid(PlanTrials trials) {
    GridPane grid = new GridPane();
    double[] widths = trials.heads().size() == WIDTHS.length ? WIDTHS : WITH_TIME;
    for (int i = 0; i < widths.length; i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(widths[i]);
      grid.getColumnConstraints().add(column);
      grid.add(cell(Fields.words(trials.heads().get(i), "second"), true), i, 0);
    }
    int at = 1;
    for (TrialsWords.Row row : trials.rows()) {
      for (int i = 0; i < widths.length; i++) {
        Label words = Fields.words(row.cells().get(i));
        if (row.planned()) {
          words.getStyleClass().add("strong");
        }
        grid.add(cell(words, false), i, at);
      }
      at++;
    }
    return grid;
  }

  private static VBox cell(Label words, boolean head) {
    VBox cell = new VBox(words);
    words.setTextAlignment(TextAlignment.RIGHT);
    cell.setAlignment(head ? Pos.BOTTOM_RIGHT : Pos.TOP_RIGHT);
    cell.getStyleClass().add(head ? "table-head" : "table-row");
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    return cell;
  }
}
