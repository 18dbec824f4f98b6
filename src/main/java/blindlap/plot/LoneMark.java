package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/** The mark of one setup, as large as the width allows: beside a name in words, never alone. */
public final class LoneMark implements Drawing {
  private final SetupMark mark;
  private final Spoken spoken;

  private LoneMark(SetupMark mark, Spoken spoken) {
    this.mark = mark;
    this.spoken = spoken;
  }

  /** The mark of a setup; the spoken words name the setup. */
  public static LoneMark of(SetupMark mark, Spoken spoken) {
    return new LoneMark(mark, spoken);
  }

  @Override
  public Spoken spoken() {
    return spoken;
  }

  @Override
  public double heightFor(double width, double textScale) {
    return width;
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    mark.draw(surface, width / 2, width / 2, 0.4 * width);
  }
}
