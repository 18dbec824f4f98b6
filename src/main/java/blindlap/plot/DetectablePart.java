package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Highlight;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Places;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.ArrayList;
import java.util.List;

/** Draws {@link DetectableCurve}. */
final class DetectablePart {
  private final Surface surface;
  private final DetectableContent content;
  private final Layout at;
  private final Faces faces;
  private final Places places;

  DetectablePart(Surface surface, DetectableContent content, Layout layout) {
    this.surface = surface;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces();
    double left = layout.across.from() - layout.half;
    places = new Places(new Box(left, layout.top, layout.right - left, layout.axis - layout.top));
  }

  /**
   * Where things stand.
   *
   * @param faces type
   * @param across stints to pixels
   * @param up differences to pixels
   * @param half half the distance of the closest dots
   * @param top upper edge of the plot, under the words of the day
   * @param axis line of the axis
   * @param right right end of the axis
   * @param staggers in how many rows the numbers take turns
   * @param height whole height
   */
  record Layout(
      Faces faces,
      Scale across,
      Scale up,
      double numbersEnd,
      double half,
      double top,
      double axis,
      double right,
      int staggers,
      double height) {

    static Layout of(DetectableContent content, double width, double textScale) {
      Faces faces = new Faces(textScale);
      double words = content.within().isEmpty() && content.beyond().isEmpty() ? 0 : 2;
      double wide = faces.plain().room(content.within() + content.beyond());
      double lines = words == 2 && wide < 0.4 * width ? 1 : words;
      double top = lines * faces.plain().line() + faces.px(6);
      double axis = top + 200 * Math.pow(textScale, 0.75);
      double highest =
          content.dots().stream()
              .flatMapToDouble(
                  d -> d.high().isPresent() ? d.high().stream() : d.difference().stream())
              .max()
              .orElse(content.worthwhile());
      double most = Math.max(highest, 1.3 * content.worthwhile());
      Scale up = new Scale(0, 1.12 * most, axis, top);
      double numbers = AxisPart.uprightRoom(up, content.upright(), faces);
      int first = content.dots().get(0).stints();
      int last = content.dots().get(content.dots().size() - 1).stints();
      double left = numbers + 8;
      double closest = closest(content);
      double share = (width - 2 - left) / (last - first + closest);
      double half = share * closest / 2;
      Scale across = new Scale(first, Math.max(last, first + 1), left + half, width - 2 - half);
      double widest = faces.number().room(Integer.toString(last)) + faces.px(6);
      int staggers = (int) Math.max(1, Math.ceil(widest / (2 * half)));
      double under = staggers * faces.number().line() + faces.plain().line() + faces.px(14);
      return new Layout(
          faces, across, up, numbers, half, top, axis, width - 2, staggers, axis + under);
    }

    private static double closest(DetectableContent content) {
      double closest = content.dots().size() == 1 ? 1 : Double.POSITIVE_INFINITY;
      for (int i = 1; i < content.dots().size(); i++) {
        int step = content.dots().get(i).stints() - content.dots().get(i - 1).stints();
        closest = Math.min(closest, step);
      }
      return closest;
    }
  }

  void draw() {
    AxisPart.upright(surface, at.up, content.upright(), at.numbersEnd, at.right, faces);
    content.dots().stream().filter(d -> d.difference().isEmpty()).forEach(this::drawImpossible);
    drawBorder();
    double line = AxisPart.crisp(at.axis);
    surface.line(at.across.from() - at.half, line, at.right, line, Pen.of(Ink.INK, 1.2));
    double worthwhile = AxisPart.crisp(at.up.at(content.worthwhile()));
    surface.line(at.across.from() - at.half, worthwhile, at.right, worthwhile, Pen.of(Ink.INK, 3));
    places.take(
        new Box(at.across.from() - at.half, worthwhile - 3, at.right - at.across.from(), 6));
    drawPath();
    possible().forEach(this::drawDot);
    drawWords(worthwhile);
    drawNumbers();
  }

