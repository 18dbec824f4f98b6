package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;

/** Keeps what is drawn, so that tests can look at it in numbers. */
final class RecordingSurface implements Surface {
  record Words(String words, Box box, Face face, Ink ink) {}

  record Line(double x1, double y1, double x2, double y2, Pen pen) {}

  record Disc(double x, double y, double radius, Ink ink) {}

  final List<Words> words = new ArrayList<>();
  final List<Line> lines = new ArrayList<>();
  final List<Disc> discs = new ArrayList<>();
  final List<Box> boxes = new ArrayList<>();
  final List<Ink> fills = new ArrayList<>();
  final List<Double> xs = new ArrayList<>();
  final List<Double> ys = new ArrayList<>();
  final StringBuilder all = new StringBuilder();

  static RecordingSurface of(Drawing drawing, double width, double scale) {
    RecordingSurface surface = new RecordingSurface();
    drawing.draw(surface, width, scale);
    return surface;
  }

  @Override
  public Palette palette() {
    return Palette.PAPER;
  }

  @Override
  public void segments(double[] ends, Pen pen) {
    for (int i = 0; i < ends.length; i += 4) {
      lines.add(new Line(ends[i], ends[i + 1], ends[i + 2], ends[i + 3], pen));
      point(ends[i], ends[i + 1]);
      point(ends[i + 2], ends[i + 3]);
    }
    all.append("segments ").append(java.util.Arrays.toString(ends)).append(pen);
  }

  @Override
  public void polyline(double[] px, double[] py, Pen pen) {
    for (int i = 0; i < px.length; i++) {
      point(px[i], py[i]);
    }
    all.append("polyline ").append(java.util.Arrays.toString(px)).append(pen);
  }

  @Override
  public void polygon(double[] px, double[] py, Ink fill) {
    for (int i = 0; i < px.length; i++) {
      point(px[i], py[i]);
    }
    all.append("polygon ").append(java.util.Arrays.toString(px)).append(fill);
  }

  @Override
  public void rectangle(Box box, Ink fill) {
    boxes.add(box);
    fills.add(fill);
    if (fill != Ink.PAPER) {
      point(box.x(), box.y());
      point(box.right(), box.bottom());
    }
    all.append(box).append(fill);
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill) {
    discs.add(new Disc(x, y, radius, fill));
    point(x - radius, y - radius);
    point(x + radius, y + radius);
    all.append("disc ").append(x).append(' ').append(y).append(fill);
  }

  @Override
  public void ring(double x, double y, double radius, Pen pen) {
    point(x - radius, y - radius);
    point(x + radius, y + radius);
    all.append("ring ").append(x).append(' ').append(y).append(pen);
  }

  @Override
  public void text(String text, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    if (!text.isEmpty()) {
      words.add(new Words(text, Box.around(text, x, baseline, anchor, face), face, ink));
    }
    all.append(text).append(x).append(' ').append(baseline).append(ink);
  }

  @Override
  public void cells(double x, double y, double side, boolean[][] rows, Ink fill) {
    point(x, y);
    point(x + side * rows.length, y + side * rows.length);
  }

  private void point(double x, double y) {
    xs.add(x);
    ys.add(y);
  }

  Words find(String text) {
    return words.stream().filter(each -> each.words().equals(text)).findFirst().orElseThrow();
  }
}
