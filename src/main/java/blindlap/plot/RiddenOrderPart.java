package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Places;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Draws {@link RiddenOrder}. */
final class RiddenOrderPart {
  private final Surface surface;
  private final RiddenContent content;
  private final RiddenLayout at;
  private final Faces faces;
  private final Places places;

  RiddenOrderPart(Surface surface, RiddenContent content, RiddenLayout layout) {
    this.surface = surface;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces();
    places =
        new Places(
            new Box(
                layout.across().from(), 0, layout.right() - layout.across().from(), layout.axis()));
  }

  void draw() {
    AxisPart.upright(surface, at.up(), content.values(), at.numbersEnd(), at.right(), faces);
    for (int end : content.blockEnds()) {
      double x = AxisPart.crisp(at.across().at(end + 0.5));
      surface.line(x, RiddenLayout.UPPER, x, at.axis(), Pen.of(Ink.RULE, 1));
    }
    content.lines().forEach(this::drawLine);
    content.stints().forEach(this::takePlace);
    content.stints().forEach(this::drawMark);
    content.stints().forEach(this::drawReason);
    double line = AxisPart.crisp(at.axis());
    surface.line(at.across().from() - 4, line, at.right(), line, Pen.of(Ink.INK, 1.2));
    drawNames();
    content.stints().forEach(this::drawLabels);
    drawWords();
  }

  private void drawLine(RiddenContent.FittedLine line) {
    int count = line.points().size();
    double[] xs = new double[count];
    double[] ys = new double[count];
    for (int i = 0; i < count; i++) {
      xs[i] = at.across().at(line.points().get(i).number());
      ys[i] = at.up().at(line.points().get(i).value());
    }
    // To the edge of the plot, where the name stands.
    xs[count - 1] = at.right();
    ys[count - 1] = extended(line.points(), at.right());
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

  private double extended(List<RiddenContent.Fitted> points, double x) {
    RiddenContent.Fitted last = points.get(points.size() - 1);
    RiddenContent.Fitted before = points.get(points.size() - 2);
    double slope =
        (at.up().at(last.value()) - at.up().at(before.value()))
            / (at.across().at(last.number()) - at.across().at(before.number()));
    double y = at.up().at(last.value()) + slope * (x - at.across().at(last.number()));
    return Math.max(RiddenLayout.UPPER, Math.min(at.axis(), y));
  }

  private void drawNames() {
    List<RiddenContent.FittedLine> lines = new ArrayList<>(content.lines());
    lines.sort(Comparator.comparingDouble(line -> extended(line.points(), at.right())));
    Face face = faces.strong();
    double room = at.width() - at.right() - faces.px(8);
    double lowest = RiddenLayout.UPPER;
    List<Double> ends = new ArrayList<>();
    List<List<String>> names = new ArrayList<>();
    for (RiddenContent.FittedLine line : lines) {
      List<String> name = Lines.wrap(line.name(), face, room, 2);
      double half = name.size() * face.line() / 2;
      double y = Math.max(extended(line.points(), at.right()), lowest + half);
      names.add(name);
      ends.add(y);
      lowest = y + half;
    }
    double push = Math.max(0, lowest - at.axis());
    for (int i = 0; i < lines.size(); i++) {
      RiddenContent.FittedLine line = lines.get(i);
      List<String> name = names.get(i);
      double first = ends.get(i) - push + 0.35 * face.size() - (name.size() - 1) * face.line() / 2;
      for (int row = 0; row < name.size(); row++) {
        double baseline = first + row * face.line();
        double x = at.right() + faces.px(8);
        surface.text(name.get(row), x, baseline, Anchor.START, face, line.setup().ink());
      }
    }
  }

  private double x(RiddenContent.Stint stint) {
    return at.across().at(stint.number());
  }

  // A value off the axis, or none at all, stands at the edge.
  private double y(RiddenContent.Stint stint) {
    RiddenLayout.Beyond beyond = at.beyond().get(stint.number());
    return beyond != null ? beyond.y() : at.up().at(stint.value().orElse(at.up().low()));
  }

  private void takePlace(RiddenContent.Stint stint) {
    places.take(Box.around(x(stint), y(stint), faces.mark() + 2));
  }

  private void drawMark(RiddenContent.Stint stint) {
    double x = x(stint);
    double y = y(stint);
    if (stint.standing() == RiddenContent.Standing.VOID) {
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
    if (stint.standing() == RiddenContent.Standing.KEPT_IN_QUESTION) {
      surface.ring(x, y, 1.9 * faces.mark(), Pen.of(Ink.INK, 1.2));
    }
  }

  private void drawOffAxis(RiddenContent.Stint stint, double x, double y) {
    if (stint.value().isEmpty() || RiddenLayout.side(stint, at.range()) == 0) {
      return;
    }
    double up = -RiddenLayout.side(stint, at.range());
    double r = 0.55 * faces.mark();
    surface.polyline(
        new double[] {x - r, x, x + r},
        new double[] {y + up * -0.2 * r, y + up * r, y + up * -0.2 * r},
        Pen.of(Ink.SECOND, 1.4));
  }

  private void drawReason(RiddenContent.Stint stint) {
    if (stint.reason().isEmpty()) {
      return;
    }
    Face face = faces.plain();
    RiddenLayout.Beyond beyond = at.beyond().get(stint.number());
    if (beyond != null) {
      drawBeyond(stint, beyond, face);
      return;
    }
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

  private void drawBeyond(RiddenContent.Stint stint, RiddenLayout.Beyond beyond, Face face) {
    double away = faces.mark() + faces.px(6);
    double x = x(stint) + (beyond.anchor() == Anchor.START ? away : -away);
    double first = beyond.y() + 0.35 * face.size() - (beyond.lines().size() - 1) * face.line() / 2;
    new Places.Spot(beyond.lines(), x, first, beyond.anchor(), face).draw(surface, Ink.INK);
  }

  private void drawLabels(RiddenContent.Stint stint) {
    int turn = (stint.number() - 1) % at.staggers();
    Face face = faces.number();
    double first = at.axis() + faces.px(5) + face.ascent() + turn * face.line();
    Ink ink = stint.standing() == RiddenContent.Standing.VOID ? Ink.SECOND : Ink.INK;
    surface.text(
        Integer.toString(stint.number()), x(stint), first, Anchor.MIDDLE, face, Ink.SECOND);
    if (!stint.code().isEmpty()) {
      Face code = new Face(Weight.SEMIBOLD, face.size());
      double baseline = first + at.staggers() * face.line();
      surface.text(stint.code(), x(stint), baseline, Anchor.MIDDLE, code, ink);
    }
  }

  private void drawWords() {
    Face face = faces.plain();
    int lines = RiddenLayout.wordLines(content, faces, at.width());
    double last = at.height() - faces.px(6) - face.descent();
    double first = last - (lines - 1) * face.line();
    double left = lines == 1 ? at.across().from() : 0;
    String across = Lines.cut(content.across(), face, at.width() - left);
    surface.text(across, left, first, Anchor.START, face, Ink.SECOND);
    if (lines == 1) {
      surface.text(content.drift(), at.right(), first, Anchor.END, face, Ink.SECOND);
      return;
    }
    List<String> drift = RiddenLayout.driftLines(content, faces, at.width());
    for (int i = 0; i < drift.size(); i++) {
      double baseline = first + (i + 1) * face.line();
      surface.text(drift.get(i), 0, baseline, Anchor.START, face, Ink.SECOND);
    }
  }
}