  private List<DetectableContent.Dot> possible() {
    return content.dots().stream().filter(dot -> dot.difference().isPresent()).toList();
  }

  private double x(DetectableContent.Dot dot) {
    return at.across.at(dot.stints());
  }

  private double y(DetectableContent.Dot dot) {
    return at.up.at(dot.difference().orElseThrow());
  }

  private boolean chosen(DetectableContent.Dot dot) {
    return content.chosen().isPresent() && content.chosen().getAsInt() == dot.stints();
  }

  private void drawImpossible(DetectableContent.Dot dot) {
    double left = x(dot) - at.half;
    Box box = new Box(left, at.top, 2 * at.half, at.axis - at.top);
    surface.hatch(box);
  }

  // In the hatched column where it is wide enough, else from its left edge on, where there is room.
  private void drawImpossibleWords(DetectableContent.Dot dot) {
    Face face = faces.plain();
    double column = 2 * at.half - 8;
    List<Places.Spot> spots = new ArrayList<>();
    List<String> inside = Lines.wrap(dot.words(), face, column, 4);
    if (inside.stream().noneMatch(line -> line.endsWith("…"))) {
      double first = at.top + faces.px(8) + face.ascent();
      spots.add(new Places.Spot(inside, x(dot), first, Anchor.MIDDLE, face));
    }
    for (int lines = 1; lines <= 2; lines++) {
      List<String> words = Lines.wrap(dot.words(), face, lines == 1 ? at.right : faces.px(95), 3);
      double last = at.axis - faces.px(6) - face.descent();
      for (int row = 0; row < 12; row++) {
        double first = last - (words.size() - 1 + row) * face.line();
        spots.add(new Places.Spot(words, x(dot) - at.half + 4, first, Anchor.START, face));
      }
    }
    places.choose(spots).draw(surface, Ink.INK);
  }

  // The border of the day stands between the last number that fits and the first that does not.
  private void drawBorder() {
    for (int i = 1; i < content.dots().size(); i++) {
      DetectableContent.Dot before = content.dots().get(i - 1);
      DetectableContent.Dot dot = content.dots().get(i);
      if (before.fit() == DetectableContent.Fit.FITS
          && dot.fit() == DetectableContent.Fit.NEEDS_MORE) {
        double x = AxisPart.crisp((x(before) + x(dot)) / 2);
        surface.line(x, 2, x, at.axis, new Pen(Ink.INK, 1, Dash.GUIDE));
        // Words may cross the border below the worthwhile line, where it says nothing any more.
        places.take(new Box(x - 1, at.top, 2, at.up.at(content.worthwhile()) - at.top));
        double left = at.across.from() - at.half;
        borderWords(content.within(), x - faces.px(8), Anchor.END, x - faces.px(8) - left);
        borderWords(content.beyond(), x + faces.px(8), Anchor.START, at.right - x - faces.px(8));
      }
    }
  }

  private void borderWords(String words, double x, Anchor anchor, double room) {
    Face face = faces.plain();
    List<String> lines = Lines.wrap(words, face, Math.max(room, faces.px(20)), 2);
    for (int i = 0; i < lines.size(); i++) {
      double baseline = face.ascent() + 2 + i * face.line();
      surface.text(lines.get(i), x, baseline, anchor, face, Ink.INK);
    }
  }

  private void drawPath() {
    List<DetectableContent.Dot> dots = possible();
    double[] xs = dots.stream().mapToDouble(this::x).toArray();
    double[] ys = dots.stream().mapToDouble(this::y).toArray();
    if (xs.length > 1) {
      surface.polyline(xs, ys, Pen.of(Ink.SECOND, 1));
    }
    for (int i = 1; i < xs.length; i++) {
      for (int step = 0; step < 20; step++) {
        double share = step / 20.0;
        places.take(
            Box.around(
                xs[i - 1] + share * (xs[i] - xs[i - 1]),
                ys[i - 1] + share * (ys[i] - ys[i - 1]),
                1));
      }
    }
  }

