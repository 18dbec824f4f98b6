package blindlap.screen.swap;

import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** The three columns: do, set and measure, safe to ride. */
final class SwapColumnsView extends GridPane {
  /** Between two columns. */
  static final double GAP = 40;

  /** Share of the last column, under which the countdown lines up, in per cent. */
  static final double LAST = 39;

  private static final double[] WIDTHS = {28, 33, LAST};

  /**
   * @param middle holds what is measured, or the sheet that lies over it
   */
  SwapColumnsView(Node steps, Node middle, Node safety) {
    setHgap(GAP);
    for (double width : WIDTHS) {
      ColumnConstraints column = new ColumnConstraints();
      column.setPercentWidth(width);
      getColumnConstraints().add(column);
    }
    Node[] columns = {scrolled(steps), middle, scrolled(safety)};
    for (int i = 0; i < columns.length; i++) {
      GridPane.setVgrow(columns[i], Priority.ALWAYS);
      add(columns[i], i, 0);
    }
    setMinHeight(0);
  }

  /** Between what stays in sight and the columns. */
  static Region rule() {
    Region line = new Region();
    line.getStyleClass().add("strong-rule");
    return line;
  }

  /** With large text nothing gives way: what is too high scrolls. */
  static ScrollPane stacked(Node content) {
    ScrollPane scroll = scrolled(content);
    scroll.setFitToHeight(false);
    return scroll;
  }

  /** Rows give way first; only what is still too high scrolls, alone. */
  static ScrollPane scrolled(Node content) {
    ScrollPane scroll = new ScrollPane(content);
    scroll.setFitToWidth(true);
    scroll.setFitToHeight(true);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    scroll.setFocusTraversable(false);
    scroll.setMinHeight(0);
    scroll.getStyleClass().add("swap-scroll");
    return scroll;
  }
}
