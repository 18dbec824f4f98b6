package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;

/** Draws axes: one ink line, short ticks, numbers in second ink. */
final class AxisPart {
  private static final double UPRIGHT_DISTANCE = 1.9;
  private static final Pen LINE = Pen.of(Ink.INK, 1.2);

  private AxisPart() {}

  /** A horizontal axis with its numbers below; words run through by a guide are backed. */
  static void across(Surface surface, Scale scale, Axis axis, double y, Faces faces) {
    across(surface, scale, scale, axis, y, faces);
  }

  /**
   * A horizontal axis whose line covers {@code whole} and whose numbers count as {@code scale};
   * both on the same pixels.
   */
  static void across(Surface surface, Scale whole, Scale scale, Axis axis, double y, Faces faces) {
    double line = crisp(y);
    surface.line(whole.from(), line, whole.to(), line, LINE);
    Face face = faces.number();
    Ticks ticks = Ticks.across(scale, axis, face);
    for (double value : ticks.values()) {
      double x = crisp(scale.at(value));
      surface.line(x, line, x, line + 5, LINE);
      String words = axis.number().say(value, ticks.step());
      double half = face.room(words) / 2;
      if (x - half >= 0 && x + half <= whole.to() + 8) {
        double baseline = y + numberBaseline(faces);
        surface.backedText(words, x, baseline, Anchor.MIDDLE, face, Ink.SECOND);
      }
    }
  }

  /** How far below a horizontal axis its numbers stand. */
  static double numberBaseline(Faces faces) {
    return faces.px(8) + faces.number().ascent();
  }

  /** Grid lines and numbers of an upright axis; the numbers end at {@code x}. */
  static void upright(
      Surface surface, Scale scale, Axis axis, double x, double gridTo, Faces faces) {
    Face face = faces.number();
    Ticks ticks = Ticks.upright(scale, axis, face.size() * UPRIGHT_DISTANCE);
    for (double value : ticks.values()) {
      double y = crisp(scale.at(value));
      surface.line(x + 8, y, gridTo, y, Pen.of(Ink.FAINT, 1));
      surface.text(
          axis.number().say(value, ticks.step()),
          x,
          y + 0.36 * face.size(),
          Anchor.END,
          face,
          Ink.SECOND);
    }
  }

  /** Room that the numbers of an upright axis need. */
  static double uprightRoom(Scale scale, Axis axis, Faces faces) {
    Face face = faces.number();
    Ticks ticks = Ticks.upright(scale, axis, face.size() * UPRIGHT_DISTANCE);
    return ticks.values().stream()
        .mapToDouble(value -> face.room(axis.number().say(value, ticks.step())))
        .max()
        .orElse(0);
  }

  /** The middle of a device pixel at 100 %, where a thin upright or level line is sharp. */
  static double crisp(double place) {
    return Math.floor(place) + 0.5;
  }
}
