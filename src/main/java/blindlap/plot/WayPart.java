package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Places;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;

/** Draws {@link AlongWay}. */
final class WayPart {
  private static final double HEIGHT = 290;
  private static final int MOST_ROWS = 3;

  private final Surface surface;
  private final WayContent content;
  private final Layout at;
  private final Faces faces;
  private final Places places;

  WayPart(Surface surface, WayContent content, Layout layout) {
    this.surface = surface;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces;
    places =
        new Places(
            new Box(
                at.across.from(), at.top, at.across.to() - at.across.from(), at.floor - at.top));
  }

  /** The name of a gate over the plot. */
  private record Name(String words, double x, Anchor anchor, int row) {}

  /**
   * Where things stand.
   *
   * @param across metres to pixels
   * @param up sums to pixels
   * @param numbersEnd right end of the numbers of the upright axis
   * @param top upper edge of the plot, under the names of the gates
   * @param floor line of the axis
   * @param beside left edge of the names of the setups
   * @param width the whole width
   * @param height the whole height
   */
  record Layout(
      Faces faces,
      Scale across,
      Scale up,
      double numbersEnd,
      double top,
      double floor,
      double beside,
      double width,
      double height) {
    static Layout of(WayContent content, double width, double textScale) {
      Faces faces = new Faces(textScale);
      double gap = faces.px(14);
      double right = width - besideRoom(content, faces, width) - gap - 2 * faces.mark();
      double low = 0;
      double high = 0;
      for (int i = 0; i < content.way().length; i++) {
        low = Math.min(low, content.sums()[i] - content.half(i));
        high = Math.max(high, content.sums()[i] + content.half(i));
      }
      double provisional = HEIGHT * Math.pow(textScale, 0.6);
      Scale first = Scale.around(low, high, 0.07, provisional, 0);
      double numbers =
          Math.max(
              AxisPart.uprightRoom(first, content.upright(), faces),
              faces.number().room(content.upright().words()));
      Scale across = new Scale(0, content.length(), numbers + 10, right);
      int rows = names(content, faces, across).stream().mapToInt(n -> n.row + 1).max().orElse(1);
      double top = rows * faces.strong().line() + faces.px(6);
      double floor = top + provisional;
      Scale up = Scale.around(low, high, 0.07, floor, top);
      double height = floor + AxisPart.numberBaseline(faces) + faces.plain().line() + faces.px(12);
      return new Layout(faces, across, up, numbers, top, floor, right + gap, width, height);
    }

    private static double besideRoom(WayContent content, Faces faces, double width) {
      double widest =
          Math.max(
              Math.max(
                  faces.strong().room(content.zero().name()),
                  faces.strong().room(content.end().name())),
              faces.strong().room(content.end().words()));
      return Math.min(0.3 * width, widest + faces.mark() + faces.px(10));
    }

    /**
     * Names of gates, in rows so that none touches another, start and finish first; one that has no
     * room is left out.
     */
    private static List<Name> names(WayContent content, Faces faces, Scale across) {
      Face face = faces.strong();
      List<WayContent.Gate> byWeight = new ArrayList<>(content.gates());
      int last = byWeight.size() - 1;
      if (last > 1) {
        byWeight.add(1, byWeight.remove(last));
      }
      List<List<Box>> rows = new ArrayList<>();
      for (int row = 0; row < MOST_ROWS; row++) {
        rows.add(new ArrayList<>());
      }
      List<Name> names = new ArrayList<>();
      for (WayContent.Gate gate : byWeight) {
        double x = across.at(gate.metres());
        String words = Lines.cut(gate.name(), face, 0.4 * (across.to() - across.from()));
        double room = face.room(words);
        Anchor anchor =
            x - room / 2 < across.from()
                ? Anchor.START
                : x + room / 2 > across.to() ? Anchor.END : Anchor.MIDDLE;
        Box box = new Box(anchor.left(x, room) - faces.px(5), 0, room + faces.px(10), 1);
        for (int row = 0; row < MOST_ROWS; row++) {
          if (rows.get(row).stream().allMatch(taken -> taken.overlap(box) <= 0)) {
            rows.get(row).add(box);
            names.add(new Name(words, x, anchor, row));
            break;
          }
        }
      }
      return names;
    }
  }

