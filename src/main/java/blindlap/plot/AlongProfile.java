package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Quantities along the distance, a strip each above one axis, with gates as uprights through all.
 */
public final class AlongProfile implements Drawing {
  private static final double STRIP = 58;
  private static final double GAP = 10;

  private final Content content;

  /**
   * A quantity.
   *
   * @param values by place; NaN where it is not known
   * @param axis what it measures and how its values are said
   * @param fromZero true if its axis begins at zero
   */
  public record Strip(double[] values, Axis axis, boolean fromZero) {}

  /** A gate: metres from the beginning, its name, true if it is in hand. */
  public record Mark(double along, String name, boolean chosen) {}

  /**
   * Everything that is drawn.
   *
   * @param along metres from the beginning, rising; 2 or more
   * @param strips from above; may be none
   * @param marks in order
   * @param axis of the distance
   */
  public record Content(
      double[] along, List<Strip> strips, List<Mark> marks, Axis axis, Spoken spoken) {
    /** Copies the lists. */
    public Content {
      strips = List.copyOf(strips);
      marks = List.copyOf(marks);
    }
  }

  private AlongProfile(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there are fewer than two places
   */
  public static AlongProfile of(Content content) {
    if (content.along().length < 2) {
      throw new IllegalArgumentException("A way has two places at least");
    }
    return new AlongProfile(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  private static double names(Faces faces) {
    return faces.plain().line() + faces.px(4);
  }

  private double axisLine(Faces faces) {
    int strips = Math.max(1, content.strips().size());
    double strip = content.strips().isEmpty() ? 14 : STRIP;
    return names(faces) + strips * faces.px(strip) + (strips - 1) * faces.px(GAP);
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    return axisLine(faces) + faces.px(10) + faces.number().line() + faces.px(4);
  }

  private Scale across(double width, Faces faces) {
    double room = 0;
    for (Strip strip : content.strips()) {
      room = Math.max(room, AxisPart.uprightRoom(scale(strip, 1, 0), strip.axis(), faces));
    }
    double left = Math.max(faces.px(24), room + 10);
    double last = content.along()[content.along().length - 1];
    return new Scale(0, last, left, width - faces.px(16));
  }

  private static Scale scale(Strip strip, double from, double to) {
    double[] known = Arrays.stream(strip.values()).filter(Double::isFinite).toArray();
    double low = strip.fromZero() ? 0 : Arrays.stream(known).min().orElse(0);
    double high = Arrays.stream(known).max().orElse(1);
    Scale scale =
        strip.fromZero()
            ? new Scale(0, high > 0 ? high * 1.08 : 1, from, to)
            : Scale.around(low, Math.max(high, low + 1), 0.08, from, to);
    // A strip has room for two numbers; one alone would say nothing of how much the line rises.
    Ticks ticks = Ticks.of(scale.low(), scale.high(), 2, strip.axis().kind());
    while (ticks.values().size() < 2) {
      double step = ticks.step();
      double bottom = Math.floor(scale.low() / step + 1e-9) * step;
      double top = Math.max(bottom + step, Math.ceil(scale.high() / step - 1e-9) * step);
      // A little above the highest number, or it would touch the lowest of the strip before.
      scale = new Scale(bottom, top + 0.1 * (top - bottom), from, to);
      ticks = Ticks.of(scale.low(), scale.high(), 2, strip.axis().kind());
    }
    return scale;
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    Scale across = across(width, faces);
    double line = axisLine(faces);
    double top = names(faces);
    for (Strip strip : content.strips()) {
      strip(surface, strip, across, top, faces);
      top += faces.px(STRIP + GAP);
    }
    for (Mark mark : content.marks()) {
      double x = AxisPart.crisp(across.clampedAt(mark.along()));
      surface.line(x, names(faces), x, line, Pen.of(Ink.INK, mark.chosen() ? 3 : 1.8));
    }
    marks(surface, across, faces);
    AxisPart.across(surface, across, content.axis(), line, faces);
    // Behind the first upright, if that stands near the beginning.
    double first = content.marks().isEmpty() ? 0 : across.at(content.marks().get(0).along());
    double word = Math.max(across.from(), first < across.from() + 60 ? first : 0) + faces.px(6);
    // What the strips are, on the strips: there is no legend.
    top = names(faces);
    for (Strip strip : content.strips()) {
      surface.backedText(
          Lines.cut(strip.axis().words(), faces.number(), across.to() - across.from()),
          word,
          top + faces.px(STRIP) - faces.px(6),
          Anchor.START,
          faces.number(),
          Ink.SECOND);
      top += faces.px(STRIP + GAP);
    }
  }

  private void strip(Surface surface, Strip strip, Scale across, double top, Faces faces) {
    Scale up = scale(strip, top + faces.px(STRIP), top);
    AxisPart.upright(surface, up, strip.axis(), across.from() - 10, across.to(), faces);
    List<Double> xs = new ArrayList<>();
    List<Double> ys = new ArrayList<>();
    for (int i = 0; i < strip.values().length; i++) {
      if (Double.isFinite(strip.values()[i])) {
        xs.add(across.at(content.along()[i]));
        ys.add(up.at(strip.values()[i]));
      } else {
        line(surface, xs, ys);
      }
    }
    line(surface, xs, ys);
    double base = AxisPart.crisp(top + faces.px(STRIP));
    surface.line(across.from(), base, across.to(), base, new Pen(Ink.RULE, 1, Dash.SOLID));
  }

  private static void line(Surface surface, List<Double> xs, List<Double> ys) {
    if (xs.size() > 1) {
      surface.polyline(
          xs.stream().mapToDouble(Double::doubleValue).toArray(),
          ys.stream().mapToDouble(Double::doubleValue).toArray(),
          Pen.of(Ink.INK, 1.8));
    }
    xs.clear();
    ys.clear();
  }

  /** Names above the uprights; one that would run into the one before is cut or left out. */
  private void marks(Surface surface, Scale across, Faces faces) {
    Face face = faces.plain();
    double edge = 0;
    for (int i = 0; i < content.marks().size(); i++) {
      Mark mark = content.marks().get(i);
      double x = across.clampedAt(mark.along());
      double next =
          i + 1 < content.marks().size()
              ? across.clampedAt(content.marks().get(i + 1).along())
              : across.to() + faces.px(16);
      double room = face.room(mark.name());
      double right = across.to() + faces.px(16);
      double left = Math.max(edge, Math.min(x - room / 2, right - room));
      double most = Math.max(next - 6, x) - left;
      if (left > x + 4 || most < face.size() * 2) {
        continue;
      }
      String words = Lines.cut(mark.name(), face, Math.min(most + room / 2, right - left));
      surface.text(words, left, face.ascent() + 2, Anchor.START, face, Ink.INK);
      edge = left + face.room(words) + 8;
    }
  }

  /** Metres along the way under a point of the paper. */
  public double along(double x, double width, double textScale) {
    Scale across = across(width, new Faces(textScale));
    double metres = (x - across.from()) / across.pixelsPerUnit();
    return Math.max(0, Math.min(across.high(), metres));
  }
}
