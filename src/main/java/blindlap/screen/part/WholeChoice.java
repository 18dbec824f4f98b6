package blindlap.screen.part;

import javafx.collections.ObservableList;
import javafx.geometry.Insets;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListCell;
import org.jspecify.annotations.Nullable;

/**
 * A box to choose from that shows what is chosen whole, in as many lines as its width asks for: the
 * toolkit's own is one line high and cuts what is longer.
 */
public final class WholeChoice<T> extends ComboBox<T> {
  private final ListCell<T> shown = new Shown();

  /** A box with these to choose from, and those that come to them later. */
  public WholeChoice(ObservableList<T> items) {
    super(items);
    shown.setWrapText(true);
    setButtonCell(shown);
  }

  @Override
  public Orientation getContentBias() {
    return Orientation.HORIZONTAL;
  }

  @Override
  protected double computePrefHeight(double width) {
    Insets around = getInsets();
    double sides = around.getLeft() + around.getRight();
    Node arrow = lookup(".arrow-button");
    double inner =
        width < 0 ? -1 : width - sides - (arrow == null ? 0 : snapSizeX(arrow.prefWidth(-1)));
    double words = around.getTop() + shown.prefHeight(inner) + around.getBottom();
    return Math.max(super.computePrefHeight(width), words);
  }

  @Override
  protected double computeMinHeight(double width) {
    return computePrefHeight(width);
  }

  private final class Shown extends ListCell<T> {
    @Override
    protected void updateItem(@Nullable T item, boolean empty) {
      super.updateItem(item, empty);
      setText(empty ? "" : getConverter().toString(item));
    }
  }
}
