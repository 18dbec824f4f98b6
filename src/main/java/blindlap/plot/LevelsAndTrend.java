package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Hatching;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Every stint over the level it was ridden at, and the trend from end to end as fans that turn
 * about the day's mean: grey its 90 % interval, thin lines its 95 %, hatched whatever is flatter
 * than what matters. A real trend's thin fan is clear of level, a worthwhile one's grey fan of the
 * hatching.
 */
public final class LevelsAndTrend implements Drawing {
  private static final double PLOT = 270;

  /** How far the fans reach beyond the end levels, as a share of the distance between them. */
  private static final double BEYOND = 0.07;

  private final TrendContent content;

  private LevelsAndTrend(TrendContent content) {
    this.content = content;
  }

  /** Makes the drawing. */
  public static LevelsAndTrend of(TrendContent content) {
    return new LevelsAndTrend(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  /** Where things stand: up the values, across the levels, the words beside or below. */
  private record At(
      Faces faces, Scale up, Scale across, double line, boolean beside, double words) {}

  private At at(double width, double textScale) {
    Faces faces = new Faces(textScale);
    double top = faces.px(8);
    double line = top + PLOT * Math.sqrt(textScale);
    Scale up = values(line - faces.px(6), top);
    double left = AxisPart.uprightRoom(up, content.values(), faces) + 10;
    double words = Lines.widest(said(), faces.strong()) + faces.px(8);
    boolean beside = width - left - words > 300;
    double right = width - (beside ? words + faces.px(10) : faces.px(16));
    double span = content.highest() - content.lowest();
    Scale across =
        new Scale(
            content.lowest() - BEYOND * span, content.highest() + BEYOND * span, left + 2, right);
    return new At(faces, up, across, line, beside, words);
  }

  private List<String> said() {
    List<String> all = new ArrayList<>(content.said());
    content.worthwhile().ifPresent(band -> all.addAll(band.words()));
    return all;
  }

  private Scale values(double from, double to) {
    double end = content.highest();
    DoubleStream lines =
        DoubleStream.of(content.trend(), content.worthwhile().map(Band::halfWidth).orElse(0.0))
            .flatMap(d -> DoubleStream.of(d, -d))
            .map(d -> content.line(d, end));
    DoubleStream stints = content.stints().stream().mapToDouble(TrendContent.Stint::value);
    double[] all = DoubleStream.concat(lines, stints).filter(Double::isFinite).toArray();
    double low = DoubleStream.of(all).min().orElse(content.middle());
    double high = DoubleStream.of(all).max().orElse(content.middle());
    return Scale.around(low, high, 0.1, from, to);
  }

  @Override
  public double heightFor(double width, double textScale) {
    At at = at(width, textScale);
    Faces faces = at.faces();
    double below =
        at.line() + faces.px(8) + faces.strong().line() + faces.plain().line() + faces.px(6);
    double words = said().size() * faces.strong().line();
    return at.beside() ? Math.max(below, words + faces.px(20)) : below + words + faces.px(8);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    At at = at(width, textScale);
    AxisPart.upright(
        surface, at.up(), content.values(), at.across().from() - 10, at.across().to(), at.faces());
    fan(surface, at, content.ninety());
    content.worthwhile().ifPresent(band -> wedge(surface, at, band));
    edge(surface, at, content.ninetyFive().low(), 1);
    edge(surface, at, content.ninetyFive().high(), 1);
    edge(surface, at, content.trend(), 2.6);
    means(surface, at);
    stints(surface, at);
    axis(surface, at, width);
    words(surface, at);
  }

  private void fan(Surface surface, At at, Limits limits) {
    for (double[][] half : halves(at, limits.low(), limits.high())) {
      surface.polygon(half[0], half[1], Ink.NOISE);
    }
  }

  private void wedge(Surface surface, At at, Band band) {
    for (double[][] half : halves(at, -band.halfWidth(), band.halfWidth())) {
      double[] ends = Hatching.lines(half[0], half[1]);
      if (ends.length > 0) {
        surface.segments(ends, Pen.of(Ink.HATCH, 1));
      }
    }
    edge(surface, at, -band.halfWidth(), 1.4);
    edge(surface, at, band.halfWidth(), 1.4);
  }

  /** The two triangles between two lines, cut at the edges of the picture. */
  private List<double[][]> halves(At at, double low, double high) {
    double middle = levelMean();
    List<double[][]> halves = new ArrayList<>();
    for (double end : new double[] {at.across().low(), at.across().high()}) {
      double[] xs = {at.across().at(middle), at.across().at(end), at.across().at(end)};
      double[] ys = {y(at, 0, middle), y(at, low, end), y(at, high, end)};
      double[][] cut = Cutting.between(xs, ys, at.up().to(), at.line());
      if (cut[0].length > 2) {
        halves.add(cut);
      }
    }
    return halves;
  }

  private double levelMean() {
    return content.levels().stream().mapToDouble(TrendContent.Level::value).average().orElseThrow();
  }

  /** An end without bound is drawn as one far outside of the picture. */
  private double y(At at, double difference, double level) {
    double most = 50 * (at.up().high() - at.up().low());
    return at.up().at(content.line(Math.max(-most, Math.min(most, difference)), level));
  }

  private void edge(Surface surface, At at, double difference, double width) {
    double[] xs = {at.across().from(), at.across().to()};
    double[] ys = {y(at, difference, at.across().low()), y(at, difference, at.across().high())};
    double[][] cut = Cutting.between(xs, ys, at.up().to(), at.line());
    if (cut[0].length > 1) {
      surface.polyline(
          new double[] {cut[0][0], cut[0][1]},
          new double[] {cut[1][0], cut[1][1]},
          Pen.of(Ink.INK, width));
    }
  }

  private void means(Surface surface, At at) {
    boolean said = false;
    double half = at.faces().px(22);
    for (TrendContent.Level level : content.levels()) {
      if (!Double.isFinite(level.mean())) {
        continue;
      }
      double x = at.across().at(level.value());
      double y = at.up().at(level.mean());
      surface.line(x - half, y, x + half, y, Pen.of(Ink.INK, 1.6));
      if (!said) {
        Face face = at.faces().number();
        double baseline = y + face.ascent() + 3;
        surface.backedText(content.mean(), x + half + 3, baseline, Anchor.START, face, Ink.SECOND);
        said = true;
      }
    }
  }

  private void stints(Surface surface, At at) {
    double radius = 0.9 * at.faces().mark();
    for (int level = 0; level < content.levels().size(); level++) {
      int here = level;
      List<Double> ys =
          content.stints().stream()
              .filter(stint -> stint.level() == here)
              .map(stint -> at.up().at(stint.value()))
              .toList();
      List<Integer> aside = blindlap.plot.surface.Stack.of(ys, 2 * radius + 1).levels();
      double x = at.across().at(content.levels().get(level).value());
      for (int i = 0; i < ys.size(); i++) {
        double dot = x + aside(aside.get(i)) * (2 * radius + 2);
        surface.disc(dot, ys.get(i), radius + 1.5, Ink.PAPER);
        surface.disc(dot, ys.get(i), radius, Ink.INK);
      }
    }
  }

  /** The line first, then right and left of it in turn. */
  private static int aside(int place) {
    return place % 2 == 1 ? (place + 1) / 2 : -place / 2;
  }

  private void axis(Surface surface, At at, double width) {
    Faces faces = at.faces();
    double y = AxisPart.crisp(at.line());
    surface.line(at.across().from(), y, at.across().to(), y, Pen.of(Ink.INK, 1.2));
    Face face = faces.strong();
    double baseline = y + faces.px(8) + face.ascent();
    double edge = Double.NEGATIVE_INFINITY;
    for (TrendContent.Level level : content.levels()) {
      double x = AxisPart.crisp(at.across().at(level.value()));
      surface.line(x, y, x, y + 6, Pen.of(Ink.INK, 1.2));
      double half = face.room(level.words()) / 2;
      if (x - half > edge) {
        surface.text(level.words(), x, baseline, Anchor.MIDDLE, face, Ink.INK);
        edge = x + half + face.size() / 2;
      }
    }
    Face plain = faces.number();
    surface.text(
        Lines.cut(content.axisWords(), plain, width - at.across().from() - 4),
        at.across().from(),
        baseline + faces.plain().line(),
        Anchor.START,
        plain,
        Ink.SECOND);
    upWord(surface, at);
  }

  /** In the upper corner that the trend leaves free. */
  private void upWord(Surface surface, At at) {
    Face face = at.faces().strong();
    double room = at.faces().px(16) + face.room(content.up());
    double x =
        content.trend() < 0 ? at.across().to() - room : at.across().from() + at.faces().px(6);
    double baseline = at.up().to() + face.ascent() + at.faces().px(8);
    double head = at.faces().px(4);
    double top = baseline - face.ascent() + 2;
    surface.line(x, baseline, x, top, Pen.of(Ink.INK, 1.2));
    surface.polyline(
        new double[] {x - head, x, x + head},
        new double[] {top + head, top, top + head},
        Pen.of(Ink.INK, 1.2));
    surface.backedText(content.up(), x + at.faces().px(10), baseline, Anchor.START, face, Ink.INK);
  }

  private void words(Surface surface, At at) {
    Faces faces = at.faces();
    double x = at.beside() ? at.across().to() + faces.px(10) : 0;
    double line = faces.strong().line();
    List<String> band = content.worthwhile().map(Band::words).orElse(List.of());
    double end = y(at, content.trend(), at.across().high());
    double other = at.up().at(content.line(0, at.across().high()));
    double trend = content.said().size() * line;
    double flat = band.size() * line;
    double first;
    double second;
    if (at.beside()) {
      // Each beside what it names; the two never run into each other.
      boolean above = end <= other;
      double room = at.line() - trend - flat - faces.px(12);
      first = Math.max(0, Math.min(end - trend / 2, above ? room : at.line() - trend));
      second = above ? Math.max(first + trend + faces.px(12), other - flat / 2) : 0;
      if (!above) {
        second = Math.max(0, Math.min(other - flat / 2, at.line() - trend - flat - faces.px(12)));
        first = Math.max(first, second + flat + faces.px(12));
      }
    } else {
      first = at.line() + faces.px(16) + line + faces.plain().line();
      second = first + trend;
    }
    for (int i = 0; i < content.said().size(); i++) {
      Face face = i < content.strong() ? faces.strong() : faces.plain();
      double baseline = first + face.ascent() + i * line;
      surface.text(content.said().get(i), x, baseline, Anchor.START, face, Ink.INK);
    }
    for (int i = 0; i < band.size(); i++) {
      double baseline = second + faces.plain().ascent() + i * line;
      surface.text(band.get(i), x, baseline, Anchor.START, faces.plain(), Ink.INK);
    }
  }
}
