package blindlap.paper;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Palette;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.GeneralPath;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.jspecify.annotations.Nullable;

/**
 * Draws into pixels without a screen. Letters are filled as the outlines of the bundled fonts, so
 * that neither the fonts of the machine nor a window system has a say.
 */
final class RasterSurface implements Surface {
  private final Graphics2D graphics;
  private final Palette palette;
  private final Outlines outlines = new Outlines();

  private RasterSurface(Graphics2D graphics, Palette palette) {
    this.graphics = graphics;
    this.palette = palette;
  }

  /** The drawing in pixels. */
  static BufferedImage image(Drawing drawing, int width, Palette palette) {
    int height = (int) Math.ceil(drawing.heightFor(width, 1));
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      drawing.draw(new RasterSurface(graphics, palette), width, 1);
    } finally {
      graphics.dispose();
    }
    return image;
  }

  @Override
  public Palette palette() {
    return palette;
  }

  @Override
  public void segments(double[] ends, Pen pen) {
    Path2D path = new Path2D.Double();
    for (int i = 0; i < ends.length; i += 4) {
      path.moveTo(ends[i], ends[i + 1]);
      path.lineTo(ends[i + 2], ends[i + 3]);
    }
    stroke(path, pen);
  }

  @Override
  public void polyline(double[] xs, double[] ys, Pen pen) {
    stroke(path(xs, ys), pen);
  }

  @Override
  public void polygon(double[] xs, double[] ys, Ink fill) {
    Path2D path = path(xs, ys);
    path.closePath();
    fill(path, fill);
  }

  @Override
  public void rectangle(Box box, Ink fill) {
    fill(new Rectangle2D.Double(box.x(), box.y(), box.width(), box.height()), fill);
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill) {
    fill(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius), fill);
  }

  @Override
  public void ring(double x, double y, double radius, Pen pen) {
    stroke(new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius), pen);
  }

  @Override
  public void text(String words, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    Outlines.Letters letters = outlines.of(words, palette.weight(face.weight()));
    double scale = face.size() / letters.unitsPerEm();
    AffineTransform place =
        new AffineTransform(scale, 0, 0, -scale, anchor.left(x, letters.width() * scale), baseline);
    GeneralPath path = letters.path();
    fill(place.createTransformedShape(path), ink);
  }

  @Override
  public void cells(double x, double y, double side, boolean[][] rows, Ink fill) {
    for (int row = 0; row < rows.length; row++) {
      for (int column = 0; column < rows[row].length; column++) {
        if (rows[row][column]) {
          rectangle(new Box(x + column * side, y + row * side, side, side), fill);
        }
      }
    }
  }

  private void fill(Shape shape, Ink ink) {
    if (palette.draws(ink)) {
      graphics.setColor(new Color(palette.rgb(ink)));
      graphics.fill(shape);
    }
  }

  private void stroke(Shape shape, Pen pen) {
    if (palette.draws(pen.ink())) {
      graphics.setColor(new Color(palette.rgb(pen.ink())));
      graphics.setStroke(
          new BasicStroke(
              (float) palette.lineWidth(pen.width()),
              BasicStroke.CAP_BUTT,
              BasicStroke.JOIN_MITER,
              10,
              lengths(pen.dash()),
              0));
      graphics.draw(shape);
    }
  }

  private static float @Nullable [] lengths(Dash dash) {
    double[] lengths = dash.lengths();
    if (lengths.length == 0) {
      return null;
    }
    float[] floats = new float[lengths.length];
    for (int i = 0; i < floats.length; i++) {
      floats[i] = (float) lengths[i];
    }
    return floats;
  }

  private static Path2D path(double[] xs, double[] ys) {
    Path2D path = new Path2D.Double();
    path.moveTo(xs[0], ys[0]);
    for (int i = 1; i < xs.length; i++) {
      path.lineTo(xs[i], ys[i]);
    }
    return path;
  }
}