  void draw() {
    band();
    AxisPart.upright(surface, at.up, content.upright(), at.numbersEnd, at.across.to(), faces);
    surface.text(
        content.upright().words(),
        at.numbersEnd,
        at.top - faces.px(6) - faces.strong().descent(),
        Anchor.END,
        faces.number(),
        Ink.SECOND);
    double zero = AxisPart.crisp(at.up.at(0));
    surface.line(at.across.from(), zero, at.across.to(), zero, new Pen(Ink.INK, 1.2, Dash.GUIDE));
    gates();
    line();
    ends();
    notes();
    if (content.banded()) {
      bandWords();
    }
  }

  private double x(int place) {
    return at.across.at(content.way()[place]);
  }

  /** Filled, and with edges, for palettes that leave fills out. */
  private void band() {
    if (!content.banded()) {
      return;
    }
    int n = content.way().length;
    double[] xs = new double[2 * n];
    double[] ys = new double[2 * n];
    for (int i = 0; i < n; i++) {
      xs[i] = x(i);
      xs[2 * n - 1 - i] = x(i);
      ys[i] = at.up.at(content.sums()[i] + content.half(i));
      ys[2 * n - 1 - i] = at.up.at(content.sums()[i] - content.half(i));
    }
    surface.polygon(xs, ys, Ink.NOISE);
    Pen edge = new Pen(Ink.SECOND, 1, Dash.DOTTED);
    surface.polyline(java.util.Arrays.copyOf(xs, n), java.util.Arrays.copyOf(ys, n), edge);
    surface.polyline(
        java.util.Arrays.copyOfRange(xs, n, 2 * n),
        java.util.Arrays.copyOfRange(ys, n, 2 * n),
        edge);
  }

  private void gates() {
    double floor = AxisPart.crisp(at.floor);
    surface.line(at.across.from(), floor, at.across.to(), floor, Pen.of(Ink.INK, 1.2));
    double edge = Double.NEGATIVE_INFINITY;
    Face face = faces.number();
    for (WayContent.Gate gate : content.gates()) {
      double x = AxisPart.crisp(at.across.at(gate.metres()));
      boolean outer = gate.metres() == 0 || gate.metres() == content.length();
      surface.line(x, at.top, x, floor + 5, Pen.of(Ink.INK, outer ? 2.6 : 1.4));
      places.take(new Box(x - 2, at.top, 4, at.floor - at.top));
      double half = face.room(gate.number()) / 2;
      double middle = Math.min(x, at.across.to() + faces.px(8) - half);
      if (middle - half > edge + faces.px(6)) {
        double baseline = at.floor + AxisPart.numberBaseline(faces);
        surface.text(gate.number(), middle, baseline, Anchor.MIDDLE, face, Ink.SECOND);
        edge = middle + half;
      }
    }
    for (Name name : Layout.names(content, faces, at.across)) {
      double baseline = at.top - faces.px(6) - faces.strong().descent();
      baseline -= name.row * faces.strong().line();
      surface.text(name.words, name.x, baseline, name.anchor, faces.strong(), Ink.INK);
    }
    surface.text(
        Lines.cut(content.across(), faces.plain(), at.width - at.across.from()),
        at.across.from(),
        at.height - faces.plain().descent() - faces.px(2),
        Anchor.START,
        faces.plain(),
        Ink.SECOND);
  }

  private void line() {
    int n = content.way().length;
    double[] xs = new double[n];
    double[] ys = new double[n];
    for (int i = 0; i < n; i++) {
      xs[i] = x(i);
      ys[i] = at.up.at(content.sums()[i]);
    }
    surface.polyline(xs, ys, Pen.of(Ink.INK, 2.6));
    for (int i = 1; i < n; i++) {
      for (int step = 0; step < 8; step++) {
        double share = step / 8.0;
        places.takeMark(
            Box.around(
                xs[i - 1] + share * (xs[i] - xs[i - 1]),
                ys[i - 1] + share * (ys[i] - ys[i - 1]),
                2));
      }
    }
    double zero = at.up.at(0);
    places.take(new Box(at.across.from(), zero - 1, at.across.to() - at.across.from(), 2));
    surface.disc(xs[n - 1], ys[n - 1], faces.mark(), Ink.INK);
  }

