package blindlap.plot.surface;

import java.util.EnumMap;
import java.util.Map;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;

/** Draws on a JavaFX canvas. The bundled fonts must have been loaded before. */
public final class CanvasSurface implements Surface {
  private final GraphicsContext canvas;
  private final Palette palette;
  private final Map<Ink, Color> colours = new EnumMap<>(Ink.class);

  private CanvasSurface(GraphicsContext canvas, Palette palette) {
    this.canvas = canvas;
    this.palette = palette;
  }

  /** A surface on this canvas; earlier content stays. */
  public static CanvasSurface on(GraphicsContext canvas, Palette palette) {
    canvas.setTextBaseline(VPos.BASELINE);
    canvas.setLineJoin(StrokeLineJoin.MITER);
    canvas.setLineCap(StrokeLineCap.BUTT);
    return new CanvasSurface(canvas, palette);
  }

  @Override
  public Palette palette() {
    return palette;
  }

  @Override
  public void segments(double[] ends, Pen pen) {
    if (take(pen)) {
      for (int i = 0; i < ends.length; i += 4) {
        canvas.strokeLine(ends[i], ends[i + 1], ends[i + 2], ends[i + 3]);
      }
    }
  }

  @Override
  public void polyline(double[] xs, double[] ys, Pen pen) {
    if (take(pen)) {
      canvas.strokePolyline(xs, ys, xs.length);
    }
  }

  @Override
  public void polygon(double[] xs, double[] ys, Ink fill) {
    if (take(fill)) {
      canvas.fillPolygon(xs, ys, xs.length);
    }
  }

  @Override
  public void rectangle(Box box, Ink fill) {
    if (take(fill)) {
      canvas.fillRect(box.x(), box.y(), box.width(), box.height());
    }
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill) {
    if (take(fill)) {
      canvas.fillOval(x - radius, y - radius, 2 * radius, 2 * radius);
    }
  }

  @Override
  public void ring(double x, double y, double radius, Pen pen) {
    if (take(pen)) {
      canvas.strokeOval(x - radius, y - radius, 2 * radius, 2 * radius);
    }
  }

  @Override
  public void text(String words, double x, double baseline, Anchor anchor, Face face, Ink ink) {
    if (take(ink)) {
      canvas.setFont(font(face));
      canvas.setTextAlign(
          switch (anchor) {
            case START -> TextAlignment.LEFT;
            case MIDDLE -> TextAlignment.CENTER;
            case END -> TextAlignment.RIGHT;
          });
      canvas.fillText(words, x, baseline);
    }
  }

  @Override
  public void cells(double x, double y, double side, boolean[][] rows, Ink fill) {
    if (!take(fill)) {
      return;
    }
    for (int row = 0; row < rows.length; row++) {
      double top = Math.rint(y + row * side);
      double height = Math.rint(y + (row + 1) * side) - top;
      for (int column = 0; column < rows[row].length; column++) {
        // Whole pixels, because a hair of light between dark cells confuses a reader.
        if (rows[row][column]) {
          double left = Math.rint(x + column * side);
          canvas.fillRect(left, top, Math.rint(x + (column + 1) * side) - left, height);
        }
      }
    }
  }

  // Semi-bold is a family of its own in the files; bold is a weight of the family.
  private Font font(Face face) {
    return switch (palette.weight(face.weight())) {
      case REGULAR -> new Font(Weight.FAMILY + " Regular", face.size());
      case SEMIBOLD -> new Font(Weight.FAMILY + " SemiBold", face.size());
      case BOLD, SERIF, ITALIC -> new Font(face.weight().family(), face.size());
    };
  }

  private boolean take(Ink ink) {
    if (!palette.draws(ink)) {
      return false;
    }
    canvas.setFill(colour(ink));
    return true;
  }

  private boolean take(Pen pen) {
    if (!palette.draws(pen.ink())) {
      return false;
    }
    canvas.setStroke(colour(pen.ink()));
    canvas.setLineWidth(palette.lineWidth(pen.width()));
    canvas.setLineDashes(pen.dash().lengths());
    return true;
  }

  private Color colour(Ink ink) {
    return colours.computeIfAbsent(ink, each -> Color.web(palette.hex(each)));
  }
}
