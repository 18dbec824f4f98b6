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

/**
 * Rider noise day by day from left to right, oldest first, upright from zero: a rider who learns a
 * trail draws a falling line. The band is all days together.
 */
public final class NoiseOverDays implements Drawing {
  /**
   * The noise of a day.
   *
   * @param label such as "12 Sep"
   * @param sort sort of day in a word or two
   * @param blinded true for a day whose rider did not know what was fitted: a filled mark
   * @param sd standard deviation
   * @param interval its interval
   */
  public record Day(String label, String sort, boolean blinded, double sd, Limits interval) {
    /** Checks the value. */
    public Day {
      if (!(sd >= 0) || !Double.isFinite(sd)) {
        throw new IllegalArgumentException("Noise of " + label + " cannot be " + sd);
      }
    }
  }

  /**
   * All days together.
   *
   * @param sd standard deviation
   * @param interval its interval
   * @param words what stands beside it, a line each
   */
  public record Pooled(double sd, Limits interval, List<String> words) {
    /** Copies the words. */
    public Pooled {
      words = List.copyOf(words);
    }
  }

  /**
   * Everything that is drawn.
   *
   * @param days oldest first, 1 or more
   * @param pooled all together; empty while there is nothing to pool
   * @param axis axis of the noise
   * @param spoken the picture in words
   */
  public record Content(List<Day> days, Optional<Pooled> pooled, Axis axis, Spoken spoken) {
    /** Copies the list. */
    public Content {
      days = List.copyOf(days);
    }
  }

  // An upper limit farther out than this many times the largest value ends in an arrow.
  private static final double FARTHEST = 2.2;
  private static final double HEIGHT = 220;

  private final Content content;

  private NoiseOverDays(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no day
   */
  public static NoiseOverDays of(Content content) {
    if (content.days().isEmpty()) {
      throw new IllegalArgumentException("No day has a noise to draw");
    }
    return new NoiseOverDays(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  private static double top(Faces faces) {
    return faces.plain().line() + faces.px(10);
  }

  private static double axisLine(Faces faces) {
    return top(faces) + HEIGHT * Math.sqrt(faces.scale());
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    return axisLine(faces) + faces.px(8) + 2 * faces.plain().line() + faces.px(4);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    Scale scale = scale(faces);
    double numbers = AxisPart.uprightRoom(scale, content.axis(), faces);
    double left = numbers + 8;
    double right = width - besideRoom(faces, width);
    content.pooled().ifPresent(pooled -> band(surface, scale, left, right, pooled));
    AxisPart.upright(surface, scale, content.axis(), numbers, right, faces);
    double floor = AxisPart.crisp(axisLine(faces));
    surface.line(left, floor, right, floor, Pen.of(Ink.INK, 1.2));
    content.pooled().ifPresent(pooled -> words(surface, faces, scale, right, width, pooled));
    surface.text(
        Lines.cut(content.axis().words(), faces.plain(), width),
        0,
        faces.plain().ascent(),
        Anchor.START,
        faces.plain(),
        Ink.SECOND);
    days(surface, faces, scale, left, right);
  }

  private double besideRoom(Faces faces, double width) {
    return content
        .pooled()
        .map(p -> Math.min(0.3 * width, Lines.widest(p.words(), faces.strong()) + faces.px(14)))
        .orElse(faces.px(8));
  }

  private static void band(Surface surface, Scale scale, double left, double right, Pooled pooled) {
    double upper = scale.clampedAt(pooled.interval().high());
    double lower = scale.clampedAt(pooled.interval().low());
    surface.rectangle(new Box(left, upper, right - left, lower - upper), Ink.NOISE);
    double y = AxisPart.crisp(scale.at(pooled.sd()));
    surface.line(left, y, right, y, new Pen(Ink.INK, 1, Dash.GUIDE));
  }

  private void words(
      Surface surface, Faces faces, Scale scale, double right, double width, Pooled pooled) {
    Face face = faces.strong();
    double middle = scale.at(pooled.sd());
    double height = pooled.words().size() * face.line();
    double first =
        Math.max(
            top(faces) + face.ascent(),
            Math.min(middle - height / 2 + face.ascent(), axisLine(faces) - height));
    for (int i = 0; i < pooled.words().size(); i++) {
      String words = Lines.cut(pooled.words().get(i), face, width - right - faces.px(10));
      surface.text(
          words, right + faces.px(10), first + i * face.line(), Anchor.START, face, Ink.INK);
    }
  }

  private void days(Surface surface, Faces faces, Scale scale, double left, double right) {
    int n = content.days().size();
    double[] xs = new double[n];
    double[] ys = new double[n];
    for (int i = 0; i < n; i++) {
      xs[i] = left + (right - left) * (i + 0.5) / n;
      ys[i] = scale.at(content.days().get(i).sd());
    }
    if (n > 1) {
      surface.polyline(xs, ys, Pen.of(Ink.SECOND, 1.2));
    }
    for (int i = 0; i < n; i++) {
      Day day = content.days().get(i);
      interval(surface, scale, day, xs[i]);
      double radius = Math.max(2.5, Math.min(faces.mark(), 0.4 * (right - left) / n));
      surface.disc(xs[i], ys[i], radius, Ink.INK);
      if (!day.blinded()) {
        surface.disc(xs[i], ys[i], radius - Math.min(2, 0.4 * radius), Ink.PAPER);
      }
    }
    labels(surface, faces, xs, left, right + faces.px(8));
  }

  private static void interval(Surface surface, Scale scale, Day day, double x) {
    double high = scale.clampedAt(day.interval().high());
    double low = scale.clampedAt(day.interval().low());
    surface.line(x, low, x, high, Pen.of(Ink.INK, 2));
    if (!scale.holds(day.interval().high())) {
      surface.polygon(
          new double[] {x, x - 5, x + 5}, new double[] {high, high + 7, high + 7}, Ink.INK);
    }
  }

  // Where days are many, every second, third … is named, and always the latest.
  private void labels(Surface surface, Faces faces, double[] xs, double left, double most) {
    Face face = faces.number();
    double widest =
        content.days().stream()
            .mapToDouble(day -> Math.max(face.room(day.label()), face.room(day.sort())))
            .max()
            .orElse(0);
    int n = xs.length;
    double apart = n > 1 ? xs[1] - xs[0] : most - left;
    int step = (int) Math.max(1, Math.ceil((widest + faces.px(5)) / apart));
    double baseline = axisLine(faces) + faces.px(6) + face.ascent();
    for (int i = n - 1; i >= 0; i -= step) {
      Day day = content.days().get(i);
      double half = Math.max(face.room(day.label()), face.room(day.sort())) / 2;
      double middle = Math.min(Math.max(xs[i], left + half - 4), most - half);
      if (i == n - 1 || middle + half < Math.min(xs[i + step], most - half) - half) {
        surface.text(day.label(), middle, baseline, Anchor.MIDDLE, face, Ink.INK);
        surface.text(day.sort(), middle, baseline + face.line(), Anchor.MIDDLE, face, Ink.SECOND);
      }
    }
  }

  private Scale scale(Faces faces) {
    double largest = content.days().stream().mapToDouble(Day::sd).max().orElse(0);
    double high = content.pooled().map(Pooled::sd).orElse(largest);
    for (Day day : content.days()) {
      high = Math.max(high, Math.min(day.interval().high(), FARTHEST * largest));
    }
    double most = Math.max(high, largest);
    return new Scale(0, most > 0 ? 1.04 * most : 1, axisLine(faces), top(faces));
  }
}
