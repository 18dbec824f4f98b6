package blindlap.plot;

import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/**
 * An interval against the hatched worthwhile band, for a cell of a table. It has its own scale with
 * zero in the middle.
 */
public final class SmallInterval implements Drawing {
  /**
   * What is drawn.
   *
   * @param estimate the difference
   * @param ninetyFive 95 % interval
   * @param ninety 90 % interval
   * @param worthwhile the worthwhile difference; 0 for a measure without one
   * @param reach how far the scale goes from zero, for rows that share one; 0 for a scale of its
   *     own
   */
  public record Content(
      double estimate, Limits ninetyFive, Limits ninety, double worthwhile, double reach) {
    /** With a scale of its own. */
    public Content(double estimate, Limits ninetyFive, Limits ninety, double worthwhile) {
      this(estimate, ninetyFive, ninety, worthwhile, 0);
    }

    /** Checks the numbers. */
    public Content {
      if (!Double.isFinite(estimate) || !(worthwhile >= 0) || !Double.isFinite(worthwhile)) {
        throw new IllegalArgumentException(
            "Not a picture: estimate " + estimate + ", worthwhile " + worthwhile);
      }
    }
  }

  private final Content content;
  private final Spoken spoken;

  private SmallInterval(Content content, Spoken spoken) {
    this.content = content;
    this.spoken = spoken;
  }

  /** Makes the picture. */
  public static SmallInterval of(Content content, Spoken spoken) {
    return new SmallInterval(content, spoken);
  }

  @Override
  public Spoken spoken() {
    return spoken;
  }

  @Override
  public double heightFor(double width, double textScale) {
    return 40 * new Faces(textScale).scale();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    double height = heightFor(width, textScale);
    double reach = reach();
    Scale scale = new Scale(-reach, reach, 8, width - 8);
    if (content.worthwhile() > 0) {
      double left = scale.clampedAt(-content.worthwhile());
      double right = scale.clampedAt(content.worthwhile());
      surface.hatch(new Box(left, 3, right - left, height - 6));
    }
    double zero = AxisPart.crisp(scale.at(0));
    surface.line(zero, 0, zero, height, new Pen(Ink.INK, 1, Dash.GUIDE));
    double y = height / 2;
    Arrows.interval(surface, scale, content.ninetyFive(), y, 2);
    Arrows.interval(surface, scale, content.ninety(), y, 4);
    surface.disc(scale.at(content.estimate()), y, 5 * Math.sqrt(textScale), Ink.INK);
  }

  // An unbounded or very wide interval ends in arrows rather than squeeze everything to the middle.
  private double reach() {
    if (content.reach() > 0) {
      return content.reach();
    }
    double near = Math.max(Math.abs(content.estimate()), 1.25 * content.worthwhile());
    double far =
        Math.max(Math.abs(content.ninetyFive().low()), Math.abs(content.ninetyFive().high()));
    double most = near > 0 ? 4 * near : far;
    double reach = 1.1 * Math.max(near, Math.min(far, most));
    return reach > 0 && Double.isFinite(reach) ? reach : 1;
  }
}
