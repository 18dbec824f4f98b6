package blindlap.screen.view;

import static blindlap.screen.view.ReviewParts.words;

import blindlap.plot.Drawing;
import blindlap.screen.model.ReviewView;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The table of the measures beside the primary, with small pictures. */
final class OtherMeasures extends GridPane {
  private static final double[] SHARES = {26, 24, 22, 20, 8};

  private final Look look;

  OtherMeasures(Look look, List<String> columns, List<ReviewView.Other> rows) {
    this.look = look;
    setHgap(0);
    for (double share : SHARES) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(share);
      column.setHgrow(Priority.ALWAYS);
      getColumnConstraints().add(column);
    }
    for (int i = 0; i < columns.size(); i++) {
      put(words(columns.get(i), "second"), i, 0, "table-head");
    }
    for (int row = 0; row < rows.size(); row++) {
      add(rows.get(row), row + 1);
    }
  }

  private void add(ReviewView.Other other, int row) {
    put(
        new VBox(2, words(other.name(), "strong"), words(other.role(), "note")),
        0,
        row,
        "table-row");
    put(picture(other.stints()), 1, row, "table-row");
    put(picture(Optional.of(other.interval())), 2, row, "table-row");
    put(
        new VBox(2, words(other.difference(), "strong"), words(other.limits(), "note")),
        3,
        row,
        "table-row");
    put(words(other.p()), 4, row, "table-row");
  }

  private Region picture(Optional<Drawing> drawing) {
    return drawing.<Region>map(d -> new PlotView(look, d)).orElseGet(Region::new);
  }

  private void put(Node content, int column, int row, String style) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(style);
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    add(cell, column, row);
  }
}
