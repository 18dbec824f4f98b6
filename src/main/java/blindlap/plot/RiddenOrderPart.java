package blindlap.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;

/** Draws {@link RiddenOrder}. */
final class RiddenOrderPart {
  private static final double UPPER = 8;

  private final Surface surface;
  private final RiddenOrder.Content content;
  private final Layout at;
  private final Faces faces;
  private final Places places;

  RiddenOrderPart(Surface surface, RiddenOrder.Content content, Layout layout) {
    this.surface = surface;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces();
    places =
        new Places(
            new Box(layout.across.from(), 0, layout.right - layout.across.from(), layout.axis));
  }

  /**
   * Where things stand.
   *
   * @param faces type
   * @param across stint numbers to pixels
   * @param up values to pixels
   * @param numbersEnd right edge of the numbers of the upright axis
   * @param right right end of the axis
   * @param axis line of the axis
   * @param staggers in how many rows the labels of the stints take turns
   * @param width whole width
   * @param height whole height
   */
  record Layout(
      Faces faces,
      Scale across,
      Scale up,
      double numbersEnd,
      double right,
      double axis,
      int staggers,
      double width,
      double height) {

    static Layout of(RiddenOrder.Content content, double width, double textScale) {
      Faces faces = new Faces(textScale);
      double axis = UPPER + 190 * Math.sqrt(textScale) + faces.number().ascent();
      Scale up = up(content, axis - faces.mark(), UPPER + faces.mark());
      double numbers = AxisPart.uprightRoom(up, content.values(), faces);
      double names =
          Math.min(
              0.24 * width,
              content.lines().stream()
                  .mapToDouble(line -> faces.strong().room(line.name()) + faces.px(10))
                  .max()
                  .orElse(0));
      double left = numbers + 8;
      double right = width - names - 2;
      int last = content.stints().get(content.stints().size() - 1).number();
      Scale across = new Scale(0.5, last + 0.5, left + 4, right);
      int staggers = staggers(content, faces, across);
      int rows = content.stints().stream().anyMatch(stint -> !stint.code().isEmpty()) ? 2 : 1;
      double labels = rows * staggers * faces.number().line() + faces.px(6);
      double words = wordLines(content, faces, width) * faces.plain().line();
      return new Layout(
          faces, across, up, numbers, right, axis, staggers, width,
          axis + labels + words + faces.px(6));
    }

    private static int staggers(RiddenOrder.Content content, Faces faces, Scale across) {
      double widest =
          content.stints().stream()
              .mapToDouble(
                  s ->
                      Math.max(
                          faces.number().room(Integer.toString(s.number())),
                          new Face(Weight.SEMIBOLD, faces.number().size()).room(s.code())))
              .max()
              .orElse(0);
      double needed = widest + 0.3 * faces.number().size();
      return (int) Math.max(1, Math.ceil(needed / across.pixelsPerUnit()));
    }

    /** One line when both notes fit side by side, else one each. */
    static int wordLines(RiddenOrder.Content content, Faces faces, double width) {
      double both =
          faces.plain().room(content.across()) + faces.plain().room(content.drift()) + 90;
      return content.drift().isEmpty() || both <= width ? 1 : 1 + driftLines(content, faces, width).size();
    }

    static List<String> driftLines(RiddenOrder.Content content, Faces faces, double width) {
      return Lines.wrap(content.drift(), faces.plain(), width, 3);
    }

    // Voids do not stretch the axis: a lap of a crash would flatten all others.
    private static Scale up(RiddenOrder.Content content, double bottom, double top) {
      double[] kept =
          content.stints().stream()
              .filter(stint -> stint.standing() != RiddenOrder.Standing.VOID)
              .flatMapToDouble(stint -> stint.value().stream())
              .toArray();
      double[] all =
          kept.length > 0
              ? kept
              : content.stints().stream().flatMapToDouble(s -> s.value().stream()).toArray();
      double[] fitted =
          content.lines().stream()
              .flatMap(line -> line.points().stream())
              .mapToDouble(RiddenOrder.Fitted::value)
              .toArray();
      double low = DoubleStream.concat(DoubleStream.of(all), DoubleStream.of(fitted)).min().orElse(0);
      double high = DoubleStream.concat(DoubleStream.of(all), DoubleStream.of(fitted)).max().orElse(0);
      return Scale.around(low, high, 0.07, bottom, top);
    }
  }

  void draw() {
    AxisPart.upright(surface, at.up, content.values(), at.numbersEnd, at.right, faces);
    for (int end : content.blockEnds()) {
      double x = AxisPart.crisp(at.across.at(end + 0.5));
      surface.line(x, UPPER, x, at.axis, Pen.of(Ink.RULE, 1));
    }
    double line = AxisPart.crisp(at.axis);
    surface.line(at.across.from() - 4, line, at.right, line, Pen.of(Ink.INK, 1.2));
    content.lines().forEach(this::drawLine);
    content.stints().forEach(this::takePlace);
    content.stints().forEach(this::drawMark);
    content.stints().forEach(this::drawReason);
    drawNames();
    content.stints().forEach(this::drawLabels);
    drawWords();
  }

  private void drawLine(RiddenOrder.FittedLine line) {
    int count = line.points().size();
    double[] xs = new double[count];
    double[] ys = new double[count];
    for (int i = 0; i < count; i++) {
      xs[i] = at.across.at(line.points().get(i).number());
      ys[i] = at.up.at(line.points().get(i).value());
    }
    // To the edge of the plot, where the name stands.
    xs[count - 1] = at.right;
    ys[count - 1] = extended(line.points(), at.right);
    surface.polyline(xs, ys, new Pen(line.setup().ink(), 1.8, line.setup().dash()));
  }

