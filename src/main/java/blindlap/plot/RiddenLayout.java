package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Weight;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;

/**
 * Where the parts of {@link RiddenOrder} stand.
 *
 * @param faces type
 * @param across stint numbers to pixels
 * @param up values to pixels
 * @param range lowest and highest value that counts
 * @param beyond voids outside the range or without a value, by stint number: a row for each, above
 *     or below the others, so that a lap with a crash does not flatten the rest
 * @param numbersEnd right edge of the numbers of the upright axis
 * @param right right end of the axis
 * @param axis line of the axis
 * @param staggers in how many rows the labels of the stints take turns
 * @param width whole width
 * @param height whole height
 */
record RiddenLayout(
    Faces faces,
    Scale across,
    Scale up,
    Limits range,
    Map<Integer, Beyond> beyond,
    double numbersEnd,
    double right,
    double axis,
    int staggers,
    double width,
    double height) {
  /** Upper edge of the plot. */
  static final double UPPER = 8;

  /**
   * A void that stands in a row of its own.
   *
   * @param y line of its mark
   * @param lines its reason
   * @param anchor whether the reason stands right or left of the mark
   */
  record Beyond(double y, List<String> lines, Anchor anchor) {}

  static RiddenLayout of(RiddenContent content, double width, double textScale) {
    Faces faces = new Faces(textScale);
    Limits range = range(content);
    // The numbers of the axis depend little on its length; the real one is not yet known.
    double plot = 190 * Math.sqrt(textScale) + faces.number().ascent();
    Scale guess = Scale.around(range.low(), range.high(), 0.07, plot - faces.mark(), faces.mark());
    double numbers = AxisPart.uprightRoom(guess, content.values(), faces);
    double label = widestLabel(content, faces);
    double right = width - 2 - Math.max(names(content, faces, width), label / 4);
    int last = content.stints().get(content.stints().size() - 1).number();
    Scale across = new Scale(0.5, last + 0.5, numbers + 12, right);
    Map<Integer, Beyond> beyond = new HashMap<>();
    double above = rows(content, faces, across, range, 1, UPPER, beyond);
    double top = UPPER + above;
    double bottom = top + plot;
    double under = rows(content, faces, across, range, -1, bottom, beyond);
    Scale up =
        Scale.around(range.low(), range.high(), 0.07, bottom - faces.mark(), top + faces.mark());
    double needed = label + 0.3 * faces.number().size();
    int staggers = (int) Math.max(1, Math.ceil(needed / across.pixelsPerUnit()));
    double axis = bottom + under;
    double height = axis + labels(content, faces, staggers) + words(content, faces, width);
    return new RiddenLayout(
        faces,
        across,
        up,
        range,
        Map.copyOf(beyond),
        numbers,
        right,
        axis,
        staggers,
        width,
        height);
  }

  private static double labels(RiddenContent content, Faces faces, int staggers) {
    int rows = content.stints().stream().anyMatch(stint -> !stint.code().isEmpty()) ? 2 : 1;
    return rows * staggers * faces.number().line() + faces.px(6);
  }

  private static double words(RiddenContent content, Faces faces, double width) {
    return wordLines(content, faces, width) * faces.plain().line() + faces.px(6);
  }

  private static double names(RiddenContent content, Faces faces, double width) {
    double widest =
        content.lines().stream()
            .mapToDouble(line -> faces.strong().room(line.name()) + faces.px(10))
            .max()
            .orElse(0);
    return Math.min(0.24 * width, widest);
  }

  private static double widestLabel(RiddenContent content, Faces faces) {
    Face code = new Face(Weight.SEMIBOLD, faces.number().size());
    return content.stints().stream()
        .mapToDouble(
            stint ->
                Math.max(
                    faces.number().room(Integer.toString(stint.number())), code.room(stint.code())))
        .max()
        .orElse(0);
  }

  /** Rows for the voids on one side, from {@code top} down; returns the height they need. */
  private static double rows(
      RiddenContent content,
      Faces faces,
      Scale across,
      Limits range,
      int side,
      double top,
      Map<Integer, Beyond> rows) {
    double y = top;
    Face face = faces.plain();
    for (RiddenContent.Stint stint : content.stints()) {
      if (side(stint, range) == side) {
        double away = faces.mark() + faces.px(6);
        double x = across.at(stint.number());
        double left = x - away - across.from();
        double right = across.to() - x - away;
        List<String> lines = Lines.wrap(stint.reason(), face, Math.max(left, right), 2);
        double half = Math.max(lines.size() * face.line(), 2 * faces.mark() + 6) / 2;
        boolean toRight = right >= Lines.widest(lines, face);
        rows.put(stint.number(), new Beyond(y + half, lines, toRight ? Anchor.START : Anchor.END));
        y += 2 * half;
      }
    }
    return y - top;
  }

  /** One line when both notes fit side by side, else one for the axis and some for the drift. */
  static int wordLines(RiddenContent content, Faces faces, double width) {
    if (content.drift().isEmpty()) {
      return 1;
    }
    double both = faces.plain().room(content.across()) + faces.plain().room(content.drift()) + 90;
    return both <= width ? 1 : 1 + driftLines(content, faces, width).size();
  }

  static List<String> driftLines(RiddenContent content, Faces faces, double width) {
    return Lines.wrap(content.drift(), faces.plain(), width, 3);
  }

  private static Limits range(RiddenContent content) {
    double[] kept =
        content.stints().stream()
            .filter(stint -> stint.standing() != RiddenContent.Standing.VOID)
            .flatMapToDouble(stint -> stint.value().stream())
            .toArray();
    DoubleStream values =
        kept.length > 0
            ? DoubleStream.of(kept)
            : content.stints().stream().flatMapToDouble(stint -> stint.value().stream());
    DoubleStream fitted =
        content.lines().stream()
            .flatMap(line -> line.points().stream())
            .mapToDouble(RiddenContent.Fitted::value);
    double[] all = DoubleStream.concat(values, fitted).sorted().toArray();
    return new Limits(all[0], all[all.length - 1]);
  }

  /** 1 for a void above the range of the others, -1 for one below or without a value, else 0. */
  static int side(RiddenContent.Stint stint, Limits range) {
    if (stint.standing() != RiddenContent.Standing.VOID) {
      return 0;
    }
    if (stint.value().isEmpty()) {
      return -1;
    }
    double value = stint.value().getAsDouble();
    return value > range.high() ? 1 : value < range.low() ? -1 : 0;
  }
}
