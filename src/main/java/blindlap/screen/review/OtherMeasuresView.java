package blindlap.screen.review;

import static blindlap.screen.part.ReviewParts.words;

import blindlap.plot.surface.Drawing;
import blindlap.screen.part.Look;
import blindlap.screen.part.PlotView;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * The table of the measures beside the primary, with small pictures: with the interval for two
 * setups, with the pairs in words for three and more.
 */
final class OtherMeasuresView extends GridPane {
  private static final double[] TWO = {26, 24, 22, 20, 8};
  static final int COLUMNS_OF_TWO = TWO.length;
  private static final double[] MANY = {24, 28, 34, 14};

  private final Look look;

  OtherMeasuresView(Look look, List<String> columns, List<ReviewView.Other> rows) {
    this.look = look;
    setHgap(0);
    for (double share : columns.size() == TWO.length ? TWO : MANY) {
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
    int column = 0;
    put(
        new VBox(2, words(other.name(), "strong"), words(other.role(), "note")),
        column++,
        row,
        "table-row");
    put(picture(other.stints()), column++, row, "table-row");
    if (other.interval().isPresent()) {
      put(picture(other.interval()), column++, row, "table-row");
    }
    VBox numbers = new VBox(2);
    if (!other.difference().isEmpty()) {
      numbers.getChildren().add(words(other.difference(), "strong"));
    }
    Label limits = words(other.limits(), "note");
    numbers.getChildren().add(limits);
    put(numbers, column++, row, "table-row");
    put(words(other.p()), column, row, "table-row");
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
