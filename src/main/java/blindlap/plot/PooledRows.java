package blindlap.plot;

import blindlap.plot.surface.Anchor;
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
 * A series: every session or rider with its intervals in a row of its own, and below them what is
 * pooled, all on one axis of the difference with the worthwhile band.
 */
public final class PooledRows implements Drawing {
  /** What a row stands for. */
  public enum Kind {
    /** A session or rider of its own. */
    OWN,
    /** A session of the rider above it. */
    UNDER,
    /** Sessions or riders pooled. */
    POOLED
  }

  /**
   * A row.
   *
   * @param kind what it stands for
   * @param blinded false for a session whose rider knew what was fitted: an open mark
   * @param label whose it is
   * @param estimate the difference
   * @param ninetyFive 95 % interval
   * @param ninety 90 % interval
   * @param words the estimate in words, at the right edge
   */
  public record Row(
      Kind kind,
      boolean blinded,
      String label,
      double estimate,
      Limits ninetyFive,
      Limits ninety,
      String words) {
    /** Checks the estimate. */
    public Row {
      if (!Double.isFinite(estimate)) {
        throw new IllegalArgumentException("The difference of " + label + " cannot be " + estimate);
      }
    }
  }

  /**
   * Everything that is drawn.
   *
   * @param rows in the order of drawing, pooled ones last; at least one
   * @param worthwhile the worthwhile band, if one was declared
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

  private final Content content;

  private PooledRows(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no row
   */
  public static PooledRows of(Content content) {
    if (content.rows().isEmpty()) {
      throw new IllegalArgumentException("No session or rider to draw");
    }
    return new PooledRows(content);
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
      if (i > 0 && startsPooled(i)) {
        double y = AxisPart.crisp(at.tops[i] - at.faces.px(5));
        surface.line(0, y, width, y, Pen.of(Ink.RULE, 1));
      }
      row(surface, at, i);
    }
    at.frame.around(surface, at.axis);
  }

  private boolean startsPooled(int row) {
    return content.rows().get(row).kind() == Kind.POOLED
        && content.rows().get(row - 1).kind() != Kind.POOLED;
  }

  private void row(Surface surface, Layout at, int index) {
    Row row = content.rows().get(index);
    boolean pooled = row.kind() == Kind.POOLED;
    Faces faces = at.faces;
    Face face = pooled ? faces.strong() : faces.plain();
    double y = at.tops[index] + at.heights[index] / 2;
    List<String> label = at.labels.get(index);
    double first = y - (label.size() - 1) * face.line() / 2 + 0.35 * face.size();
    for (int i = 0; i < label.size(); i++) {
      double x = row.kind() == Kind.UNDER ? faces.px(Layout.INDENT) : 0;
      Ink ink = row.kind() == Kind.UNDER ? Ink.SECOND : Ink.INK;
      surface.text(label.get(i), x, first + i * face.line(), Anchor.START, face, ink);
    }
    boolean under = row.kind() == Kind.UNDER;
    Arrows.interval(surface, at.scale, row.ninetyFive(), y, under ? 1.2 : 2);
    Arrows.interval(surface, at.scale, row.ninety(), y, under ? 3 : 5);
    double radius = faces.mark() * (pooled ? 1.4 : under ? 0.75 : 1.05);
    double x = at.scale.clampedAt(row.estimate());
    surface.disc(x, y, radius, Ink.INK);
    if (!row.blinded()) {
      surface.disc(x, y, radius - 2, Ink.PAPER);
    }
    String words = Lines.cut(row.words(), face, at.wordsWidth);
    surface.text(words, at.width, y + 0.35 * face.size(), Anchor.END, face, Ink.INK);
  }

  /** Where everything stands at a width. */
  private static final class Layout {
    private static final double INDENT = 14;

    private final Faces faces;
    private final double width;
    private final double wordsWidth;
    private final RowsFrame frame;
    private final Scale scale;
    private final List<List<String>> labels = new ArrayList<>();
    private final double[] tops;
    private final double[] heights;
    private final double axis;
    private final double height;

    Layout(Content content, Faces faces, double width) {
      this.faces = faces;
      this.width = width;
      double labelWidth = Math.min(0.32 * width, widest(content, faces, true) + 10);
      this.wordsWidth = Math.min(0.28 * width, widest(content, faces, false) + 2);
      this.frame =
          new RowsFrame(
              content.said(),
              content.rows().stream()
                  .map(row -> new RowsFrame.Extent(row.estimate(), row.ninetyFive()))
                  .toList(),
              faces,
              width,
              labelWidth,
              wordsWidth,
              2);
      this.scale = frame.scale();
      this.tops = new double[content.rows().size()];
      this.heights = new double[tops.length];
      double y = frame.top() + faces.px(6);
      for (int i = 0; i < tops.length; i++) {
        Row row = content.rows().get(i);
        boolean pooled = row.kind() == Kind.POOLED;
        Face face = pooled ? faces.strong() : faces.plain();
        double room = labelWidth - 4 - (row.kind() == Kind.UNDER ? faces.px(INDENT) : 0);
        labels.add(Lines.wrap(row.label(), face, room, 2));
        double least = faces.px(pooled ? 34 : row.kind() == Kind.UNDER ? 24 : 28);
        heights[i] = Math.max(least, labels.get(i).size() * face.line() + faces.px(6));
        boolean first = pooled && i > 0 && content.rows().get(i - 1).kind() != Kind.POOLED;
        tops[i] = y + (first ? faces.px(12) : 0);
        y = tops[i] + heights[i];
      }
      this.axis = y + faces.px(6);
      this.height = frame.height(axis);
    }

    private static double widest(Content content, Faces faces, boolean label) {
      double widest = 0;
      for (Row row : content.rows()) {
        Face face = row.kind() == Kind.POOLED ? faces.strong() : faces.plain();
        double indent = row.kind() == Kind.UNDER && label ? faces.px(INDENT) : 0;
        widest = Math.max(widest, indent + face.room(label ? row.label() : row.words()));
      }
      return widest;
    }
  }
}
