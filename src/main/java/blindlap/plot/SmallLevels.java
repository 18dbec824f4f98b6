package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Faces;
import blindlap.plot.surface.Ink;
import blindlap.plot.surface.Pen;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.List;

/** Raw stints over the levels of one setting, for a cell of a table; each has its own scale. */
public final class SmallLevels implements Drawing {
  private static final double HEIGHT = 64;
  private static final double MARK = 3.2;

  /**
   * A stint.
   *
   * @param level the number of its level
   * @param value as recorded
   */
  public record Stint(double level, double value) {}

  private final List<Double> levels;
  private final List<Stint> stints;
  private final Spoken spoken;

  private SmallLevels(List<Double> levels, List<Stint> stints, Spoken spoken) {
    this.levels = levels;
    this.stints = stints;
    this.spoken = spoken;
  }

  /**
   * Makes the picture.
   *
   * @param levels two or more, rising
   * @throws IllegalArgumentException when there is no stint, or one is not a number
   */
  public static SmallLevels of(List<Double> levels, List<Stint> stints, Spoken spoken) {
    if (levels.size() < 2 || stints.isEmpty()) {
      throw new IllegalArgumentException("Stints over two levels at least are drawn");
    }
    if (!stints.stream().allMatch(s -> Double.isFinite(s.value()) && Double.isFinite(s.level()))) {
      throw new IllegalArgumentException("A stint is not a number");
    }
    return new SmallLevels(List.copyOf(levels), List.copyOf(stints), spoken);
  }

  @Override
  public Spoken spoken() {
    return spoken;
  }

  @Override
  public double heightFor(double width, double textScale) {
    return HEIGHT * new Faces(textScale).scale();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    double mark = MARK * Math.sqrt(textScale);
    double line = heightFor(width, textScale) - 6;
    double low = stints.stream().mapToDouble(Stint::value).min().orElseThrow();
    double high = stints.stream().mapToDouble(Stint::value).max().orElseThrow();
    Scale up = Scale.around(low, high, 0, line - 1.6 * mark, 1.4 * mark);
    Scale across =
        new Scale(levels.get(0), levels.get(levels.size() - 1), 2 * mark, width - 2 * mark);
    surface.line(across.from() - mark, line, across.to() + mark, line, Pen.of(Ink.INK, 1));
    for (double level : levels) {
      surface.line(across.at(level), line, across.at(level), line + 4, Pen.of(Ink.INK, 1));
    }
    // A paper rim keeps dots apart that lie on one another.
    for (Stint stint : stints) {
      double x = across.at(stint.level());
      surface.disc(x, up.at(stint.value()), mark + 0.8, Ink.PAPER);
      surface.disc(x, up.at(stint.value()), mark, Ink.INK);
    }
  }
}
