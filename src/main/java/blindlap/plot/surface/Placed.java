package blindlap.plot.surface;

import java.util.Arrays;

/** A part of another surface: drawings on it are moved, and made smaller or larger as a whole. */
public final class Placed implements Surface {
  private final Surface surface;
  private final double left;
  private final double top;
  private final double factor;

  /**
   * @param left where x of 0 comes to stand
   * @param top where y of 0 comes to stand
   * @param factor pixels of the surface for each of the drawing's, above 0
   */
  public Placed(Surface surface, double left, double top, double factor) {
    if (!(factor > 0)) {
      throw new IllegalArgumentException("A drawing is placed at a size above 0, got " + factor);
    }
    this.surface = surface;
    this.left = left;
    this.top = top;
    this.factor = factor;
  }

  @Override
  public Palette palette() {
    return surface.palette();
  }

  @Override
  public void segments(double[] ends, Pen pen) {
    double[] moved = new double[ends.length];
    for (int i = 0; i < ends.length; i++) {
      moved[i] = i % 2 == 0 ? x(ends[i]) : y(ends[i]);
    }
    surface.segments(moved, pen(pen));
  }

  @Override
  public void polyline(double[] xs, double[] ys, Pen pen) {
    surface.polyline(xs(xs), ys(ys), pen(pen));
  }

  @Override
  public void polygon(double[] xs, double[] ys, Ink fill) {
    surface.polygon(xs(xs), ys(ys), fill);
  }

  @Override
  public void rectangle(Box box, Ink fill) {
    surface.rectangle(
        new Box(x(box.x()), y(box.y()), factor * box.width(), factor * box.height()), fill);
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill) {
    surface.disc(x(x), y(y), factor * radius, fill);
  }

  @Override
  public void ring(double x, double y, double radius, Pen pen) {
    surface.ring(x(x), y(y), factor * radius, pen(pen));
  }

  @Override
  public void text(String words, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    Face placed = new Face(face.weight(), factor * face.size());
    surface.text(words, x(x), y(baseline), anchor, placed, ink);
  }

  @Override
  public void cells(double x, double y, double side, boolean[][] rows, Ink fill) {
    surface.cells(x(x), y(y), factor * side, rows, fill);
  }

  private double x(double x) {
    return left + factor * x;
  }

  private double y(double y) {
    return top + factor * y;
  }

  private double[] xs(double[] xs) {
    return Arrays.stream(xs).map(this::x).toArray();
  }

  private double[] ys(double[] ys) {
    return Arrays.stream(ys).map(this::y).toArray();
  }

  private Pen pen(Pen pen) {
    return new Pen(pen.ink(), factor * pen.width(), pen.dash());
  }
}
