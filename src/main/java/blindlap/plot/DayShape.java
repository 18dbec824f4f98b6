package blindlap.plot;

import blindlap.plot.surface.Box;
import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.List;

/**
 * The shape of a day to scale, for a row of a table: handlings as dark blocks, laps as short
 * strokes, warm-up and rests as pale blocks, the end of the day as an upright.
 *
 * @param blocks in order of time
 * @param end minutes from the start to the end of the day
 * @param spoken the picture in words
 */
public record DayShape(List<Block> blocks, double end, Spoken spoken) implements Drawing {
  private static final double HIGH = 18;
  private static final double ABOVE = 5;

  /** What a block of time is. */
  public enum Kind {
    HANDLING,
    LAP,
    PAUSE
  }

  /**
   * A block of time.
   *
   * @param from start in minutes since the first block
   * @param to end in minutes; of a lap, its stroke stands in the middle
   */
  public record Block(Kind kind, double from, double to) {}

  public DayShape {
    blocks = List.copyOf(blocks);
    if (!(end > 0) || !Double.isFinite(end)) {
      throw new IllegalArgumentException("A day cannot last " + end + " minutes");
    }
  }

  @Override
  public double heightFor(double width, double textScale) {
    return new Faces(textScale).px(HIGH + 2 * ABOVE);
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    Faces faces = new Faces(textScale);
    Scale scale = new Scale(0, end, 0, width - 2);
    double top = faces.px(ABOVE);
    double high = faces.px(HIGH);
    for (Block block : blocks) {
      double left = scale.at(block.from());
      double right = scale.at(block.to());
      switch (block.kind()) {
        case HANDLING ->
            surface.rectangle(new Box(left, top, Math.max(2, right - left), high), Ink.INK);
        case PAUSE -> surface.rectangle(new Box(left, top, right - left, high), Ink.NOISE);
        case LAP -> {
          double x = AxisPart.crisp((left + right) / 2);
          surface.line(x, top + high / 4, x, top + 3 * high / 4, Pen.of(Ink.INK, 1));
        }
      }
    }
    double x = AxisPart.crisp(scale.at(end));
    surface.line(x, 0, x, top + high + faces.px(ABOVE), Pen.of(Ink.INK, 1.4));
  }
}