  private void drawDot(DetectableContent.Dot dot) {
    double x = x(dot);
    double y = y(dot);
    if (dot.low().isPresent() && dot.high().isPresent()) {
      double low = at.up.clampedAt(dot.low().getAsDouble());
      double high = at.up.clampedAt(dot.high().getAsDouble());
      surface.line(x, low, x, high, Pen.of(Ink.SECOND, 1.2));
      places.takeMark(new Box(x - 1, high, 2, low - high));
    }
    double r = (chosen(dot) ? 1.6 : 0.9) * faces.mark();
    surface.disc(x, y, r, dot.fit() == DetectableContent.Fit.FITS ? Ink.INK : Ink.PAPER);
    surface.ring(x, y, r, Pen.of(Ink.INK, 1.6));
    places.takeMark(Box.around(x, y, r + 1));
  }

  private void drawWords(double worthwhile) {
    List<DetectableContent.Dot> dots = new ArrayList<>(possible());
    dots.stream().filter(this::chosen).forEach(this::drawChosen);
    drawWorthwhile(worthwhile);
    content.dots().stream()
        .filter(dot -> dot.difference().isEmpty())
        .forEach(this::drawImpossibleWords);
    for (DetectableContent.Dot dot : dots) {
      if (!chosen(dot)) {
        Face face = faces.plain();
        double away = faces.mark() + faces.px(5);
        List<String> words = List.of(dot.words());
        places.choose(Places.Spot.above(words, x(dot), y(dot), away, face)).draw(surface, Ink.INK);
      }
    }
  }

  private void drawChosen(DetectableContent.Dot dot) {
    Face face = faces.strong();
    double away = 1.6 * faces.mark() + faces.px(14);
    List<Places.Spot> spots =
        Places.Spot.nearThenFar(List.of(content.chosenWords()), x(dot), y(dot), away, face);
    double edge = faces.px(5);
    Places.Spot spot = places.choose(spots, edge, face.line());
    Places.lead(surface, spot, x(dot), y(dot), away + edge);
    Highlight.under(surface, spot.box().grown(edge));
    surface.text(
        spot.lines().get(0), spot.x(), spot.baseline(), spot.anchor(), face, Ink.ON_HIGHLIGHT);
  }

  private void drawWorthwhile(double y) {
    Face face = faces.strong();
    double room = at.right - at.across.from();
    List<String> words = List.of(Lines.cut(content.worthwhileWords(), face, room));
    double below = y + faces.px(6) + face.ascent();
    double above = y - faces.px(6) - face.descent();
    double left = at.across.from() + at.half + faces.px(6);
    List<Places.Spot> spots = new ArrayList<>();
    for (int row = 0; row < 3; row++) {
      for (double baseline : new double[] {below + row * face.line(), above - row * face.line()}) {
        spots.add(new Places.Spot(words, left, baseline, Anchor.START, face));
        spots.add(new Places.Spot(words, at.right - 4, baseline, Anchor.END, face));
      }
    }
    places.choose(spots).draw(surface, Ink.INK);
  }

  private void drawNumbers() {
    for (int i = 0; i < content.dots().size(); i++) {
      DetectableContent.Dot dot = content.dots().get(i);
      Face face = chosen(dot) ? new Face(Weight.BOLD, faces.number().size()) : faces.number();
      double baseline = at.axis + AxisPart.numberBaseline(faces) + i % at.staggers * face.line();
      Ink ink = chosen(dot) ? Ink.INK : Ink.SECOND;
      surface.text(Integer.toString(dot.stints()), x(dot), baseline, Anchor.MIDDLE, face, ink);
    }
    Face face = faces.plain();
    String words = Lines.cut(content.across(), face, at.right);
    double baseline = at.height - face.descent() - faces.px(2);
    surface.text(words, at.right, baseline, Anchor.END, face, Ink.SECOND);
  }
}
