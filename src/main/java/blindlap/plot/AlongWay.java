package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/**
 * A running sum along a way, with its band: where it falls, the setup it is of gains. Gates stand
 * across it, the other setup is the level line.
 */
public final class AlongWay implements Drawing {
  private final WayContent content;

  private AlongWay(WayContent content) {
    this.content = content;
  }

  /** Makes the drawing. */
  public static AlongWay of(WayContent content) {
    return new AlongWay(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return WayPart.Layout.of(content, width, textScale).height();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    new WayPart(surface, content, WayPart.Layout.of(content, width, textScale)).draw();
  }
}
