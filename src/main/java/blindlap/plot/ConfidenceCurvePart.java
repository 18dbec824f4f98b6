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
import java.util.ArrayList;
import java.util.List;

/** Draws a confidence curve. */
final class ConfidenceCurvePart {
  private final Surface surface;
  private final ThinnedCurve curve;
  private final CurveContent content;
  private final Layout at;
  private final Faces faces;
  private final Places places;

  ConfidenceCurvePart(Surface surface, CurveContent content, ThinnedCurve curve, Layout layout) {
    this.surface = surface;
    this.curve = curve;
    this.content = content;
    this.at = layout;
    this.faces = layout.faces();
    double left = layout.across.from();
    places = new Places(new Box(left, 0, layout.across.to() - left, layout.up.from()));
  }

  /**
   * Where things stand.
   *
   * @param faces type
   * @param across differences to pixels
   * @param up p to pixels
   * @param numbersEnd right edge of the numbers of the upright axis
   * @param words lines under the axis
   * @param bandTop upper edge of the hatching
   * @param height whole height
   */
  record Layout(
      Faces faces,
      Scale across,
      Scale up,
      double numbersEnd,
      List<String> words,
      double bandTop,
      double height) {

    static Layout of(CurveContent content, ThinnedCurve curve, double width, double textScale) {
      Faces faces = new Faces(textScale);
      double bandTop = faces.plain().line() * content.worthwhile().words().size() + 4;
      double top = bandTop + faces.px(12);
      double bottom = top + 210 * Math.sqrt(textScale);
      Scale up = new Scale(0, 1, bottom, top);
      double numbers = AxisPart.uprightRoom(up, content.upright(), faces);
      Scale across = new Scale(curve.low(), curve.high(), numbers + 12, width - 8);
      List<String> words =
          Lines.wrap(content.across().words(), faces.plain(), width - across.from(), 2);
      double under =
          faces.px(10) + faces.number().line() + words.size() * faces.plain().line() + faces.px(4);
      return new Layout(faces, across, up, numbers, words, bandTop, bottom + under);
    }
  }

  void draw() {
    drawBand();
    AxisPart.upright(surface, at.up, content.upright(), at.numbersEnd, at.across.to(), faces);
    AxisPart.across(surface, at.across, content.across(), at.up.from(), faces);
    drawCurve();
    drawBar(content.ninety().limits(), 0.10, 5);
    drawBar(content.ninetyFive().limits(), 0.05, 2);
    double x = at.across.at(content.estimate());
    double top = at.up.at(1);
    surface.disc(x, top, faces.mark(), Ink.INK);
    surface.disc(at.across.at(0), at.up.at(content.none()), faces.mark(), Ink.INK);
    drawWords(x, top);
    double baseline = at.up.from() + faces.px(12) + faces.number().line() + faces.plain().ascent();
    for (int i = 0; i < at.words.size(); i++) {
      double y = baseline + i * faces.plain().line();
      surface.text(at.words.get(i), at.across.from(), y, Anchor.START, faces.plain(), Ink.SECOND);
    }
  }

  private void drawBand() {
    double left = at.across.clampedAt(-content.worthwhile().halfWidth());
    double right = at.across.clampedAt(content.worthwhile().halfWidth());
    double top = at.bandTop;
    surface.hatch(new Box(left, top, right - left, at.up.from() - top));
    for (double x : new double[] {left, right}) {
      surface.line(x, top, x, at.up.from(), Pen.of(Ink.INK, 1.2));
    }
    List<String> words = content.worthwhile().words();
    double half = Lines.widest(words, faces.plain()) / 2;
    double middle =
        Math.max(at.across.from() + half, Math.min(at.across.to() - half, (left + right) / 2));
    for (int i = 0; i < words.size(); i++) {
      double y = faces.plain().ascent() + i * faces.plain().line();
      surface.text(words.get(i), middle, y, Anchor.MIDDLE, faces.plain(), Ink.INK);
      places.take(Box.around(words.get(i), middle, y, Anchor.MIDDLE, faces.plain()));
    }
  }

