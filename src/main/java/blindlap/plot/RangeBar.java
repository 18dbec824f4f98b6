package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;

/**
 * A bar from the best to the worst case, a dot where they agree, for a cell of a table; the upright
 * is what would matter, at the same place in every row.
 *
 * @param low best case, above 0
 * @param high worst case
 * @param most the right end of the scale, the same for all rows; it begins at 0
 * @param worthwhile what would matter; NaN for none
 * @param lowWords the number at the best case
 * @param highWords the number at the worst case; not written where it reads the same
 * @param spoken the picture in words
 */
public record RangeBar(
    double low,
    double high,
    double most,
    double worthwhile,
    String lowWords,
    String highWords,
    Spoken spoken)
    implements Drawing {
  private static final double THICK = 7;

  public RangeBar {
    if (!(low > 0) || !(low <= high) || !(high <= most) || !Double.isFinite(most)) {
      throw new IllegalArgumentException("Not a range: " + low + " to " + high + " of " + most);
    }
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    return faces.number().line() + faces.px(THICK + 10);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    Scale scale = new Scale(0, most, 0, width - faces.px(12));
    double height = heightFor(width, textScale);
    if (worthwhile > 0 && worthwhile <= most) {
      double x = AxisPart.crisp(scale.at(worthwhile));
      surface.line(x, faces.number().line(), x, height, Pen.of(Ink.INK, 1.6));
    }
    double left = scale.at(low);
    double right = scale.at(high);
    double y = height - faces.px(THICK);
    if (lowWords.equals(highWords)) {
      surface.disc((left + right) / 2, y, faces.px(THICK), Ink.INK);
    } else {
      surface.rectangle(
          new Box(left, y - faces.px(THICK) / 2, right - left, faces.px(THICK)), Ink.INK);
    }
    words(surface, faces, left, right, width);
  }

  /** Each number over its end, and apart where they would touch. */
  private void words(Surface surface, Faces faces, double left, double right, double width) {
    Face face = faces.number();
    double baseline = face.ascent() + 1;
    if (lowWords.equals(highWords)) {
      double half = face.room(lowWords) / 2;
      double x = Math.max(half, Math.min(width - half, (left + right) / 2));
      surface.text(lowWords, x, baseline, Anchor.MIDDLE, face, Ink.INK);
      return;
    }
    double gap = faces.px(8);
    double end = Math.min(width, Math.max(right, left + face.room(highWords) + gap));
    double start = Math.min(left + face.room(lowWords), end - face.room(highWords) - gap);
    surface.text(
        lowWords, Math.max(face.room(lowWords), start), baseline, Anchor.END, face, Ink.INK);
    surface.text(highWords, end, baseline, Anchor.END, face, Ink.INK);
  }
}
