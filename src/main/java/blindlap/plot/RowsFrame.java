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
import java.util.Optional;

/**
 * What stands around rows of differences on one axis: the worthwhile band with its words above the
 * rows, the line at zero, the axis with its words and the two directions below them.
 */
final class RowsFrame {
  /**
   * What is said around the rows.
   *
   * @param worthwhile the worthwhile band, if one was declared
   * @param axis axis of the difference
   * @param left what lies below zero
   * @param right what lies above zero
   */
  record Said(Optional<Band> worthwhile, Axis axis, String left, String right) {}

  /** A difference and its interval, which the axis has to show. */
  record Extent(double estimate, Limits interval) {}

  private static final double FARTHEST = 1.2;
  private static final Pen GUIDE = new Pen(Ink.INK, 1, Dash.GUIDE);

  private final Said said;
  private final Faces faces;
  private final double width;
  private final Scale scale;
  private final List<String> bandWords;
  private final List<String> axisWords;
  private final DirectionWords directions;

  /**
   * @param extents one for every row that has a difference
   * @param labels width of the labels before the axis
   * @param words width of the words after it
   * @param axisLines how many lines the words of the axis may fill below the labels
   */
  RowsFrame(
      Said said,
      List<Extent> extents,
      Faces faces,
      double width,
      double labels,
      double words,
      int axisLines) {
    this.said = said;
    this.faces = faces;
    this.width = width;
    double half = said.worthwhile().map(band -> 1.15 * band.halfWidth()).orElse(0.0);
    this.scale = scale(half, extents, labels + faces.px(6), width - words - faces.px(14));
    String small = said.worthwhile().map(band -> String.join(" ", band.words())).orElse("");
    this.bandWords = small.isEmpty() ? List.of() : Lines.wrap(small, faces.plain(), width, 2);
    this.axisWords = Lines.wrap(said.axis().words(), faces.plain(), labels - 4, axisLines);
    this.directions = DirectionWords.of(said.left(), said.right(), faces, scale.at(0), width);
  }

  // An end that is unbounded or very far away does not stretch the axis; it becomes an arrow.
  private static Scale scale(double band, List<Extent> extents, double from, double to) {
    double first = -band;
    double last = band;
    for (Extent extent : extents) {
      first = Math.min(first, extent.estimate());
      last = Math.max(last, extent.estimate());
    }
    double span = last > first ? last - first : 1;
    double low = first;
    double high = last;
    for (Extent extent : extents) {
      double left = extent.interval().low();
      double right = extent.interval().high();
      low = Math.min(low, left < first - FARTHEST * span ? first - 0.25 * span : left);
      high = Math.max(high, right > last + FARTHEST * span ? last + 0.25 * span : right);
    }
    return low < high
        ? Scale.around(low, high, 0.04, from, to)
        : new Scale(low - 0.5, high + 0.5, from, to);
  }

  Scale scale() {
    return scale;
  }

  /** Where the band begins, below its words. */
  double top() {
    return bandWords.size() * faces.plain().line() + faces.px(4);
  }

  /** Height of everything, with the axis at this height. */
  double height(double axis) {
    return below(axis) + directions.height() + faces.px(4);
  }

  private double below(double axis) {
    double words =
        AxisPart.numberBaseline(faces)
            + (axisWords.size() - 1) * faces.plain().line()
            + faces.plain().descent();
    return axis + Math.max(faces.px(12) + faces.number().line(), words + faces.px(4));
  }

  /** Draws what lies behind the rows. */
  void behind(Surface surface, double axis) {
    said.worthwhile().ifPresent(band -> band(surface, band.halfWidth(), axis));
    double zero = AxisPart.crisp(scale.at(0));
    surface.line(zero, top(), zero, axis, GUIDE);
  }

  private void band(Surface surface, double half, double axis) {
    double left = scale.clampedAt(-half);
    double right = scale.clampedAt(half);
    surface.hatch(new Box(left, top(), right - left, axis - top()));
    for (double x : new double[] {left, right}) {
      surface.line(x, top(), x, axis, Pen.of(Ink.INK, 1.4));
    }
  }

  /** Draws the words above the rows, the axis and what stands below it. */
  void around(Surface surface, double axis) {
    Face face = faces.plain();
    for (int i = 0; i < bandWords.size(); i++) {
      String words = bandWords.get(i);
      double half = face.room(words) / 2;
      double middle = Math.max(half, Math.min(width - half, scale.at(0)));
      double baseline = face.ascent() + i * face.line();
      surface.text(words, middle, baseline, Anchor.MIDDLE, face, Ink.INK);
    }
    AxisPart.across(surface, scale, said.axis(), axis, faces);
    double first = axis + AxisPart.numberBaseline(faces);
    for (int i = 0; i < axisWords.size(); i++) {
      surface.text(axisWords.get(i), 0, first + i * face.line(), Anchor.START, face, Ink.SECOND);
    }
    directions.draw(surface, below(axis));
  }
}
