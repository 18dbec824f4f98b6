package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;

/** A way seen from above, north up, with gates across it, arrows in its direction and a scale. */
public final class TrailMap implements Drawing {
  private static final double TALLEST = 290;
  private static final double FLATTEST = 190;
  private static final double ASPECT = 0.52;
  private static final double SIDE = 66;
  private static final double TOP = 30;
  private static final double LEGEND = 74;
  private static final double LEAST_GATE = 18;
  private static final double NEAR = 26;
  private static final double[] ARROWS = {0.17, 0.42, 0.67, 0.9};

  private final Content content;
  private final double west;
  private final double south;
  private final double wide;
  private final double high;

  /**
   * A gate.
   *
   * @param along metres from the beginning of the way
   * @param ends metres east and north of one end, and of the other
   * @param name in strong letters
   * @param role behind it
   * @param outer true for the first and the last, which are drawn heavier
   */
  public record Across(double along, double[] ends, String name, String role, boolean outer) {}

  /**
   * Everything that is drawn.
   *
   * @param east metres east, by place of the way; 2 or more
   * @param north metres north
   * @param along metres from the beginning, rising
   * @param gates in order
   * @param chosen index of the gate that is in hand; -1 if none is
   * @param northWord such as "N"
   * @param metres how a length in metres is said
   */
  public record Content(
      double[] east,
      double[] north,
      double[] along,
      List<Across> gates,
      int chosen,
      String northWord,
      java.util.function.DoubleFunction<String> metres,
      Spoken spoken) {
    /** Copies the list. */
    public Content {
      gates = List.copyOf(gates);
    }
  }

