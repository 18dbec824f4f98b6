package blindlap.screen.trail;

import blindlap.screen.part.Look;
import javafx.beans.InvalidationListener;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/**
 * The drawing and what belongs to it side by side; below one another where there is no room, and
 * alone where there is no drawing.
 */
final class TrailColumnsView extends GridPane {
  private static final double NARROW = 780;
  private static final double GAP = 40;
  private static final double LEFT_SHARE = 54;

  private final Look look;
  private final Region left;
  private final Region right;
  private boolean stacked;

  @SuppressWarnings({"unused", "FieldCanBeLocal"}) // held so that the look can reach this view
  private final InvalidationListener watch;

  TrailColumnsView(Look look, Region left, Region right) {
    this.look = look;
    this.left = left;
    this.right = right;
    hgapProperty().bind(look.px(GAP));
    setVgap(16);
    setMinWidth(0);
    widthProperty().addListener((o, before, now) -> fold());
    watch = look.watch(this::fold);
    left.managedProperty().addListener((o, before, now) -> fold());
    place();
    fold();
  }

  private void fold() {
    boolean narrow = getWidth() > 0 && getWidth() < NARROW * Math.max(1, look.textScale());
    boolean now = narrow || !left.isManaged();
    if (now != stacked) {
      stacked = now;
      place();
    }
  }

  private void place() {
    getChildren().clear();
    getColumnConstraints().setAll(column(stacked ? 100 : LEFT_SHARE));
    add(left, 0, 0);
    if (stacked) {
      add(right, 0, 1);
    } else {
      getColumnConstraints().add(column(100 - LEFT_SHARE));
      add(right, 1, 0);
    }
    GridPane.setValignment(left, javafx.geometry.VPos.TOP);
    GridPane.setValignment(right, javafx.geometry.VPos.TOP);
    GridPane.setFillWidth(left, true);
    GridPane.setFillWidth(right, true);
  }

  private static ColumnConstraints column(double percent) {
    ColumnConstraints column = new ColumnConstraints();
    column.setPercentWidth(percent);
    column.setHgrow(Priority.ALWAYS);
    column.setMinWidth(0);
    return column;
  }
}
