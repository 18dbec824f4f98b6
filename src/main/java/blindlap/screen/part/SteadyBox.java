package blindlap.screen.part;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.layout.VBox;

/**
 * A box that remembers how high it is for a width until something in it changes. The toolkit keeps
 * such a height for parts without wrapped text only: everything else is measured again, several
 * times at each level, whenever a letter is typed anywhere on the page.
 */
public class SteadyBox extends VBox {
  private final Heights least = new Heights();
  private final Heights usual = new Heights();

  /** A box without space between its parts. */
  public SteadyBox(Node... parts) {
    super(parts);
  }

  /** A box with so much space between its parts. */
  public SteadyBox(double spacing, Node... parts) {
    super(spacing, parts);
  }

  /** Heights for the last few widths that were asked for. */
  static final class Heights {
    private static final int KEPT = 4;

    private final double[] widths = new double[KEPT];
    private final double[] heights = new double[KEPT];
    private int next;

    Heights() {
      forget();
    }

    double of(double width, DoubleUnaryOperator measure) {
      for (int i = 0; i < KEPT; i++) {
        if (widths[i] == width) {
          return heights[i];
        }
      }
      double height = measure.applyAsDouble(width);
      widths[next] = width;
      heights[next] = height;
      next = (next + 1) % KEPT;
      return height;
    }

    void forget() {
      Arrays.fill(widths, Double.NaN);
    }
  }

  /** Something within has changed while its parents were being laid out: they hear of it here. */
  static void forgetAround(Node node) {
    for (Parent at = node.getParent(); at != null; at = at.getParent()) {
      if (at instanceof SteadyBox box) {
        box.forget();
      } else if (at instanceof FieldRow row) {
        row.forget();
      }
    }
  }

  private void forget() {
    least.forget();
    usual.forget();
  }

  @Override
  public void requestLayout() {
    // The box is asked while it is still being made.
    if (usual != null) {
      forget();
      forgetAround(this);
    }
    super.requestLayout();
  }

  @Override
  protected double computeMinHeight(double width) {
    return least.of(width, super::computeMinHeight);
  }

  @Override
  protected double computePrefHeight(double width) {
    return usual.of(width, super::computePrefHeight);
  }

  @Override
  protected void layoutChildren() {
    super.layoutChildren();
    forget();
    forgetAround(this);
  }
}
