package blindlap.screen.part;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;
import blindlap.wording.day.Shown;

/** Draws on another surface, with every text as {@link Shown} shows it. */
record ShownSurface(Surface under) implements Surface {
  @Override
  public Palette palette() {
    return under.palette();
  }

  @Override
  public void segments(double[] ends, Pen pen) {
    under.segments(ends, pen);
  }

  @Override
  public void polyline(double[] xs, double[] ys, Pen pen) {
    under.polyline(xs, ys, pen);
  }

  @Override
  public void polygon(double[] xs, double[] ys, Ink fill) {
    under.polygon(xs, ys, fill);
  }

  @Override
  public void rectangle(Box box, Ink fill) {
    under.rectangle(box, fill);
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill) {
    under.disc(x, y, radius, fill);
  }

  @Override
  public void ring(double x, double y, double radius, Pen pen) {
    under.ring(x, y, radius, pen);
  }

  @Override
  public void text(String words, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    under.text(Shown.text(words), x, baseline, anchor, face, ink);
  }

  @Override
  public void cells(double x, double y, double side, boolean[][] rows, Ink fill) {
    under.cells(x, y, side, rows, fill);
  }
}
