package blindlap.plot;

import blindlap.plot.surface.Anchor;
import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Face;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import blindlap.plot.surface.Weight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The day as a strip: blocks of time from left to right, clock times at the ones that are named.
 */
public final class DayStrip implements Drawing {
  /** What a block is. */
  public enum Kind {
    /** A stint: its number, and a dark foot for the swap before it. */
    STINT,
    /** Warm-up, rest, packing up. */
    OTHER,
    /** The end of what is possible, such as sunset. */
    END
  }

  /**
   * A block of time.
   *
   * @param kind what it is
   * @param from start in minutes of elapsed time since the first block
   * @param to end in minutes, after the start
   * @param words what stands in it, such as the stint's number
   * @param clock clock time of its start to write below; empty for none
   */
  public record Block(Kind kind, double from, double to, String words, String clock) {
    /** Checks the times. */
    public Block {
      if (!(from < to) || !Double.isFinite(to - from)) {
        throw new IllegalArgumentException(
            "Block " + words + " cannot run from " + from + " to " + to + " minutes");
      }
    }
  }

  /**
   * The end of what is possible where blocks go on after it: what lies behind is dark.
   *
   * @param at in minutes of elapsed time since the first block
   * @param words what it is, such as "sunset"
   * @param clock its clock time
   */
  public record Overrun(double at, String words, String clock) {}

  /**
   * Everything that is drawn.
   *
   * @param blocks in order of time; the end, if any, last
   * @param overrun the end that blocks run over; empty if none does
   * @param swapMinutes length of the swap at the start of each stint
   * @param over clock time to write below where the last block before the end is over; may be empty
   * @param spare words between the last block and the end, such as "1 h 08 spare"; may be empty
   * @param spoken the picture in words
   */
  public record Content(
      List<Block> blocks,
      Optional<Overrun> overrun,
      double swapMinutes,
      String over,
      String spare,
      Spoken spoken) {
    /** Copies the list. */
    public Content {
      blocks = List.copyOf(blocks);
    }
  }

  private static final double HIGH = 40;

  private final Content content;

