package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Surface;
import java.util.List;

/** The lower half of {@link StintsAndDifference}: bands, intervals and their words. */
final class DifferencePart {
  private static final Pen GUIDE = new Pen(Ink.INK, 1, Dash.GUIDE);

  private final Surface surface;
  private final StintsContent content;
  private final DifferenceLayout at;
  private final Faces faces;
  private final Scale scale;

  DifferencePart(Surface surface, StintsContent content, DifferenceLayout layout) {
    this.surface = surface;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces();
    Scale whole = layout.scale();
    double reference = content.rows().get(0).mean();
    this.scale =
        new Scale(whole.low() - reference, whole.high() - reference, whole.from(), whole.to());
  }

  /** The bands, which lie under everything else. */
  void drawBands() {
    content.noise().ifPresent(band -> surface.rectangle(box(band, at.axis()), Ink.NOISE));
    Box worthwhile = box(content.worthwhile(), worthwhileEnd());
    surface.hatch(worthwhile);
    Pen edge = Pen.of(Ink.INK, 1.4);
    for (double side : new double[] {-1, 1}) {
      double value = side * content.worthwhile().halfWidth();
      if (scale.holds(value)) {
        double x = scale.at(value);
        surface.line(x, worthwhile.y(), x, worthwhile.bottom(), edge);
      }
    }
  }

  /** The scale of the difference, on the pixels of the stints. */
  Scale scale() {
    return scale;
  }

  /** Axis and words, without a row. */
  void drawFrame() {
    double zero = AxisPart.crisp(at.zero());
    surface.line(zero, at.bandTop() - faces.px(12), zero, at.axis(), GUIDE);
    AxisPart.across(surface, scale, content.difference(), at.axis(), faces);
    label(content.difference().words(), at.axis() + AxisPart.numberBaseline(faces));
    drawBandWords();
    double below = at.axis() + faces.px(12) + faces.number().line();
    DirectionWords.of(content.left(), content.right(), faces, at.zero(), at.width())
        .draw(surface, below);
  }

  /** Intervals, axis and words. */
  void drawRows() {
    drawFrame();
    for (int i = 0; i < content.pairs().size(); i++) {
      drawPair(content.pairs().get(i), at.bandTop() + i * at.pairHeight());
    }
  }

  private double worthwhileEnd() {
    int lines = content.worthwhile().words().size();
    return at.bandWords() + lines * faces.plain().line();
  }

  private Box box(Band band, double bottom) {
    double left = scale.clampedAt(-band.halfWidth());
    double right = scale.clampedAt(band.halfWidth());
    return new Box(left, at.bandTop(), right - left, bottom - at.bandTop());
  }

  private void label(String words, double baseline) {
    List<String> lines = Lines.wrap(words, faces.plain(), at.labelWidth() - 4, 2);
    for (int i = 0; i < lines.size(); i++) {
      double y = baseline + i * faces.plain().line();
      surface.text(lines.get(i), 0, y, Anchor.START, faces.plain(), Ink.SECOND);
    }
  }

  private void drawBandWords() {
    double first = at.bandWords() + faces.plain().ascent();
    bandWords(content.worthwhile(), first);
    double second = first + content.worthwhile().words().size() * faces.plain().line();
    content.noise().ifPresent(band -> bandWords(band, second + faces.px(4)));
  }

  // Words stand outside their band on the roomier side, with a short line to it; a band that leaves
  // no room gets them inside, on paper.
  private void bandWords(Band band, double baseline) {
    Face face = faces.plain();
    double needed = Lines.widest(band.words(), face) + faces.px(22);
    double left = scale.clampedAt(-band.halfWidth());
    double right = scale.clampedAt(band.halfWidth());
    double roomRight = at.width() - right;
    double roomLeft = left - at.labelWidth();
    boolean goRight = roomRight >= needed || roomRight >= roomLeft;
    double edge = goRight ? right : left;
    double inward = Math.max(0, needed - (goRight ? roomRight : roomLeft));
    double away = goRight ? 1 : -1;
    double x = edge + away * (faces.px(20) - inward);
    if (inward == 0) {
      double y = baseline - 0.32 * face.size();
      surface.line(edge - away * 5, y, x - away * faces.px(4), y, Pen.of(Ink.INK, 1));
    }
    for (int i = 0; i < band.words().size(); i++) {
      surface.backedText(
          band.words().get(i),
          x,
          baseline + i * face.line(),
          goRight ? Anchor.START : Anchor.END,
          face,
          Ink.INK);
    }
  }

  private void drawPair(StintsContent.Pair pair, double top) {
    double bar = top + faces.big().line() + faces.mark() + faces.px(8);
    double x = scale.at(pair.estimate());
    if (pair.less() == content.rows().get(0).mark()) {
      double from = content.pairs().indexOf(pair) == 0 ? at.bandTop() - faces.px(12) : top;
      surface.line(AxisPart.crisp(x), from, AxisPart.crisp(x), bar, GUIDE);
    }
    drawPairLabel(pair, bar);
    Arrows.interval(surface, scale, pair.ninetyFive(), bar, 2);
    Arrows.interval(surface, scale, pair.ninety(), bar, 5);
    surface.disc(x, bar, 1.4 * faces.mark(), Ink.INK);
    besideEstimate(pair.estimateWords(), x, top + faces.big().ascent() + faces.px(2));
    Face face = faces.plain();
    List<String> lines = at.intervalWords(pair);
    double half = Lines.widest(lines, face) / 2;
    double middle =
        Math.max(at.labelWidth() + 4 + half, Math.min(at.width() - half, intervalMiddle(pair, x)));
    double baseline = bar + 1.4 * faces.mark() + faces.px(3) + face.ascent();
    for (int i = 0; i < lines.size(); i++) {
      double y = baseline + i * face.line();
      surface.backedText(lines.get(i), middle, y, Anchor.MIDDLE, face, Ink.INK);
    }
  }

  private void drawPairLabel(StintsContent.Pair pair, double bar) {
    surface.text(
        Lines.cut(pair.title(), faces.strong(), at.labelWidth() - 4),
        0,
        bar - faces.px(4),
        Anchor.START,
        faces.strong(),
        Ink.INK);
    List<String> lines = at.pairWords(pair);
    for (int i = 0; i < lines.size(); i++) {
      double y = bar - faces.px(4) + (i + 1) * faces.plain().line();
      surface.text(lines.get(i), 0, y, Anchor.START, faces.plain(), Ink.SECOND);
    }
  }

  private double intervalMiddle(StintsContent.Pair pair, double x) {
    Limits limits = pair.ninetyFive();
    return scale.holds(limits.low()) && scale.holds(limits.high())
        ? (scale.at(limits.low()) + scale.at(limits.high())) / 2
        : x;
  }

  private void besideEstimate(String words, double x, double baseline) {
    Face face = faces.big();
    double gap = faces.px(8);
    double room = face.room(words);
    boolean right = x + gap + room <= at.width();
    double left = right ? x + gap : Math.max(0, x - gap - room);
    surface.backedText(words, left, baseline, Anchor.START, face, Ink.INK);
  }
}
