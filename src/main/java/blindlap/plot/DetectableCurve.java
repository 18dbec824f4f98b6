package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import org.jspecify.annotations.Nullable;

/**
 * What a day can show: for each possible number of stints the smallest true difference that would
 * be seen on 8 of 10 such days. Filled dots fit the day, open ones need more; hatched where no
 * result is possible at all. The worthwhile difference is the heaviest line.
 */
public final class DetectableCurve implements Drawing {

  private final DetectableContent content;

  private DetectableCurve(DetectableContent content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no dot, dots are out of order, or the worthwhile
   *     difference is not above 0
   */
  public static DetectableCurve of(DetectableContent content) {
    int before = 1;
    for (DetectableContent.Dot dot : content.dots()) {
      if (dot.stints() <= before) {
        throw new IllegalArgumentException(dot.stints() + " stints are out of order");
      }
      before = dot.stints();
    }
    if (content.dots().isEmpty() || !(content.worthwhile() > 0)) {
      throw new IllegalArgumentException(
          "A day needs a number of stints and a worthwhile difference above 0");
    }
    return new DetectableCurve(content);
  }

  /** Two drawings of the same are equal: a page does not draw it anew. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof DetectableCurve curve && content.equals(curve.content);
  }

  @Override
  public int hashCode() {
    return content.hashCode();
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return DetectablePart.Layout.of(content, width, textScale).height();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    new DetectablePart(surface, content, DetectablePart.Layout.of(content, width, textScale))
        .draw();
  }
}
