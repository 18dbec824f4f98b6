package blindlap.screen.plan;

import blindlap.screen.part.Fields;
import blindlap.screen.part.Look;
import blindlap.screen.part.SteadyBox;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;
import javafx.scene.text.TextAlignment;

/**
 * How such a day would end: a row for each true difference, its largest number bold; sentences
 * where a table would break words.
 */
final class OddsTablePane extends SteadyBox {
  private static final double FIRST = 30;

  /** A column below this many pixels at 100 % would break words. */
  private static final double COLUMN = 82;

  private final Look look;
  private PlanAnswerModel.Shown shown = PlanAnswerModel.Shown.NOTHING;
  private boolean narrow;

  OddsTablePane(Look look) {
    super(8);
    this.look = look;
    widthProperty()
        .addListener(
            (o, before, now) -> {
              if (narrow() != narrow) {
                build();
              }
            });
  }

  void show(PlanAnswerModel.Shown now) {
    boolean same =
        now.odds().equals(shown.odds())
            && now.heads().equals(shown.heads())
            && now.oddsPlain().equals(shown.oddsPlain());
    shown = now;
    if (!same || narrow() != narrow) {
      build();
    }
  }

  private boolean narrow() {
    double column = getWidth() * (100 - FIRST) / 100 / Math.max(1, shown.heads().size() - 1);
    return look.stacked() || getWidth() > 0 && column < COLUMN * look.textScale();
  }

  private void build() {
    narrow = narrow();
    getChildren().clear();
    if (shown.odds().isEmpty()) {
      return;
    }
    if (narrow) {
      shown.oddsLines().forEach(line -> getChildren().add(Fields.words(line)));
    } else {
      getChildren().add(table());
    }
    getChildren().add(Fields.words(shown.oddsPlain(), "note", "second"));
  }

  private GridPane table() {
    GridPane table = new GridPane();
    List<String> heads = shown.heads();
    for (int i = 0; i < heads.size(); i++) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(i == 0 ? FIRST : (100 - FIRST) / (heads.size() - 1));
      table.getColumnConstraints().add(column);
      put(table, Fields.words(heads.get(i), "second"), i, 0);
    }
    for (int row = 0; row < shown.odds().size(); row++) {
      List<String> cells = shown.odds().get(row);
      int largest = largest(cells);
      for (int i = 0; i < cells.size(); i++) {
        Label cell = Fields.words(cells.get(i));
        if (i == largest) {
          cell.getStyleClass().add("strong");
        }
        put(table, cell, i, row + 1);
      }
    }
    return table;
  }

  private static int largest(List<String> cells) {
    int at = -1;
    double most = 0;
    for (int i = 1; i < cells.size(); i++) {
      String digits = cells.get(i).replaceAll("[^0-9.]", "");
      double days = digits.isEmpty() ? 0 : Double.parseDouble(digits);
      if (days > most) {
        most = days;
        at = i;
      }
    }
    return at;
  }

  private static void put(GridPane table, Label content, int column, int row) {
    VBox cell = new VBox(content);
    cell.getStyleClass().add(row == 0 ? "table-head" : "table-row");
    cell.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
    if (row == 0) {
      cell.setAlignment(column == 0 ? Pos.BOTTOM_LEFT : Pos.BOTTOM_RIGHT);
    } else {
      cell.setAlignment(column == 0 ? Pos.TOP_LEFT : Pos.TOP_RIGHT);
    }
    if (column > 0) {
      content.setTextAlignment(TextAlignment.RIGHT);
    }
    table.add(cell, column, row);
  }
}