  private TrailMap(Content content) {
    this.content = content;
    double[] east = content.east();
    double[] north = content.north();
    west = java.util.Arrays.stream(east).min().orElseThrow();
    south = java.util.Arrays.stream(north).min().orElseThrow();
    wide = Math.max(1, java.util.Arrays.stream(east).max().orElseThrow() - west);
    high = Math.max(1, java.util.Arrays.stream(north).max().orElseThrow() - south);
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when the way has fewer than two places
   */
  public static TrailMap of(Content content) {
    if (content.east().length < 2) {
      throw new IllegalArgumentException("A way has two places at least");
    }
    return new TrailMap(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    double most = TALLEST * Math.min(1.4, textScale);
    return Math.max(FLATTEST, Math.min(most, ASPECT * width));
  }

  /** Where metres stand on the paper. */
  private final class Place {
    private final double scale;
    private final double left;
    private final double bottom;

    Place(double width, double textScale) {
      Faces faces = new Faces(textScale);
      double height = heightFor(width, textScale);
      double roomX = Math.max(40, width - 2 * faces.px(SIDE) - faces.px(LEGEND) / 2);
      double roomY = Math.max(40, height - 2 * faces.px(TOP));
      scale = Math.min(roomX / wide, roomY / high);
      left = faces.px(SIDE) + (roomX - wide * scale) / 2;
      bottom = height - faces.px(TOP) - (roomY - high * scale) / 2;
    }

    double x(double east) {
      return left + (east - west) * scale;
    }

    double y(double north) {
      return bottom - (north - south) * scale;
    }
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Place place = new Place(width, textScale);
    Faces faces = new Faces(textScale);
    int count = content.east().length;
    double[] xs = new double[count];
    double[] ys = new double[count];
    for (int i = 0; i < count; i++) {
      xs[i] = place.x(content.east()[i]);
      ys[i] = place.y(content.north()[i]);
    }
    surface.polyline(xs, ys, Pen.of(Ink.INK, 2.2));
    arrows(surface, xs, ys, faces);
    List<Box> taken = new ArrayList<>(legend(surface, place, width, faces));
    for (int i = 0; i < content.gates().size(); i++) {
      gate(surface, place, content.gates().get(i), i == content.chosen());
    }
    for (int i = 0; i < content.gates().size(); i++) {
      Box bounds = new Box(0, 0, width, heightFor(width, textScale));
      taken.add(name(surface, place, i, bounds, taken, xs, ys, faces));
    }
  }

  private void arrows(Surface surface, double[] xs, double[] ys, Faces faces) {
    double length = content.along()[content.along().length - 1];
    for (double share : ARROWS) {
      int i = 1;
      while (i < xs.length - 1 && content.along()[i] < share * length) {
        i++;
      }
      double heading = Math.atan2(ys[i] - ys[i - 1], xs[i] - xs[i - 1]);
      double arm = faces.mark() * 1.3;
      for (double side : new double[] {2.6, -2.6}) {
        surface.line(
            xs[i],
            ys[i],
            xs[i] + arm * Math.cos(heading + side),
            ys[i] + arm * Math.sin(heading + side),
            Pen.of(Ink.INK, 2));
      }
    }
  }

  private static double[] drawn(Place place, Across gate) {
    double[] ends = gate.ends();
    double x1 = place.x(ends[0]);
    double y1 = place.y(ends[1]);
    double x2 = place.x(ends[2]);
    double y2 = place.y(ends[3]);
    double length = Math.max(1e-9, Math.hypot(x2 - x1, y2 - y1));
    double longer = Math.max(1, LEAST_GATE / length);
    double midX = (x1 + x2) / 2;
    double midY = (y1 + y2) / 2;
    return new double[] {
      midX + (x1 - midX) * longer,
      midY + (y1 - midY) * longer,
      midX + (x2 - midX) * longer,
      midY + (y2 - midY) * longer
    };
  }

  private static void gate(Surface surface, Place place, Across gate, boolean chosen) {
    double[] at = drawn(place, gate);
    if (chosen) {
      surface.disc((at[0] + at[2]) / 2, (at[1] + at[3]) / 2, 13, Ink.HIGHLIGHT);
    }
    surface.line(at[0], at[1], at[2], at[3], Pen.of(Ink.INK, gate.outer() ? 5 : 3.2));
  }

  /** The place round the gate where its name hides least. */
  private Box name(
      Surface surface,
      Place place,
      int number,
      Box bounds,
      List<Box> taken,
      double[] xs,
      double[] ys,
      Faces faces) {
    Across gate = content.gates().get(number);
    double[] at = drawn(place, gate);
    double midX = (at[0] + at[2]) / 2;
    double midY = (at[1] + at[3]) / 2;
    Face strong = faces.strong();
    String words = Lines.cut(gate.name(), strong, Math.max(60, bounds.width() / 3));
    double own = strong.room(words);
    double all = own + faces.px(6) + faces.plain().room(gate.role());
    Box best = best(midX, midY, all, bounds, taken, xs, ys, faces);
    double baseline = best.y() + strong.ascent() + strong.size() * 0.1;
    if (number == content.chosen()) {
      surface.rectangle(new Box(best.x() - 3, best.y(), own + 6, best.height()), Ink.HIGHLIGHT);
    }
    Ink ink = number == content.chosen() ? Ink.ON_HIGHLIGHT : Ink.INK;
    surface.text(words, best.x(), baseline, Anchor.START, strong, ink);
    surface.text(
        gate.role(),
        best.x() + own + faces.px(6),
        baseline,
        Anchor.START,
        faces.plain(),
        Ink.SECOND);
    return best;
  }

  private Box best(
      double midX,
      double midY,
      double wide,
      Box bounds,
      List<Box> taken,
      double[] xs,
      double[] ys,
      Faces faces) {
    double size = faces.strong().size();
    double reach = faces.px(20);
    Box best = new Box(0, 0, 0, 0);
    double least = Double.POSITIVE_INFINITY;
    for (int turn = 0; turn < 16; turn++) {
      double angle = turn * Math.PI / 8;
      double x = midX + Math.cos(angle) * (reach + wide / 2) - wide / 2;
      double y = midY + Math.sin(angle) * (reach + size / 2);
      x = Math.max(0, Math.min(bounds.width() - wide, x));
      Box box = new Box(x, y - size / 2, wide, size * 1.1);
      double hidden = hidden(box, bounds, taken, xs, ys);
      if (hidden < least) {
        least = hidden;
        best = box;
      }
    }
    return best;
  }

  private double hidden(Box box, Box bounds, List<Box> taken, double[] xs, double[] ys) {
    double hidden = bounds.contains(box) ? 0 : 1e6;
    for (Box other : taken) {
      hidden += 10 * box.overlap(other.grown(2));
    }
    Box wide = box.grown(3);
    for (int i = 1; i < xs.length; i++) {
      // In steps of a few pixels: places of a way may lie far apart.
      int steps = 1 + (int) (Math.hypot(xs[i] - xs[i - 1], ys[i] - ys[i - 1]) / 4);
      for (int s = 0; s < steps; s++) {
        double x = xs[i - 1] + (xs[i] - xs[i - 1]) * s / steps;
        double y = ys[i - 1] + (ys[i] - ys[i - 1]) * s / steps;
        if (x >= wide.x() && x <= wide.right() && y >= wide.y() && y <= wide.bottom()) {
          hidden += 20;
        }
      }
    }
    return hidden;
  }

  private List<Box> legend(Surface surface, Place place, double width, Faces faces) {
    double x = width - faces.px(20);
    double top = faces.px(6);
    double foot = faces.px(44);
    surface.line(x, top, x, foot, Pen.of(Ink.INK, 1.8));
    surface.line(x, top, x - 5, top + 8, Pen.of(Ink.INK, 1.8));
    surface.line(x, top, x + 5, top + 8, Pen.of(Ink.INK, 1.8));
    surface.text(
        content.northWord(),
        x,
        foot + faces.strong().line() * 0.9,
        Anchor.MIDDLE,
        faces.strong(),
        Ink.INK);
    double metres = bar(place.scale, faces.px(90));
    double right = width - faces.px(8);
    double y = heightFor(width, faces.scale()) - faces.px(24);
    double left = right - metres * place.scale;
    surface.line(left, y, right, y, Pen.of(Ink.INK, 1.5));
    surface.line(left, y - 6, left, y, Pen.of(Ink.INK, 1.5));
    surface.line(right, y - 6, right, y, Pen.of(Ink.INK, 1.5));
    surface.text(
        content.metres().apply(metres),
        (left + right) / 2,
        y + faces.number().line() * 0.95,
        Anchor.MIDDLE,
        faces.number(),
        Ink.SECOND);
    return List.of(
        new Box(x - faces.px(14), 0, faces.px(28), foot + faces.strong().line()),
        new Box(left - 4, y - 8, right - left + 8, faces.px(36)));
  }

  /** The longest round length that is no wider than that. */
  private static double bar(double scale, double most) {
    double power = Math.pow(10, Math.floor(Math.log10(most / scale)));
    for (double factor : new double[] {5, 2}) {
      if (factor * power * scale <= most) {
        return factor * power;
      }
    }
    return power;
  }

  /** Metres along the way to the place under a point of the paper; NaN where the way is far. */
  public double along(double x, double y, double width, double textScale) {
    Place place = new Place(width, textScale);
    double best = NEAR;
    double found = Double.NaN;
    for (int i = 1; i < content.east().length; i++) {
      double x1 = place.x(content.east()[i - 1]);
      double y1 = place.y(content.north()[i - 1]);
      double dx = place.x(content.east()[i]) - x1;
      double dy = place.y(content.north()[i]) - y1;
      double long2 = dx * dx + dy * dy;
      double share =
          long2 == 0 ? 0 : Math.max(0, Math.min(1, ((x - x1) * dx + (y - y1) * dy) / long2));
      double off = Math.hypot(x - x1 - share * dx, y - y1 - share * dy);
      if (off < best) {
        best = off;
        double[] along = content.along();
        found = along[i - 1] + share * (along[i] - along[i - 1]);
      }
    }
    return found;
  }
}