  private double extended(List<RiddenOrder.Fitted> points, double x) {
    RiddenOrder.Fitted last = points.get(points.size() - 1);
    RiddenOrder.Fitted before = points.get(points.size() - 2);
    double slope =
        (at.up.at(last.value()) - at.up.at(before.value()))
            / (at.across.at(last.number()) - at.across.at(before.number()));
    double y = at.up.at(last.value()) + slope * (x - at.across.at(last.number()));
    return Math.max(UPPER, Math.min(at.axis, y));
  }

  private void drawNames() {
    List<RiddenOrder.FittedLine> lines = new ArrayList<>(content.lines());
    lines.sort(Comparator.comparingDouble(line -> extended(line.points(), at.right)));
    Face face = faces.strong();
    double room = at.width - at.right - faces.px(8);
    double lowest = UPPER;
    List<Double> ends = new ArrayList<>();
    for (RiddenOrder.FittedLine line : lines) {
      double y = Math.max(extended(line.points(), at.right), lowest + face.line() / 2);
      ends.add(y);
      lowest = y + face.line() / 2;
    }
    double push = Math.max(0, lowest - at.axis);
    for (int i = 0; i < lines.size(); i++) {
      RiddenOrder.FittedLine line = lines.get(i);
      String name = Lines.cut(line.name(), face, room);
      double baseline = ends.get(i) - push + 0.35 * face.size();
      surface.text(
          name, at.right + faces.px(8), baseline, Anchor.START, face, line.setup().ink());
    }
  }

  private double x(RiddenOrder.Stint stint) {
    return at.across.at(stint.number());
  }

  // A value off the axis, or none at all, stands at the edge.
  private double y(RiddenOrder.Stint stint) {
    return stint.value().isPresent()
        ? at.up.clampedAt(stint.value().getAsDouble())
        : at.axis - faces.mark() - 3;
  }

  private void takePlace(RiddenOrder.Stint stint) {
    places.take(Box.around(x(stint), y(stint), faces.mark() + 2));
  }

  private void drawMark(RiddenOrder.Stint stint) {
    double x = x(stint);
    double y = y(stint);
    if (stint.standing() == RiddenOrder.Standing.VOID) {
      surface.disc(x, y, faces.mark() + 1, Ink.PAPER);
      surface.ring(x, y, faces.mark(), Pen.of(Ink.SECOND, 1.6));
      drawOffAxis(stint, x, y);
      return;
    }
    if (stint.value().isEmpty()) {
      return;
    }
    if (stint.setup().isPresent()) {
      stint.setup().get().draw(surface, x, y, faces.mark());
    } else {
      surface.disc(x, y, faces.mark(), Ink.INK);
    }
    if (stint.standing() == RiddenOrder.Standing.KEPT_IN_QUESTION) {
      surface.ring(x, y, 1.9 * faces.mark(), Pen.of(Ink.INK, 1.2));
    }
  }

  private void drawOffAxis(RiddenOrder.Stint stint, double x, double y) {
    if (stint.value().isEmpty() || at.up.holds(stint.value().getAsDouble())) {
      return;
    }
    double up = stint.value().getAsDouble() > at.up.high() ? -1 : 1;
    double r = 0.55 * faces.mark();
    surface.polyline(
        new double[] {x - r, x, x + r},
        new double[] {y + up * -0.2 * r, y + up * r, y + up * -0.2 * r},
        Pen.of(Ink.SECOND, 1.4));
  }

  private void drawReason(RiddenOrder.Stint stint) {
    if (stint.reason().isEmpty()) {
      return;
    }
    Face face = faces.plain();
    List<String> lines = Lines.wrap(stint.reason(), face, faces.px(170), 2);
    double away = 1.9 * faces.mark() + 4;
    places
        .choose(Places.Spot.round(lines, x(stint), y(stint), away, face))
        .draw(surface, Ink.INK);
  }

  private void drawLabels(RiddenOrder.Stint stint) {
    int turn = (stint.number() - 1) % at.staggers;
    Face face = faces.number();
    double first = at.axis + faces.px(5) + face.ascent() + turn * face.line();
    Ink ink = stint.standing() == RiddenOrder.Standing.VOID ? Ink.SECOND : Ink.INK;
    surface.text(
        Integer.toString(stint.number()), x(stint), first, Anchor.MIDDLE, face, Ink.SECOND);
    if (!stint.code().isEmpty()) {
      Face code = new Face(Weight.SEMIBOLD, face.size());
      double baseline = first + at.staggers * face.line();
      surface.text(stint.code(), x(stint), baseline, Anchor.MIDDLE, code, ink);
    }
  }

  private void drawWords() {
    Face face = faces.plain();
    int lines = Layout.wordLines(content, faces, at.width);
    double last = at.height - faces.px(6) - face.descent();
    double first = last - (lines - 1) * face.line();
    double left = lines == 1 ? at.across.from() : 0;
    String across = Lines.cut(content.across(), face, at.width - left);
    surface.text(across, left, first, Anchor.START, face, Ink.SECOND);
    if (lines == 1) {
      surface.text(content.drift(), at.right, first, Anchor.END, face, Ink.SECOND);
      return;
    }
    List<String> drift = Layout.driftLines(content, faces, at.width);
    for (int i = 0; i < drift.size(); i++) {
      double baseline = first + (i + 1) * face.line();
      surface.text(drift.get(i), 0, baseline, Anchor.START, face, Ink.SECOND);
    }
  }
}
