package blindlap.plot;

import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Stack;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Where the parts of {@link StintsAndDifference} stand.
 *
 * @param faces type at the text scale
 * @param scale value axis in the unit of the measure; the difference uses the same pixels per unit
 * @param zero pixel of "no difference"
 * @param labelWidth width of the names at the left
 * @param width whole width
 * @param names wrapped name of each row
 * @param stacks piled marks of each row
 * @param rowTops upper edge of each row, and after the last the lower edge of all
 * @param bandTop upper edge of the bands
 * @param pairHeight height of one interval row
 * @param bandWords upper edge of the strip with the words of the bands
 * @param axis line of the difference axis
 * @param height whole height
 */
record DifferenceLayout(
    Faces faces,
    Scale scale,
    double zero,
    double labelWidth,
    double width,
    List<List<String>> names,
    List<Stack> stacks,
    List<Double> rowTops,
    double bandTop,
    double pairHeight,
    double bandWords,
    double axis,
    double height) {
  // Beyond this many times the spread of all else an interval end is an arrow instead of a line.
  private static final double FARTHEST = 3;

  private static final int MOST_INTERVAL_LINES = 5;

  static DifferenceLayout of(StintsContent content, double width, double textScale) {
    Faces faces = new Faces(textScale);
    double label = labelWidth(content, faces, width);
    Scale scale = scale(content, label + faces.mark() + 8, width - faces.mark() - 8);
    List<List<String>> names = new ArrayList<>();
    List<Stack> stacks = new ArrayList<>();
    List<Double> tops = new ArrayList<>();
    double y = 0;
    for (StintsContent.Row row : content.rows()) {
      tops.add(y);
      List<String> name = Lines.wrap(row.name(), faces.strong(), label - nameIndent(faces), 3);
      Stack stack = Stack.of(row.values().stream().map(scale::at).toList(), 2 * faces.mark() + 1);
      names.add(name);
      stacks.add(stack);
      y += rowHeight(faces, stack, name.size());
    }
    tops.add(y);
    double bandTop = y + faces.px(14) + faces.number().line() + faces.px(22);
    double pair = pairHeight(content, faces, width - label);
    double bandWords = bandTop + pair * content.pairs().size();
    double axis = bandWords + bandWordLines(content) * faces.plain().line() + faces.px(10);
    double zero = scale.at(content.rows().get(0).mean());
    double below = faces.px(8) + faces.number().line() + faces.px(6);
    double arrows = DirectionWords.of(content.left(), content.right(), faces, zero, width).height();
    return new DifferenceLayout(
        faces,
        scale,
        zero,
        label,
        width,
        names,
        stacks,
        tops,
        bandTop,
        pair,
        bandWords,
        axis,
        axis + below + arrows + faces.px(4));
  }

  private static double pairHeight(StintsContent content, Faces faces, double width) {
    int lines =
        content.pairs().stream()
            .mapToInt(each -> intervalWords(each, faces, width).size())
            .max()
            .orElse(1);
    return faces.big().line() + 2 * faces.mark() + lines * faces.plain().line() + faces.px(18);
  }

  /**
   * The lower half alone.
   *
   * @param pair height of one interval row
   * @param label width of what stands at the left of one
   */
  DifferenceLayout alone(StintsContent content, double pair, double label) {
    Scale wide = scale(content, label, width - faces.mark() - 8);
    double at = wide.at(content.rows().get(0).mean());
    double top = faces.px(14);
    double words = top + pair * content.pairs().size();
    double line = words + (axis - bandWords);
    double arrows = DirectionWords.of(content.left(), content.right(), faces, at, width).height();
    double end = line + faces.px(8) + faces.number().line() + faces.px(6) + arrows + faces.px(4);
    return new DifferenceLayout(
        faces, wide, at, label, width, names, stacks, rowTops, top, pair, words, line, end);
  }

  /** Distance of two piled marks; tall piles overlap rather than push the page apart. */
  static double pile(Faces faces, Stack stack) {
    return Math.min(2 * faces.mark() + 1, 78 * Math.sqrt(faces.scale()) / stack.height());
  }

  static double nameIndent(Faces faces) {
    return 2 * faces.mark() + 10;
  }

  /** Words of a pair in the label column. */
  List<String> pairWords(StintsContent.Pair pair) {
    return Lines.wrap(pair.note(), faces.plain(), labelWidth - 4, 2);
  }

  /** What is said of an interval, under it; long names take more lines than one. */
  List<String> intervalWords(StintsContent.Pair pair) {
    return intervalWords(pair, faces, width - labelWidth);
  }

  private static List<String> intervalWords(StintsContent.Pair pair, Faces faces, double room) {
    return Lines.wrap(pair.intervalWords(), faces.plain(), room - 4, MOST_INTERVAL_LINES);
  }

  /** Line on which the marks of a row stand, at the centre of the lowest. */
  double markLine(int row) {
    int lines = names.get(row).size();
    double below = Math.max(faces.mark(), (lines - 1) * faces.strong().line() / 2 + faces.mark());
    return rowTops.get(row + 1) - below - faces.px(10);
  }

  /** Line of the value axis. */
  double valueAxis() {
    return rowTops.get(rowTops.size() - 1);
  }

  private static double rowHeight(Faces faces, Stack stack, int nameLines) {
    double piled = (stack.height() - 1) * pile(faces, stack);
    double marks = faces.strong().line() + faces.px(4) + piled + 2 * faces.mark();
    double extra = (nameLines - 1) * faces.strong().line() / 2;
    return Math.max(marks, nameLines * faces.strong().line() / 2) + extra + faces.px(12);
  }

  private static int bandWordLines(StintsContent content) {
    return content.worthwhile().words().size()
        + content.noise().map(band -> band.words().size()).orElse(0);
  }

  private static double labelWidth(StintsContent content, Faces faces, double width) {
    double names =
        content.rows().stream().mapToDouble(r -> faces.strong().room(r.name())).max().orElse(0)
            + nameIndent(faces);
    double axes =
        Math.max(
            faces.plain().room(content.values().words()),
            faces.plain().room(content.difference().words()));
    double pairs =
        content.pairs().stream()
            .mapToDouble(
                p -> Math.max(faces.strong().room(p.title()), faces.plain().room(p.note())))
            .max()
            .orElse(0);
    double wanted = Math.max(names, Math.max(axes, pairs)) + 8;
    return Math.min(wanted, 0.27 * width);
  }

  private static Scale scale(StintsContent content, double from, double to) {
    double reference = content.rows().get(0).mean();
    double band = content.worthwhile().halfWidth();
    double noise = content.noise().map(Band::halfWidth).orElse(band);
    DoubleStream values =
        content.rows().stream()
            .flatMapToDouble(
                row ->
                    DoubleStream.concat(
                        DoubleStream.of(row.mean()),
                        row.values().stream().mapToDouble(Double::doubleValue)));
    DoubleStream estimates = content.pairs().stream().mapToDouble(p -> reference + p.estimate());
    DoubleStream bands =
        DoubleStream.of(-band, band, -noise, noise).map(offset -> reference + 1.15 * offset);
    double[] all = DoubleStream.concat(values, DoubleStream.concat(estimates, bands)).toArray();
    double low = DoubleStream.of(all).min().orElseThrow();
    double high = DoubleStream.of(all).max().orElseThrow();
    return withIntervals(content, low, high, from, to);
  }

  // An end that is unbounded or very far away does not stretch the axis; it becomes an arrow.
  private static Scale withIntervals(
      StintsContent content, double first, double last, double from, double to) {
    double reference = content.rows().get(0).mean();
    double span = last - first;
    double low = first;
    double high = last;
    for (StintsContent.Pair pair : content.pairs()) {
      for (Limits limits : List.of(pair.ninetyFive(), pair.ninety())) {
        double left = reference + limits.low();
        double right = reference + limits.high();
        low = Math.min(low, left < first - FARTHEST * span ? first - 0.25 * span : left);
        high = Math.max(high, right > last + FARTHEST * span ? last + 0.25 * span : right);
      }
    }
    return Scale.around(low, high, 0.04, from, to);
  }
}
