package blindlap.plot.surface;

/**
 * What can be drawn on: the screen, an SVG picture, a page of a PDF. Lengths are logical pixels, y
 * downwards. An ink that the palette does not draw leaves nothing.
 */
public interface Surface {
  /** The colours in use. */
  Palette palette();

  /** Separate straight lines: x1, y1, x2, y2, then the next line's four. */
  void segments(double[] ends, Pen pen);

  /** A connected line through the points; both arrays of the same length, 2 or more. */
  void polyline(double[] xs, double[] ys, Pen pen);

  /** A filled polygon; both arrays of the same length, 3 or more. */
  void polygon(double[] xs, double[] ys, Ink fill);

  /** A filled rectangle. */
  void rectangle(Box box, Ink fill);

  /** A filled disc. */
  void disc(double x, double y, double radius, Ink fill);

  /** A circle drawn with a pen. */
  void ring(double x, double y, double radius, Pen pen);

  /** One line of words; {@code baseline} is where the letters stand. */
  void text(String words, double x, double baseline, Anchor anchor, Face face, Ink ink);

  /** Square cells of the given side, row by row from the upper left; true is filled. */
  void cells(double x, double y, double side, boolean[][] rows, Ink fill);

  /** One straight line. */
  default void line(double x1, double y1, double x2, double y2, Pen pen) {
    segments(new double[] {x1, y1, x2, y2}, pen);
  }

  /** Lines at 45 degrees, 7 apart, that end at the edges of the box. */
  default void hatch(Box box) {
    double[] ends = Hatching.lines(box);
    if (ends.length > 0) {
      segments(ends, Pen.of(Ink.HATCH, 1));
    }
  }

  /** Words on a rectangle of paper, so that nothing runs through the letters. */
  default void backedText(
      String words, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    rectangle(Box.around(words, x, baseline, anchor, face).grown(2), Ink.PAPER);
    text(words, x, baseline, anchor, face, ink);
  }
}