  /** The two setups where their lines end, apart where they would touch. */
  private void ends() {
    Face face = faces.strong();
    double zero = at.up.at(0);
    double end = at.up.at(content.sums()[content.sums().length - 1]);
    double apart = (end >= zero ? 1 : 2) * face.line() + faces.px(6);
    double low = end;
    if (Math.abs(end - zero) < apart) {
      low = end >= zero ? zero + apart : zero - apart;
    }
    named(content.zero(), zero);
    named(content.end(), Math.max(at.top, Math.min(low, at.floor - face.line())));
  }

  private void named(WayContent.Named setup, double y) {
    Face face = faces.strong();
    double mark = at.beside + faces.mark();
    setup.mark().draw(surface, mark, y, faces.mark());
    double left = mark + faces.mark() + faces.px(6);
    double baseline = y + 0.35 * face.size();
    surface.text(
        Lines.cut(setup.name(), face, at.width - left),
        left,
        baseline,
        Anchor.START,
        face,
        setup.mark().ink());
    List<String> words =
        setup.words().isEmpty()
            ? List.of()
            : Lines.wrap(setup.words(), face, at.width - at.beside, 2);
    for (int i = 0; i < words.size(); i++) {
      surface.text(
          words.get(i), at.beside, baseline + (i + 1) * face.line(), Anchor.START, face, Ink.INK);
    }
  }

  /** How far the line goes between two gates, as an arrow at the second with words beside it. */
  private void notes() {
    List<Runnable> words = new ArrayList<>();
    for (WayContent.Note note : content.notes()) {
      double aside = faces.px(12);
      boolean last = at.across.at(note.to()) + aside > at.across.to();
      double x = at.across.at(note.to()) + (last ? -aside : aside);
      double from = at.up.at(content.at(note.from()));
      double to = at.up.at(content.at(note.to()));
      surface.line(at.across.at(note.from()), from, x, from, new Pen(Ink.INK, 1, Dash.GUIDE));
      surface.line(x, from, x, to, Pen.of(Ink.INK, 1.6));
      double head = Math.signum(to - from) * Math.min(faces.px(7), Math.abs(to - from));
      surface.polyline(
          new double[] {x - faces.px(4), x, x + faces.px(4)},
          new double[] {to - head, to, to - head},
          Pen.of(Ink.INK, 1.6));
      places.takeMark(new Box(x - 3, Math.min(from, to), 6, Math.abs(to - from)));
      words.add(() -> words(note, x, (from + to) / 2));
    }
    words.forEach(Runnable::run);
  }

  private void words(WayContent.Note note, double x, double y) {
    Face face = faces.strong();
    double away = faces.px(12);
    List<Places.Spot> spots = new ArrayList<>();
    for (double room : new double[] {170, 110, 240}) {
      List<String> lines = Lines.wrap(note.words(), face, faces.px(room), 5);
      spots.addAll(Places.Spot.nearThenFar(lines, x, y, away, face));
    }
    double left = at.across.from() + faces.px(8);
    List<String> lines = Lines.wrap(note.words(), face, faces.px(170), 5);
    double lowest = at.floor - faces.px(6) - face.descent() - (lines.size() - 1) * face.line();
    spots.add(new Places.Spot(lines, left, lowest, Anchor.START, face));
    spots.add(new Places.Spot(lines, left, at.top + face.line(), Anchor.START, face));
    places.choose(spots, 2, faces.px(4)).draw(surface, Ink.INK);
  }

  private void bandWords() {
    Face face = faces.number();
    List<Places.Spot> spots = new ArrayList<>();
    List<String> lines = Lines.wrap(content.bandWords(), face, faces.px(120), 3);
    int n = content.way().length;
    for (int i = n / 5; i < n; i += Math.max(1, n / 8)) {
      double under = at.up.at(content.sums()[i] - content.half(i)) + faces.px(14) + face.ascent();
      double over =
          at.up.at(content.sums()[i] + content.half(i))
              - faces.px(14)
              - face.descent()
              - (lines.size() - 1) * face.line();
      spots.add(new Places.Spot(lines, x(i), under, Anchor.MIDDLE, face));
      spots.add(new Places.Spot(lines, x(i), over, Anchor.MIDDLE, face));
    }
    places.choose(spots).draw(surface, Ink.SECOND);
  }
}
