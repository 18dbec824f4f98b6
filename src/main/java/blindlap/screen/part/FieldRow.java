package blindlap.screen.part;

import java.util.ArrayList;
import java.util.List;
import javafx.collections.ListChangeListener;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * Fields side by side, folding where there is no room. What is wrong with one of them stands under
 * all of them, as wide as the column, with the field's name: under a field of four letters it would
 * be a pillar of syllables, and beside it it would push the other fields away while somebody types.
 */
final class FieldRow extends FlowPane implements Steady {
  /** Width for which a row is measured where it is given none: that of the widest section. */
  private static final double WRAP = 1000;

  private static final double GAP = 4;

  private final SteadyHeights least = new SteadyHeights();
  private final SteadyHeights usual = new SteadyHeights();

  FieldRow(Node... fields) {
    super(16, 10, fields);
    setRowValignment(VPos.TOP);
    setPrefWrapLength(WRAP);
    setMinWidth(0);
    widthProperty().addListener((o, before, now) -> cap());
    getChildren().addListener((ListChangeListener<Node>) change -> cap());
  }

  /** Nothing in it is ever wider than the row itself: what is too long for a line folds, too. */
  private void cap() {
    double most = inner(getWidth());
    if (most > 0) {
      for (Node child : getChildren()) {
        if (child instanceof Region region && !region.maxWidthProperty().isBound()) {
          region.setMaxWidth(most);
        }
      }
    }
  }

  /** The messages of the fields of this row that say something. */
  private List<FieldMessage> messages() {
    List<FieldMessage> messages = new ArrayList<>();
    for (Node field : getChildren()) {
      if (field instanceof VBox box) {
        for (Node part : box.getChildren()) {
          if (part instanceof FieldMessage message) {
            message.standUnder(this);
            if (message.isVisible()) {
              messages.add(message);
            }
          }
        }
      }
    }
    return messages;
  }

  private double inner(double width) {
    return width - snappedLeftInset() - snappedRightInset();
  }

  @Override
  public void forget() {
    least.forget();
    usual.forget();
  }

  @Override
  public void requestLayout() {
    // The row is asked while it is still being made.
    if (usual != null) {
      forget();
      Steady.forgetAround(this);
    }
    super.requestLayout();
  }

  @Override
  protected double computePrefHeight(double width) {
    return usual.of(width, this::height);
  }

  private double height(double width) {
    double under = 0;
    for (FieldMessage message : messages()) {
      under += GAP + message.prefHeight(inner(width < 0 ? WRAP : width));
    }
    return super.computePrefHeight(width) + under;
  }

  @Override
  protected double computeMinHeight(double width) {
    return least.of(width, this::leastHeight);
  }

  private double leastHeight(double width) {
    return Math.max(super.computeMinHeight(width), messages().isEmpty() ? 0 : prefHeight(width));
  }

  @Override
  protected void layoutChildren() {
    List<FieldMessage> messages = messages();
    super.layoutChildren();
    double width = inner(getWidth());
    double top = 0;
    for (Node field : getManagedChildren()) {
      // Not its bounds: a message that it holds stands outside of it.
      top = Math.max(top, field.getLayoutY() + field.getLayoutBounds().getHeight());
    }
    for (FieldMessage message : messages) {
      double height = message.prefHeight(width);
      Node field = message.getParent();
      message.resizeRelocate(
          snappedLeftInset() - field.getLayoutX(), top + GAP - field.getLayoutY(), width, height);
      top += GAP + height;
    }
    forget();
    Steady.forgetAround(this);
  }
}