  // One upright for each change of height; columns of equal height make one tread.
  private void drawCurve() {
    List<Double> xs = new ArrayList<>();
    List<Double> ys = new ArrayList<>();
    double column = (curve.high() - curve.low()) / ThinnedCurve.COLUMNS;
    for (int i = 0; i < ThinnedCurve.COLUMNS; i++) {
      boolean first = i == 0 || curve.height(i) != curve.height(i - 1);
      boolean last = i + 1 == ThinnedCurve.COLUMNS || curve.height(i + 1) != curve.height(i);
      double y = at.up.at(curve.height(i));
      if (first) {
        xs.add(at.across.at(curve.low() + i * column));
        ys.add(y);
      }
      if (last) {
        double x = at.across.at(curve.low() + (i + 1) * column);
        xs.add(x);
        ys.add(y);
        places.take(new Box(x - 3, y - 3, 6, 6));
      }
    }
    surface.polyline(array(xs), array(ys), Pen.of(Ink.INK, 2.2));
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private void drawBar(Limits limits, double p, double width) {
    double y = at.up.at(p);
    double left = at.across.clampedAt(limits.low());
    double right = at.across.clampedAt(limits.high());
    Arrows.interval(surface, at.across, limits, y, width);
    places.take(new Box(left, y - width, right - left, 2 * width));
  }

  private void drawWords(double x, double top) {
    double away = faces.mark() + 5;
    places.take(Box.around(x, top, faces.mark()));
    double none = at.up.at(content.none());
    places.take(Box.around(at.across.at(0), none, faces.mark()));
    spot(List.of(content.estimateWords()), x, top, away).draw(surface, Ink.INK);
    drawBarWords();
    Face face = faces.strong();
    double lift = none - (content.noneWords().size() - 0.5) * face.line();
    List<Places.Spot> spots = new ArrayList<>();
    for (int rise : new int[] {0, 1, 2, 3, 4, -1, -2, -3, -4, -5, -6, -7}) {
      for (double sideways : new double[] {3, -3}) {
        double at0 = at.across.at(0) + sideways * away;
        Anchor anchor = sideways > 0 ? Anchor.START : Anchor.END;
        double y = lift - rise * face.line();
        spots.add(new Places.Spot(content.noneWords(), at0, y, anchor, face));
      }
    }
    Places.Spot chosen = places.choose(spots);
    Box box = chosen.box().grown(2);
    double edge = chosen.anchor() == Anchor.START ? box.x() : box.right();
    double near = Math.max(box.y() + face.size(), Math.min(box.bottom() - face.size(), none));
    surface.line(at.across.at(0), none, edge, near, Pen.of(Ink.INK, 1));
    chosen.draw(surface, Ink.INK);
  }

  private Places.Spot spot(List<String> lines, double x, double y, double away) {
    return places.choose(Places.Spot.round(lines, x, y, away, faces.strong()));
  }

  // The 95 % words stand at the left end, the 90 % words at the right, each at its own bar.
  private void drawBarWords() {
    Face face = faces.strong();
    Limits outer = content.ninetyFive().limits();
    Limits inner = content.ninety().limits();
    List<String> thin = List.of(content.ninetyFive().words());
    List<String> thick = List.of(content.ninety().words());
    double left = at.across.clampedAt(outer.low());
    double right = at.across.clampedAt(inner.high());
    List<Places.Spot> thinSpots = new ArrayList<>(ends(thin, left, at.up.at(0.05), -1, face));
    thinSpots.addAll(ends(thin, at.across.clampedAt(outer.high()), at.up.at(0.05), 1, face));
    List<Places.Spot> thickSpots = new ArrayList<>(ends(thick, right, at.up.at(0.10), 1, face));
    thickSpots.addAll(ends(thick, at.across.clampedAt(inner.low()), at.up.at(0.10), -1, face));
    places.choose(thinSpots).draw(surface, Ink.INK);
    places.choose(thickSpots).draw(surface, Ink.INK);
  }

  private List<Places.Spot> ends(List<String> lines, double x, double y, int side, Face face) {
    List<Places.Spot> spots = new ArrayList<>();
    Anchor outward = side < 0 ? Anchor.END : Anchor.START;
    Anchor inward = side < 0 ? Anchor.START : Anchor.END;
    for (int rise = 0; rise < 9; rise++) {
      double baseline = y - faces.px(4) - rise * face.line();
      spots.add(new Places.Spot(lines, x + side * faces.px(8), baseline, outward, face));
    }
    for (int rise = 0; rise < 5; rise++) {
      double baseline = y - faces.px(8) - rise * face.line();
      spots.add(new Places.Spot(lines, x, baseline, inward, face));
    }
    return spots;
  }
}
