package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Dash;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Lines;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A field: a setup a row against the reference on one axis with the worthwhile band. What met the
 * reference on one day is solid, what only follows is open and dashed; rows stand in the order they
 * are given in.
 */
public final class FieldRows implements Drawing {
  /** How a setup stands to the reference. */
  public enum Kind {
    /** The reference itself: a disc at zero. */
    REFERENCE,
    /** Solid disc, solid interval. */
    RIDDEN,
    /** Open ring, dashed interval. */
    FOLLOWS,
    /** Words alone. */
    APART
  }

  /**
   * A row.
   *
   * @param label name of the setup
   * @param below when it met the reference, or over what it follows
   * @param estimate its difference; not used of a setup that is apart
   * @param interval its interval; not used of the reference and of a setup that is apart
   * @param words the difference in words, at the right edge
   */
  public record Row(
      Kind kind, String label, String below, double estimate, Limits interval, String words) {
    /** Checks the estimate. */
    public Row {
      if (!Double.isFinite(estimate)) {
        throw new IllegalArgumentException("The difference of " + label + " cannot be " + estimate);
      }
    }

    boolean measured() {
      return kind == Kind.RIDDEN || kind == Kind.FOLLOWS;
    }
  }

  /**
   * Everything that is drawn.
   *
   * @param rows in the order of drawing; at least one
   * @param worthwhile the worthwhile band, if one was declared by all days
   * @param axis axis of the difference
   * @param left what lies below zero
   * @param right what lies above zero
   * @param spoken the picture in words
   */
  public record Content(
      List<Row> rows,
      Optional<Band> worthwhile,
      Axis axis,
      String left,
      String right,
      Spoken spoken) {
    /** Copies the rows. */
    public Content {
      rows = List.copyOf(rows);
    }
  }

  private static final Pen GUIDE = new Pen(Ink.INK, 1, Dash.GUIDE);

  private static final Pen FOLLOWS = new Pen(Ink.INK, 2, Dash.FOLLOWS);

  private final Content content;

