package blindlap.screen.part;

import javafx.scene.Node;
import javafx.scene.layout.VBox;

/**
 * A box that remembers how high it is for a width until something in it changes. The toolkit keeps
 * such a height for parts without wrapped text only: everything else is measured again, several
 * times at each level, whenever a letter is typed anywhere on the page.
 */
public class SteadyBox extends VBox implements Steady {
  private final SteadyHeights least = new SteadyHeights();
  private final SteadyHeights usual = new SteadyHeights();

  /** A box without space between its parts. */
  public SteadyBox(Node... parts) {
    super(parts);
  }

  /** A box with so much space between its parts. */
  public SteadyBox(double spacing, Node... parts) {
    super(spacing, parts);
  }

  @Override
  public void forget() {
    least.forget();
    usual.forget();
  }

  @Override
  public void requestLayout() {
    // The box is asked while it is still being made.
    if (usual != null) {
      forget();
      Steady.forgetAround(this);
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
    Steady.forgetAround(this);
  }
}
