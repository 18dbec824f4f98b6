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
import java.util.List;

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
   * Everything that is drawn.
   *
   * @param blocks in order of time; the end, if any, last
   * @param swapMinutes length of the swap at the start of each stint
   * @param spare words between the last block and the end, such as "1 h 08 spare"; may be empty
   * @param spoken the picture in words
   */
  public record Content(List<Block> blocks, double swapMinutes, String spare, Spoken spoken) {
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
    content.blocks().forEach(block -> drawBlock(surface, faces, scale, block));
    drawClocks(surface, faces, scale, width);
    drawSpare(surface, faces, width);
  }

  private void drawBlock(Surface surface, Faces faces, Scale scale, Block block) {
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
    outline(surface, box);
    if (block.kind() == Kind.STINT) {
      double swap = Math.min(scale.pixelsPerUnit() * content.swapMinutes(), box.width());
      surface.rectangle(new Box(left, box.bottom() - faces.px(7), swap, faces.px(7)), Ink.INK);
    }
    double middle = (left + right) / 2;
    double baseline = top + faces.px(HIGH) / 2 + 0.25 * face.size();
    if (face.room(block.words()) <= box.width() - 3) {
      surface.text(block.words(), middle, baseline, Anchor.MIDDLE, face, Ink.INK);
    } else if (block.kind() == Kind.STINT && numbered(face, scale, block)) {
      Box words = Box.around(block.words(), middle, baseline, Anchor.MIDDLE, face).grown(1);
      surface.rectangle(words, Ink.SHEET);
      surface.text(block.words(), middle, baseline, Anchor.MIDDLE, face, Ink.INK);
    } else if (block.kind() == Kind.OTHER) {
      surface.text(block.words(), left, face.ascent() + 2, Anchor.START, face, Ink.SECOND);
    }
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

  // Clock times take the upper line where they fit, else the lower; a line leads to each.
  private void drawClocks(Surface surface, Faces faces, Scale scale, double width) {
    Face face = faces.number();
    double under = top(faces) + faces.px(HIGH);
    List<Double> ends = new ArrayList<>(List.of(-1e9, -1e9));
    for (Block block : content.blocks()) {
      if (block.clock().isEmpty()) {
        continue;
      }
      double x = scale.at(block.from());
      double room = face.room(block.clock());
      double left = Math.max(0, Math.min(width - room, x - room / 2));
      int line = left > ends.get(0) + face.size() / 2 ? 0 : 1;
      ends.set(line, left + room);
      double baseline = under + faces.px(8) + face.ascent() + line * face.line();
      double tick = AxisPart.crisp(x);
      surface.line(tick, under, tick, baseline - face.ascent(), Pen.of(Ink.INK, 1));
      surface.backedText(block.clock(), left, baseline, Anchor.START, face, Ink.SECOND);
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
