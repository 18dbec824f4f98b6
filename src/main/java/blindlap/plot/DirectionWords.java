package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Surface;

/**
 * What lies to the left and to the right of zero, each with an arrow: on one line where both fit,
 * else on two.
 *
 * @param left words for the left
 * @param right words for the right
 * @param faces type
 * @param leftStart left end of the left arrow
 * @param rightStart left end of the right words
 * @param lines 1 or 2
 */
record DirectionWords(
    String left, String right, Faces faces, double leftStart, double rightStart, int lines) {

  static DirectionWords of(String left, String right, Faces faces, double zero, double width) {
    Face face = faces.strong();
    double arrow = faces.px(34);
    String leftCut = Lines.cut(left, face, width - arrow);
    String rightCut = Lines.cut(right, face, width - arrow);
    double gap = faces.px(14);
    double leftStart = zero - gap - face.room(leftCut) - arrow;
    double rightEnd = zero + gap + face.room(rightCut) + arrow;
    int lines = leftStart >= 0 && rightEnd <= width ? 1 : 2;
    double rightStart = Math.min(zero + gap, width - face.room(rightCut) - arrow);
    return new DirectionWords(
        leftCut, rightCut, faces, Math.max(0, leftStart), Math.max(0, rightStart), lines);
  }

  double height() {
    return lines * faces.strong().line() + faces.px(2);
  }

  void draw(Surface surface, double top) {
    Face face = faces.strong();
    double first = top + face.ascent();
    double second = first + (lines - 1) * face.line();
    double arrow = faces.px(24);
    double gap = faces.px(8);
    Arrows.draw(surface, leftStart + arrow, leftStart, first - face.size() * 0.3, faces.px(5));
    surface.text(left, leftStart + arrow + gap, first, Anchor.START, face, Ink.INK);
    surface.text(right, rightStart, second, Anchor.START, face, Ink.INK);
    double from = rightStart + face.room(right) + gap;
    Arrows.draw(surface, from, from + arrow, second - face.size() * 0.3, faces.px(5));
  }
}
