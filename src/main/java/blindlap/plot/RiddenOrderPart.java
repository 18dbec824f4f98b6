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
   * @param range lowest and highest value that counts
   * @param numbersEnd right edge of the numbers of the upright axis
   * @param right right end of the axis
   * @param axis line of the axis
   * @param beyondTop line of the voids above the axis
   * @param beyondBottom line of the voids below the axis or without a value
   * @param staggers in how many rows the labels of the stints take turns
   * @param width whole width
   * @param height whole height
   */
  record Layout(
      Faces faces,
      Scale across,
      Scale up,
      double[] range,
      double numbersEnd,
      double right,
      double axis,
      double beyondTop,
      double beyondBottom,
      int staggers,
      double width,
      double height) {

    static Layout of(RiddenOrder.Content content, double width, double textScale) {
      Faces faces = new Faces(textScale);
      double[] range = range(content);
      double strip = 2 * faces.mark() + faces.px(14);
      double above = content.stints().stream().anyMatch(s -> side(s, range) > 0) ? strip : 0;
      double under = content.stints().stream().anyMatch(s -> side(s, range) < 0) ? strip : 0;
      double axis = UPPER + 190 * Math.sqrt(textScale) + faces.number().ascent() + above + under;
      double upTop = UPPER + faces.mark() + above;
      Scale up = Scale.around(range[0], range[1], 0.07, axis - faces.mark() - under, upTop);
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
          faces,
          across,
          up,
          range,
          numbers,
          right,
          axis,
          UPPER + strip / 2,
          axis - strip / 2 - 2,
          staggers,
          width,
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
      double both = faces.plain().room(content.across()) + faces.plain().room(content.drift()) + 90;
      return content.drift().isEmpty() || both <= width
          ? 1
          : 1 + driftLines(content, faces, width).size();
    }

    static List<String> driftLines(RiddenOrder.Content content, Faces faces, double width) {
      return Lines.wrap(content.drift(), faces.plain(), width, 3);
    }

    // Voids do not stretch the axis: a lap of a crash would flatten all others.
    private static double[] range(RiddenOrder.Content content) {
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
      double low =
          DoubleStream.concat(DoubleStream.of(all), DoubleStream.of(fitted)).min().orElse(0);
      double high =
          DoubleStream.concat(DoubleStream.of(all), DoubleStream.of(fitted)).max().orElse(0);
      return new double[] {low, high};
    }

    /** 1 for a void above the range of the others, -1 for one below or without a value, else 0. */
    static int side(RiddenOrder.Stint stint, double[] range) {
      if (stint.standing() != RiddenOrder.Standing.VOID) {
        return 0;
      }
      if (stint.value().isEmpty()) {
        return -1;
      }
      double value = stint.value().getAsDouble();
      return value > range[1] ? 1 : value < range[0] ? -1 : 0;
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
    takeLine(xs, ys);
  }

  private void takeLine(double[] xs, double[] ys) {
    for (int i = 1; i < xs.length; i++) {
      int steps = (int) Math.ceil((xs[i] - xs[i - 1]) / 8);
      for (int step = 0; step < steps; step++) {
        double share = step / (double) steps;
        double x = xs[i - 1] + share * (xs[i] - xs[i - 1]);
        places.take(Box.around(x, ys[i - 1] + share * (ys[i] - ys[i - 1]), 2));
      }
    }
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
    List<List<String>> names = new ArrayList<>();
    for (RiddenOrder.FittedLine line : lines) {
      List<String> name = Lines.wrap(line.name(), face, room, 2);
      double half = name.size() * face.line() / 2;
      double y = Math.max(extended(line.points(), at.right), lowest + half);
      names.add(name);
      ends.add(y);
      lowest = y + half;
    }
    double push = Math.max(0, lowest - at.axis);
    for (int i = 0; i < lines.size(); i++) {
      RiddenOrder.FittedLine line = lines.get(i);
      List<String> name = names.get(i);
      double first = ends.get(i) - push + 0.35 * face.size() - (name.size() - 1) * face.line() / 2;
      for (int row = 0; row < name.size(); row++) {
        double baseline = first + row * face.line();
        double x = at.right + faces.px(8);
        surface.text(name.get(row), x, baseline, Anchor.START, face, line.setup().ink());
      }
    }
  }

  private double x(RiddenOrder.Stint stint) {
    return at.across.at(stint.number());
  }

  // A value off the axis, or none at all, stands at the edge.
  private double y(RiddenOrder.Stint stint) {
    return switch (Layout.side(stint, at.range)) {
      case 1 -> at.beyondTop;
      case -1 -> at.beyondBottom;
      default -> at.up.at(stint.value().orElse(at.up.low()));
    };
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
    if (stint.value().isEmpty() || Layout.side(stint, at.range) == 0) {
      return;
    }
    double up = -Layout.side(stint, at.range);
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
    List<String> narrow = Lines.wrap(stint.reason(), face, faces.px(100), 3);
    List<Places.Spot> spots =
        new ArrayList<>(Places.Spot.round(lines, x(stint), y(stint), away, face));
    spots.addAll(Places.Spot.round(narrow, x(stint), y(stint), away, face));
    spots.addAll(Places.Spot.nearThenFar(lines, x(stint), y(stint), away, face));
    Places.Spot spot = places.choose(spots);
    Places.lead(surface, spot, x(stint), y(stint), away);
    spot.draw(surface, Ink.INK);
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
