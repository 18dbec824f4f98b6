package blindlap.plot;

import blindlap.plot.surface.Anchor;
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

    private RowsFrame.Said said() {
      return new RowsFrame.Said(worthwhile, axis, left, right);
    }
  }

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
    at.frame.behind(surface, at.axis);
    for (int i = 0; i < content.rows().size(); i++) {
      if (i > 0) {
        double y = AxisPart.crisp(at.tops[i]);
        surface.line(0, y, width, y, Pen.of(Ink.RULE, 1));
      }
      row(surface, at, i);
    }
    at.frame.around(surface, at.axis);
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
    private final Faces faces;
    private final double width;
    private final RowsFrame frame;
    private final Scale scale;
    private final List<List<String>> names = new ArrayList<>();
    private final List<List<String>> notes = new ArrayList<>();
    private final List<List<String>> words = new ArrayList<>();
    private final double[] tops;
    private final double[] heights;
    private final double axis;
    private final double height;

    Layout(Content content, Faces faces, double width) {
      this.faces = faces;
      this.width = width;
      double labelWidth = labelWidth(content);
      double wordsWidth = wordsWidth(content);
      this.frame =
          new RowsFrame(
              content.said(),
              content.rows().stream()
                  .filter(Row::measured)
                  .map(row -> new RowsFrame.Extent(row.estimate(), row.interval()))
                  .toList(),
              faces,
              width,
              labelWidth,
              wordsWidth,
              4);
      this.scale = frame.scale();
      this.tops = new double[content.rows().size()];
      this.heights = new double[tops.length];
      double y = frame.top() + faces.px(2);
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
      this.height = frame.height(axis);
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
  }
}
