package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/**
 * The confidence curve: for each supposed difference the share of admissible orders that would fit
 * it as badly or worse. A step line; the 95 % interval a thin bar at p = .05, the 90 % interval a
 * thick bar at p = .10, the worthwhile band hatched, "no difference" marked with its p.
 */
public final class ConfidenceCurvePlot implements Drawing {
  private final CurveContent content;
  private final ThinnedCurve curve;

  private ConfidenceCurvePlot(CurveContent content, ThinnedCurve curve) {
    this.content = content;
    this.curve = curve;
  }

  /**
   * Makes the drawing. The curve is kept as its highest point in each of {@value
   * ThinnedCurve#COLUMNS} columns, which changes nothing an eye can see, however many orders there
   * are.
   *
   * @param content what is drawn beside the curve
   * @param knots supposed differences at which p changes, rising; read, not kept
   * @param heights p before the first knot, between knots, and after the last: one more than knots
   * @throws IllegalArgumentException when the estimate or a p is not a number in range, lengths do
   *     not match or knots are out of order
   */
  public static ConfidenceCurvePlot of(CurveContent content, double[] knots, double[] heights) {
    checkSteps(knots, heights);
    if (!Double.isFinite(content.estimate()) || !(content.none() >= 0 && content.none() <= 1)) {
      throw new IllegalArgumentException(
          "Not a curve: estimate " + content.estimate() + ", p " + content.none());
    }
    double band = content.worthwhile().halfWidth();
    double estimate = content.estimate();
    double low = Math.min(Math.min(-1.3 * band, estimate), 0);
    double high = Math.max(Math.max(1.3 * band, estimate), 0);
    double reach = high - low;
    Limits limits = content.ninetyFive().limits();
    low = Math.min(low, end(limits.low(), estimate, -2 * reach) - 0.25 * reach);
    high = Math.max(high, end(limits.high(), estimate, 2 * reach) + 0.25 * reach);
    return new ConfidenceCurvePlot(content, ThinnedCurve.of(knots, heights, low, high));
  }

  private static void checkSteps(double[] knots, double[] heights) {
    if (knots.length == 0 || heights.length != knots.length + 1) {
      throw new IllegalArgumentException(
          knots.length + " knots need " + (knots.length + 1) + " heights, got " + heights.length);
    }
    for (int i = 1; i < knots.length; i++) {
      if (!(knots[i - 1] <= knots[i])) {
        throw new IllegalArgumentException("Knot " + i + " of the curve is out of order");
      }
    }
    for (double p : heights) {
      if (!(p >= 0 && p <= 1)) {
        throw new IllegalArgumentException("A share of orders cannot be " + p);
      }
    }
  }

  private static double end(double limit, double estimate, double farthest) {
    double far = estimate + farthest;
    return farthest < 0 ? Math.max(limit, far) : Math.min(limit, far);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return ConfidenceCurvePart.Layout.of(content, curve, width, textScale).height();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    new ConfidenceCurvePart(
            surface,
            content,
            curve,
            ConfidenceCurvePart.Layout.of(content, curve, width, textScale))
        .draw();
  }
}
