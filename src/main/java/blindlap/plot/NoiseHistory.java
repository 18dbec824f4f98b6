package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.List;
import java.util.Optional;

/** Rider noise of each session with its interval, and the pooled value as a band through all. */
public final class NoiseHistory implements Drawing {
  /**
   * The noise of a session, or the pooled one.
   *
   * @param label such as "12 Sep"
   * @param sd standard deviation
   * @param interval its interval
   */
  public record Entry(String label, double sd, Limits interval) {
    /** Checks the value. */
    public Entry {
      if (!(sd >= 0) || !Double.isFinite(sd)) {
        throw new IllegalArgumentException("Noise of " + label + " cannot be " + sd);
      }
    }
  }

  /**
   * Everything that is drawn.
   *
   * @param sessions oldest first, 1 or more
   * @param pooled all together; empty while there is nothing to pool
   * @param axis axis of the noise
   * @param spoken the picture in words
   */
  public record Content(List<Entry> sessions, Optional<Entry> pooled, Axis axis, Spoken spoken) {
    /** Copies the list. */
    public Content {
      sessions = List.copyOf(sessions);
    }
  }

  // An upper limit farther out than this many times the largest value ends in an arrow.
  private static final double FARTHEST = 2.5;

  private final Content content;

  private NoiseHistory(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no session
   */
  public static NoiseHistory of(Content content) {
    if (content.sessions().isEmpty()) {
      throw new IllegalArgumentException("No session has a noise to draw");
    }
    return new NoiseHistory(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  private int rows() {
    return content.sessions().size() + (content.pooled().isPresent() ? 1 : 0);
  }

  private static double row(Faces faces) {
    return faces.px(28);
  }

  private double axisLine(Faces faces) {
    return rows() * row(faces) + 4;
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    int lines = words(faces, width).size();
    return axisLine(faces)
        + faces.px(12)
        + faces.number().line()
        + lines * faces.plain().line()
        + faces.px(4);
  }

  private List<String> words(Faces faces, double width) {
    return Lines.wrap(content.axis().words(), faces.plain(), width, 2);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    double label = labelWidth(faces, width);
    Scale scale = scale(label + 10, width - 10);
    double axis = axisLine(faces);
    content
        .pooled()
        .ifPresent(
            pooled -> {
              double left = scale.clampedAt(pooled.interval().low());
              double right = scale.clampedAt(pooled.interval().high());
              surface.rectangle(new Box(left, 0, right - left, axis), Ink.NOISE);
              double x = AxisPart.crisp(scale.at(pooled.sd()));
              surface.line(x, 0, x, axis, new Pen(Ink.INK, 1, Dash.GUIDE));
            });
    double y = row(faces) / 2;
    for (Entry entry : content.sessions()) {
      drawEntry(surface, faces, scale, entry, y, 2);
      surface.text(
          Lines.cut(entry.label(), faces.plain(), label),
          0,
          y + 0.35 * faces.plain().size(),
          Anchor.START,
          faces.plain(),
          Ink.SECOND);
      y += row(faces);
    }
    if (content.pooled().isPresent()) {
      Entry pooled = content.pooled().get();
      drawEntry(surface, faces, scale, pooled, y, 5);
      String words = Lines.cut(pooled.label(), faces.strong(), label);
      double baseline = y + 0.35 * faces.plain().size();
      surface.text(words, 0, baseline, Anchor.START, faces.strong(), Ink.INK);
    }
    AxisPart.across(surface, scale, content.axis(), axis, faces);
    drawWords(surface, faces, width, axis);
  }

  private void drawEntry(
      Surface surface, Faces faces, Scale scale, Entry entry, double y, double thick) {
    Arrows.interval(surface, scale, entry.interval(), y, thick);
    surface.disc(scale.at(entry.sd()), y, (thick > 2 ? 1.2 : 0.95) * faces.mark(), Ink.INK);
  }

  private void drawWords(Surface surface, Faces faces, double width, double axis) {
    Face face = faces.plain();
    double first = axis + faces.px(12) + faces.number().line() + face.ascent();
    List<String> lines = words(faces, width);
    for (int i = 0; i < lines.size(); i++) {
      double baseline = first + i * face.line();
      surface.text(lines.get(i), width - 2, baseline, Anchor.END, face, Ink.SECOND);
    }
  }

  private double labelWidth(Faces faces, double width) {
    double widest =
        content.sessions().stream()
            .mapToDouble(entry -> faces.plain().room(entry.label()))
            .max()
            .orElse(0);
    double pooled = content.pooled().map(entry -> faces.strong().room(entry.label())).orElse(0.0);
    return Math.min(0.4 * width, Math.max(widest, pooled) + 6);
  }

  private Scale scale(double from, double to) {
    double largest = content.sessions().stream().mapToDouble(Entry::sd).max().orElse(0);
    double low = largest;
    double high = largest;
    for (Entry entry : content.sessions()) {
      low = Math.min(low, Math.min(entry.sd(), entry.interval().low()));
      double end = entry.interval().high();
      high = Math.max(high, Math.min(end, FARTHEST * largest));
    }
    return Scale.around(Math.max(0, low), high, 0.06, from, to);
  }
}
