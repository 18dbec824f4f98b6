package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/** Every stint by setup over one axis, without the differences; {@link PairRows} has those. */
public final class StintRows implements Drawing {
  private final StintsContent content;

  private StintRows(StintsContent content) {
    this.content = content;
  }

  /** The upper half of {@link StintsAndDifference}. */
  public static StintRows of(StintsContent content) {
    return new StintRows(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    DifferenceLayout layout = DifferenceLayout.of(content, width, textScale);
    return layout.valueAxis()
        + AxisPart.numberBaseline(layout.faces())
        + 1.3 * layout.faces().plain().line();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    DifferenceLayout layout = DifferenceLayout.of(content, width, textScale);
    new StintRowsPart(surface, content, layout).draw();
  }
}
