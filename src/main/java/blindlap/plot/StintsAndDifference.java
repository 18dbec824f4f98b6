package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.HashSet;
import java.util.Set;

/**
 * Every stint by setup, and the difference under it, on two axes with the same units per pixel.
 *
 * <p>Above, one row a setup with its raw stints and an upright tick at its drift-removed mean;
 * below, the difference with zero under the mean of the first row, so that the estimate hangs under
 * the other setup's mean. The rider noise band is filled, the worthwhile band hatched and shorter;
 * the 95 % interval is a line 2 thick, the 90 % interval a bar 5 thick. With more than two setups
 * there is one interval row a pair.
 */
public final class StintsAndDifference implements Drawing {

  private final StintsContent content;

  private StintsAndDifference(StintsContent content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there are not 2 to 4 different setups, no pair, a pair of
   *     a setup that has no row, or (with two setups) ticks whose distance is not the estimate
   */
  public static StintsAndDifference of(StintsContent content) {
    Set<SetupMark> marks = new HashSet<>();
    content.rows().forEach(row -> marks.add(row.mark()));
    if (content.rows().size() < 2 || marks.size() != content.rows().size()) {
      throw new IllegalArgumentException("Two to four different setups are needed, got " + marks);
    }
    if (content.pairs().isEmpty()) {
      throw new IllegalArgumentException("At least one pair of setups is needed");
    }
    for (StintsContent.Pair pair : content.pairs()) {
      if (!marks.contains(pair.of()) || !marks.contains(pair.less())) {
        throw new IllegalArgumentException(
            "StintsContent.Pair " + pair.note() + " names a setup without a row");
      }
    }
    if (content.rows().size() == 2) {
      checkTicks(content);
    }
    return new StintsAndDifference(content);
  }

  // The eye reads the estimate off the distance of the ticks, so it must be that distance.
  private static void checkTicks(StintsContent content) {
    StintsContent.Pair pair = content.pairs().get(0);
    double distance = mean(content, pair.of()) - mean(content, pair.less());
    double size = Math.abs(distance) + Math.abs(pair.estimate()) + content.worthwhile().halfWidth();
    if (Math.abs(distance - pair.estimate()) > 0.02 * size) {
      throw new IllegalArgumentException(
          "The means lie " + distance + " apart but the estimate is " + pair.estimate());
    }
  }

  static double mean(StintsContent content, SetupMark mark) {
    return content.rows().stream()
        .filter(row -> row.mark() == mark)
        .mapToDouble(StintsContent.Row::mean)
        .findFirst()
        .orElseThrow();
  }

  @Override
  public Spoken spoken() {
    return content.spoken();
  }

  @Override
  public double heightFor(double width, double textScale) {
    return DifferenceLayout.of(content, width, textScale).height();
  }

  @Override
  public void draw(Surface surface, double width, double textScale) {
    DifferenceLayout layout = DifferenceLayout.of(content, width, textScale);
    new DifferencePart(surface, content, layout).drawBands();
    new StintRowsPart(surface, content, layout).draw();
    new DifferencePart(surface, content, layout).drawRows();
  }

  /** Pixels per unit of the measure: the same for stints and difference. */
  double pixelsPerUnit(double width, double textScale) {
    return DifferenceLayout.of(content, width, textScale).scale().pixelsPerUnit();
  }
}
