package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/**
 * The stints in ridden order: number across, value up.
 *
 * <p>With the key open every setup has its mark and a fitted line that ends in its name. While the
 * key is sealed the stints carry no setup: all are the same dot, with their codes below the axis.
 */
public final class RiddenOrder implements Drawing {

  private final RiddenContent content;

  private RiddenOrder(RiddenContent content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when no stint has a value, stints are not numbered in rising
   *     order from 1 or more, or some but not all stints carry a setup
   */
  public static RiddenOrder of(RiddenContent content) {
    int before = 0;
    for (RiddenContent.Stint stint : content.stints()) {
      if (stint.number() <= before) {
        throw new IllegalArgumentException(
            "RiddenContent.Stint " + stint.number() + " is out of order");
      }
      before = stint.number();
    }
    if (content.stints().stream().noneMatch(stint -> stint.value().isPresent())) {
      throw new IllegalArgumentException("No stint has a value to draw");
    }
    long open = content.stints().stream().filter(stint -> stint.setup().isPresent()).count();
    if (open != 0 && open != content.stints().size() || open == 0 && !content.lines().isEmpty()) {
      throw new IllegalArgumentException("The key is either open for all stints or sealed for all");
    }
    return new RiddenOrder(content);
  }

  /** Whether the drawing knows of no setup. */
  public boolean blind() {
    return content.stints().get(0).setup().isEmpty();
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return RiddenLayout.of(content, width, textScale).height();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    new RiddenOrderPart(surface, content, RiddenLayout.of(content, width, textScale)).draw();
  }
}