  private DayStrip(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there is no block or blocks overlap
   */
  public static DayStrip of(Content content) {
    double end = Double.NEGATIVE_INFINITY;
    for (Block block : content.blocks()) {
      if (block.from() < end - 1e-6) {
        throw new IllegalArgumentException("Block " + block.words() + " starts before " + end);
      }
      end = block.to();
    }
    if (content.blocks().isEmpty()) {
      throw new IllegalArgumentException("The day has no block to draw");
    }
    return new DayStrip(content);
  }

  /** Two drawings of the same are equal: a page does not draw it anew. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof DayStrip strip && content.equals(strip.content);
  }

  @Override
  public int hashCode() {
    return content.hashCode();
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    Faces faces = new Faces(textScale);
    double extra = hasSpare() && !spareFits(faces, width) ? faces.number().line() : 0;
    return top(faces) + faces.px(HIGH) + 2 * faces.number().line() + faces.px(12) + extra;
  }

  private static double top(Faces faces) {
    return faces.plain().line() + faces.px(6);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    Scale scale = scale(width);
    content.blocks().forEach(block -> drawBlock(surface, faces, scale, block, width));
    content.overrun().ifPresent(end -> drawOverrun(surface, faces, scale, end, width));
    drawClocks(surface, faces, scale, width);
    drawSpare(surface, faces, width);
  }

  private void drawBlock(Surface surface, Faces faces, Scale scale, Block block, double width) {
    double left = scale.at(block.from());
    double right = scale.at(block.to());
    double top = top(faces);
    Box box = new Box(left, top, right - left, faces.px(HIGH));
    Face face = faces.number();
    if (block.kind() == Kind.END) {
      surface.rectangle(box, Ink.INK);
      surface.text(block.words(), right, face.ascent() + 2, Anchor.END, face, Ink.SECOND);
      return;
    }
    surface.rectangle(box, block.kind() == Kind.STINT ? Ink.SHEET : Ink.NOISE);
    if (block.kind() == Kind.STINT) {
      double swap = Math.min(scale.pixelsPerUnit() * content.swapMinutes(), box.width());
      surface.rectangle(new Box(left, box.bottom() - faces.px(7), swap, faces.px(7)), Ink.INK);
    }
    double dark = Math.max(left, scale.at(darkFrom()));
    if (dark < right) {
      surface.rectangle(new Box(dark, top, right - dark, box.height()), Ink.INK);
    }
    outline(surface, box);
    name(surface, faces, scale, block, width);
  }

  // Inside its block where there is room, a number of a stint over it, other words above.
  private void name(Surface surface, Faces faces, Scale scale, Block block, double width) {
    Face face = faces.number();
    double left = scale.at(block.from());
    double right = scale.at(block.to());
    double middle = (left + right) / 2;
    double baseline = top(faces) + faces.px(HIGH) / 2 + 0.25 * face.size();
    boolean inside = face.room(block.words()) <= right - left - 3;
    boolean dark = block.to() > darkFrom();
    if (block.kind() == Kind.STINT ? inside || numbered(face, scale, block) : inside) {
      if (!inside || dark) {
        // On a ground of its own, whatever is behind.
        Box words = Box.around(block.words(), middle, baseline, Anchor.MIDDLE, face);
        surface.rectangle(words.grown(1), Ink.SHEET);
      }
      surface.text(block.words(), middle, baseline, Anchor.MIDDLE, face, Ink.INK);
    } else if (block.kind() == Kind.OTHER) {
      Box above = Box.around(block.words(), left, face.ascent() + 2, Anchor.START, face);
      if (free(faces, scale, above, width)) {
        surface.text(block.words(), left, face.ascent() + 2, Anchor.START, face, Ink.SECOND);
      }
    }
  }

  /** When the dark begins; beyond all blocks if none runs over. */
  private double darkFrom() {
    return content.overrun().map(Overrun::at).orElse(Double.POSITIVE_INFINITY);
  }

  private static void drawOverrun(
      Surface surface, Faces faces, Scale scale, Overrun end, double width) {
    double x = AxisPart.crisp(scale.at(end.at()));
    surface.line(x, 2, x, top(faces) + faces.px(HIGH), Pen.of(Ink.INK, 3));
    Face face = faces.number();
    Box words = words(faces, scale, end, width);
    surface.text(end.words(), words.x(), face.ascent() + 2, Anchor.START, face, Ink.INK);
  }

  // The words of the end stand at its line where there is room, else before it.
  private static Box words(Faces faces, Scale scale, Overrun end, double width) {
    Face face = faces.number();
    double x = scale.at(end.at());
    double gap = faces.px(6);
    boolean room = x + gap + face.room(end.words()) <= width;
    double left = room ? x + gap : Math.max(0, x - gap - face.room(end.words()));
    return Box.around(end.words(), left, face.ascent() + 2, Anchor.START, face);
  }

  private boolean free(Faces faces, Scale scale, Box words, double width) {
    return content.overrun().stream()
        .noneMatch(end -> words(faces, scale, end, width).overlap(words) > 0);
  }

  // Where numbers are wider than their blocks, only every second or third is written.
  private boolean numbered(Face face, Scale scale, Block block) {
    List<Block> stints =
        content.blocks().stream().filter(each -> each.kind() == Kind.STINT).toList();
    double widest = stints.stream().mapToDouble(each -> face.room(each.words())).max().orElse(0);
    double width = scale.pixelsPerUnit() * (block.to() - block.from());
    int step = (int) Math.ceil((widest + 6) / width);
    return stints.indexOf(block) % step == 0;
  }

  private static void outline(Surface surface, Box box) {
    double left = AxisPart.crisp(box.x());
    double right = AxisPart.crisp(box.right());
    double top = AxisPart.crisp(box.y());
    double bottom = AxisPart.crisp(box.bottom());
    surface.polyline(
        new double[] {left, right, right, left, left},
        new double[] {top, top, bottom, bottom, top},
        Pen.of(Ink.INK, 1.2));
  }

  private record Clock(double at, String words) {}

  private List<Clock> clocks() {
    List<Clock> clocks = new ArrayList<>();
    content.blocks().stream()
        .filter(block -> !block.clock().isEmpty())
        .forEach(block -> clocks.add(new Clock(block.from(), block.clock())));
    if (!content.over().isEmpty()) {
      content.blocks().stream()
          .filter(block -> block.kind() != Kind.END)
          .reduce((before, last) -> last)
          .ifPresent(last -> clocks.add(new Clock(last.to(), content.over())));
    }
    content.overrun().ifPresent(end -> clocks.add(new Clock(end.at(), end.clock())));
    clocks.sort(Comparator.comparingDouble(Clock::at));
    return clocks;
  }

  // Clock times take the upper line where they fit, else the lower; a line leads to each.
  private void drawClocks(Surface surface, Faces faces, Scale scale, double width) {
    Face face = faces.number();
    double under = top(faces) + faces.px(HIGH);
    List<Double> ends = new ArrayList<>(List.of(-1e9, -1e9));
    for (Clock clock : clocks()) {
      double x = scale.at(clock.at());
      double room = face.room(clock.words());
      double left = Math.max(0, Math.min(width - room, x - room / 2));
      int line = left > ends.get(0) + face.size() / 2 ? 0 : 1;
      ends.set(line, left + room);
      double baseline = under + faces.px(8) + face.ascent() + line * face.line();
      double tick = AxisPart.crisp(x);
      surface.line(tick, under, tick, baseline - face.ascent(), Pen.of(Ink.INK, 1));
      surface.backedText(clock.words(), left, baseline, Anchor.START, face, Ink.SECOND);
    }
  }

  private Scale scale(double width) {
    Block last = content.blocks().get(content.blocks().size() - 1);
    return new Scale(content.blocks().get(0).from(), last.to(), 1, width - 1);
  }

  private static Face spareFace(Faces faces) {
    return new Face(Weight.SEMIBOLD, faces.number().size());
  }

  private boolean hasSpare() {
    int count = content.blocks().size();
    return !content.spare().isEmpty()
        && count > 1
        && content.blocks().get(count - 1).kind() == Kind.END;
  }

  private boolean spareFits(Faces faces, double width) {
    int count = content.blocks().size();
    double gap = content.blocks().get(count - 1).from() - content.blocks().get(count - 2).to();
    double pixels = scale(width).pixelsPerUnit() * gap;
    return spareFace(faces).room(content.spare()) <= pixels - 6;
  }

  private void drawSpare(Surface surface, Faces faces, double width) {
    if (!hasSpare()) {
      return;
    }
    Face face = spareFace(faces);
    if (!spareFits(faces, width)) {
      double baseline = heightFor(width, faces.scale()) - face.descent() - 2;
      surface.text(content.spare(), width - 2, baseline, Anchor.END, face, Ink.INK);
      return;
    }
    int count = content.blocks().size();
    Scale scale = scale(width);
    double left = scale.at(content.blocks().get(count - 2).to());
    double right = scale.at(content.blocks().get(count - 1).from());
    double baseline = top(faces) + faces.px(HIGH) / 2 + 0.35 * face.size();
    surface.text(content.spare(), (left + right) / 2, baseline, Anchor.MIDDLE, face, Ink.INK);
  }
}