  private FieldRows(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no row
   */
  public static FieldRows of(Content content) {
    if (content.rows().isEmpty()) {
      throw new IllegalArgumentException("No setup to draw");
    }
    return new FieldRows(content);
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return new Layout(content, new Faces(textScale), width).height;
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Layout at = new Layout(content, new Faces(textScale), width);
    band(surface, at);
    double zero = AxisPart.crisp(at.scale.at(0));
    surface.line(zero, at.bandTop, zero, at.axis, GUIDE);
    for (int i = 0; i < content.rows().size(); i++) {
      if (i > 0) {
        double y = AxisPart.crisp(at.tops[i]);
        surface.line(0, y, width, y, Pen.of(Ink.RULE, 1));
      }
      row(surface, at, i);
    }
    bandWords(surface, at);
    AxisPart.across(surface, at.scale, content.axis(), at.axis, at.faces);
    Face face = at.faces.plain();
    for (int i = 0; i < at.axisWords.size(); i++) {
      surface.text(
          at.axisWords.get(i),
          0,
          at.axis + AxisPart.numberBaseline(at.faces) + i * face.line(),
          Anchor.START,
          face,
          Ink.SECOND);
    }
    DirectionWords.of(content.left(), content.right(), at.faces, at.scale.at(0), width)
        .draw(surface, at.below);
  }

  private void band(Surface surface, Layout at) {
    if (content.worthwhile().isEmpty()) {
      return;
    }
    double half = content.worthwhile().get().halfWidth();
    double left = at.scale.clampedAt(-half);
    double right = at.scale.clampedAt(half);
    surface.hatch(new Box(left, at.bandTop, right - left, at.axis - at.bandTop));
    for (double x : new double[] {left, right}) {
      surface.line(x, at.bandTop, x, at.axis, Pen.of(Ink.INK, 1.4));
    }
  }

  private void bandWords(Surface surface, Layout at) {
    Face face = at.faces.plain();
    for (int i = 0; i < at.bandWords.size(); i++) {
      String words = at.bandWords.get(i);
      double half = face.room(words) / 2;
      double middle = Math.max(half, Math.min(at.width - half, at.scale.at(0)));
      surface.text(words, middle, face.ascent() + i * face.line(), Anchor.MIDDLE, face, Ink.INK);
    }
  }

  private void row(Surface surface, Layout at, int index) {
    Row row = content.rows().get(index);
    Faces faces = at.faces;
    double y = at.tops[index] + at.heights[index] / 2;
    List<String> names = at.names.get(index);
    List<String> notes = at.notes.get(index);
    double lines = names.size() * faces.strong().line() + notes.size() * faces.plain().line();
    double baseline = y - lines / 2 + faces.strong().ascent();
    for (String name : names) {
      surface.text(name, 0, baseline, Anchor.START, faces.strong(), Ink.INK);
      baseline += faces.strong().line();
    }
    for (String note : notes) {
      surface.text(note, 0, baseline, Anchor.START, faces.plain(), Ink.SECOND);
      baseline += faces.plain().line();
    }
    mark(surface, at, row, y);
    Face face = faces.plain();
    List<String> words = at.words.get(index);
    double first = y - (words.size() - 1) * face.line() / 2 + 0.35 * face.size();
    for (int i = 0; i < words.size(); i++) {
      surface.text(words.get(i), at.width, first + i * face.line(), Anchor.END, face, Ink.INK);
    }
  }

  private static void mark(Surface surface, Layout at, Row row, double y) {
    double x = at.scale.clampedAt(row.estimate());
    double radius = 1.4 * at.faces.mark();
    switch (row.kind()) {
      case REFERENCE -> surface.disc(x, y, at.faces.mark(), Ink.INK);
      case RIDDEN -> {
        Arrows.interval(surface, at.scale, row.interval(), y, 2);
        surface.disc(x, y, radius, Ink.INK);
      }
      case FOLLOWS -> {
        Arrows.interval(surface, at.scale, row.interval(), y, FOLLOWS);
        surface.disc(x, y, radius, Ink.INK);
        surface.disc(x, y, radius - 2.2, Ink.PAPER);
      }
      case APART -> {}
    }
  }

  /** Where everything stands at a width. */
  private static final class Layout {
    private static final double FARTHEST = 1.2;

    private final Faces faces;
    private final double width;
    private final Scale scale;
    private final List<List<String>> names = new ArrayList<>();
    private final List<List<String>> notes = new ArrayList<>();
    private final List<List<String>> words = new ArrayList<>();
    private final List<String> bandWords;
    private final double[] tops;
    private final double[] heights;
    private final double bandTop;
    private final List<String> axisWords;
    private final double axis;
    private final double below;
    private final double height;

    Layout(Content content, Faces faces, double width) {
      this.faces = faces;
      this.width = width;
      double labelWidth = labelWidth(content);
      double wordsWidth = wordsWidth(content);
      this.scale = scale(content, labelWidth + faces.px(6), width - wordsWidth - faces.px(14));
      String small = content.worthwhile().map(b -> String.join(" ", b.words())).orElse("");
      this.bandWords = small.isEmpty() ? List.of() : Lines.wrap(small, faces.plain(), width, 2);
      this.bandTop = bandWords.size() * faces.plain().line() + faces.px(4);
      this.tops = new double[content.rows().size()];
      this.heights = new double[tops.length];
      double y = bandTop + faces.px(2);
      for (int i = 0; i < tops.length; i++) {
        Row row = content.rows().get(i);
        names.add(Lines.wrap(row.label(), faces.strong(), labelWidth - 4, 2));
        notes.add(
            row.below().isEmpty()
                ? List.of()
                : Lines.wrap(row.below(), faces.plain(), labelWidth - 4, 3));
        words.add(Lines.wrap(row.words(), faces.plain(), wordsWidth, 3));
        double label =
            names.get(i).size() * faces.strong().line()
                + notes.get(i).size() * faces.plain().line();
        double said = words.get(i).size() * faces.plain().line();
        heights[i] = Math.max(faces.px(34), Math.max(label, said) + faces.px(8));
        tops[i] = y;
        y += heights[i];
      }
      this.axis = y + faces.px(4);
      double arrows =
          DirectionWords.of(content.left(), content.right(), faces, scale.at(0), width).height();
      this.axisWords = Lines.wrap(content.axis().words(), faces.plain(), labelWidth - 4, 4);
      double axisRoom =
          AxisPart.numberBaseline(faces)
              + (axisWords.size() - 1) * faces.plain().line()
              + faces.plain().descent();
      this.below = axis + Math.max(faces.px(12) + faces.number().line(), axisRoom + faces.px(4));
      this.height = below + arrows + faces.px(4);
    }

    private double labelWidth(Content content) {
      double widest = 0;
      for (Row row : content.rows()) {
        widest = Math.max(widest, faces.strong().room(row.label()));
        widest = Math.max(widest, faces.plain().room(row.below()));
      }
      return Math.min(0.34 * width, widest + 10);
    }

    private double wordsWidth(Content content) {
      double widest = 0;
      for (Row row : content.rows()) {
        widest = Math.max(widest, faces.plain().room(row.words()));
      }
      return Math.min(0.22 * width, widest + 2);
    }

    // An end that is very far away does not stretch the axis; it becomes an arrow.
    private static Scale scale(Content content, double from, double to) {
      double band = content.worthwhile().map(b -> 1.15 * b.halfWidth()).orElse(0.0);
      double first = -band;
      double last = band;
      for (Row row : content.rows()) {
        first = row.measured() ? Math.min(first, row.estimate()) : first;
        last = row.measured() ? Math.max(last, row.estimate()) : last;
      }
      double span = last > first ? last - first : 1;
      double low = last > first ? first : -0.5;
      double high = last > first ? last : 0.5;
      for (Row row : content.rows()) {
        if (row.measured()) {
          double left = row.interval().low();
          double right = row.interval().high();
          low = Math.min(low, left < first - FARTHEST * span ? first - 0.25 * span : left);
          high = Math.max(high, right > last + FARTHEST * span ? last + 0.25 * span : right);
        }
      }
      return Scale.around(low, high, 0.04, from, to);
    }
  }
}
