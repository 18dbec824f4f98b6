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
import java.util.List;
import java.util.stream.Collectors;

/**
 * The differences of three and more setups in close rows: two marks and the interval, and under it
 * the pair in words. Bands and axis are those of {@link StintsAndDifference}.
 */
public final class PairRows implements Drawing {
  private static final int MOST_LINES = 9;

  private final StintsContent content;

  private PairRows(StintsContent content) {
    this.content = content;
  }

  /** The lower half of {@link StintsAndDifference}, closer. */
  public static PairRows of(StintsContent content) {
    return new PairRows(content);
  }

  @Override
  public Spoken spoken() {
    return new Spoken(
        content.spoken().sentence(),
        content.pairs().stream().map(pair -> words(pair) + ".").collect(Collectors.joining(" ")));
  }

  @Override
  public double heightFor(double width, double textScale) {
    return layout(width, textScale).height();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    DifferenceLayout layout = layout(width, textScale);
    DifferencePart part = new DifferencePart(surface, content, layout);
    part.drawBands();
    part.drawFrame();
    for (int i = 0; i < content.pairs().size(); i++) {
      pair(surface, layout, part.scale(), content.pairs().get(i), i);
    }
  }

  private DifferenceLayout layout(double width, double textScale) {
    Faces faces = new Faces(textScale);
    int lines =
        content.pairs().stream().mapToInt(p -> words(p, faces, width).size()).max().orElse(1);
    double pair = 2.8 * faces.mark() + faces.px(14) + lines * faces.plain().line();
    double axis = Math.min(faces.plain().room(content.difference().words()) + 8, 0.25 * width);
    double label = Math.max(6.4 * faces.mark() + faces.px(14), axis);
    return DifferenceLayout.of(content, width, textScale).alone(content, pair, label);
  }

  private static List<String> words(StintsContent.Pair pair, Faces faces, double width) {
    return Lines.wrap(words(pair), faces.plain(), width, MOST_LINES);
  }

  private static String words(StintsContent.Pair pair) {
    String title = pair.title().isEmpty() ? "" : "; " + pair.title();
    return pair.note() + ": " + pair.estimateWords() + "; " + pair.intervalWords() + title;
  }

  private void pair(
      Surface surface, DifferenceLayout at, Scale scale, StintsContent.Pair pair, int index) {
    Faces faces = at.faces();
    double radius = faces.mark();
    double bar = at.bandTop() + index * at.pairHeight() + 1.4 * radius;
    pair.of().draw(surface, radius + 1, bar, radius);
    surface.line(2.6 * radius, bar, 3.6 * radius, bar, Pen.of(Ink.INK, 1.6));
    pair.less().draw(surface, 5.2 * radius, bar, radius);
    Arrows.interval(surface, scale, pair.ninetyFive(), bar, 2);
    Arrows.interval(surface, scale, pair.ninety(), bar, 5);
    surface.disc(scale.at(pair.estimate()), bar, radius, Ink.INK);
    Face face = faces.plain();
    List<String> lines = words(pair, faces, at.width());
    for (int i = 0; i < lines.size(); i++) {
      double baseline = bar + 1.4 * radius + face.ascent() + i * face.line();
      surface.backedText(lines.get(i), 0, baseline, Anchor.START, face, Ink.INK);
    }
  }
}
