package blindlap.plot;

import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;

/** Horizontal arrows. */
final class Arrows {
  private Arrows() {}

  /** An arrow from one x to another with an open head of this size. */
  static void draw(Surface surface, double from, double to, double y, double head) {
    surface.line(from, y, to, y, Pen.of(Ink.INK, 1.2));
    double back = to + (from < to ? -head : head);
    surface.polyline(
        new double[] {back, to, back}, new double[] {y - head, y, y + head}, Pen.of(Ink.INK, 1.2));
  }

  /** A filled head that says "goes on beyond the picture"; its tip is at x. */
  static void beyond(Surface surface, double x, double y, boolean right, double size) {
    double back = x + (right ? -size : size);
    surface.polygon(
        new double[] {x, back, back}, new double[] {y, y - 0.7 * size, y + 0.7 * size}, Ink.INK);
  }

  /** A level line over an interval; an end off the scale becomes a filled head. */
  static void interval(Surface surface, Scale scale, Limits limits, double y, double width) {
    interval(surface, scale, limits, y, Pen.of(Ink.INK, width));
  }

  /** The same with another pen. */
  static void interval(Surface surface, Scale scale, Limits limits, double y, Pen pen) {
    double left = scale.clampedAt(limits.low());
    double right = scale.clampedAt(limits.high());
    surface.line(left, y, right, y, pen);
    double head = 4 + 1.5 * pen.width();
    if (!scale.holds(limits.low())) {
      beyond(surface, left, y, false, head);
    }
    if (!scale.holds(limits.high())) {
      beyond(surface, right, y, true, head);
    }
  }
}
