package blindlap.plot;

import blindlap.plot.surface.Drawing;
import blindlap.plot.surface.Spoken;
import blindlap.plot.surface.Surface;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
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
  /**
   * The stints of one setup.
   *
   * @param mark letter, shape and ink
   * @param name the setup's name
   * @param values raw stints, in the measure's unit
   * @param mean mean with drift removed, in the measure's unit
   * @param meanWords such as "mean 1:34.8"
   */
  public record Row(
      SetupMark mark, String name, List<Double> values, double mean, String meanWords) {
    /** Checks the numbers. */
    public Row {
      values = List.copyOf(values);
      if (!Double.isFinite(mean) || !values.stream().allMatch(Double::isFinite)) {
        throw new IllegalArgumentException("Row " + name + " has a value that is not a number");
      }
    }
  }

  /**
   * One pair's difference.
   *
   * @param of the setup whose mean comes first in the subtraction
   * @param less the reference setup
   * @param title such as "Difference"
   * @param note such as "L less K"
   * @param estimate the difference in the measure's unit
   * @param ninetyFive 95 % interval
   * @param ninety 90 % interval
   * @param estimateWords such as "2.3 s quicker"
   * @param intervalWords such as "95 % interval 1.7 to 3.0 s"
   */
  public record Pair(
      SetupMark of,
      SetupMark less,
      String title,
      String note,
      double estimate,
      Limits ninetyFive,
      Limits ninety,
      String estimateWords,
      String intervalWords) {
    /** Checks the estimate. */
    public Pair {
      if (!Double.isFinite(estimate)) {
        throw new IllegalArgumentException("The difference " + note + " has no estimate");
      }
    }
  }

  /**
   * Everything that is drawn.
   *
   * @param rows 2 to 4 setups, the reference first
   * @param values axis of the stints
   * @param pairs 1 or more
   * @param difference axis of the difference
   * @param noise rider noise, 1 SD, where it is known
   * @param worthwhile the worthwhile difference
   * @param left what lies to the left of zero, such as "Shock L quicker"
   * @param right what lies to the right of zero
   * @param spoken the picture in words
   */
  public record Content(
      List<Row> rows,
      Axis values,
      List<Pair> pairs,
      Axis difference,
      Optional<Band> noise,
      Band worthwhile,
      String left,
      String right,
      Spoken spoken) {
    /** Copies the lists. */
    public Content {
      rows = List.copyOf(rows);
      pairs = List.copyOf(pairs);
    }
  }

  private final Content content;

  private StintsAndDifference(Content content) {
    this.content = content;
  }

  /**
   * Makes the drawing.
   *
   * @throws IllegalArgumentException when there are not 2 to 4 different setups, no pair, a pair of
   *     a setup that has no row, or (with two setups) ticks whose distance is not the estimate
   */
  public static StintsAndDifference of(Content content) {
    Set<SetupMark> marks = new HashSet<>();
    content.rows().forEach(row -> marks.add(row.mark()));
    if (content.rows().size() < 2 || marks.size() != content.rows().size()) {
      throw new IllegalArgumentException("Two to four different setups are needed, got " + marks);
    }
    if (content.pairs().isEmpty()) {
      throw new IllegalArgumentException("At least one pair of setups is needed");
    }
    for (Pair pair : content.pairs()) {
      if (!marks.contains(pair.of()) || !marks.contains(pair.less())) {
        throw new IllegalArgumentException("Pair " + pair.note() + " names a setup without a row");
      }
    }
    if (content.rows().size() == 2) {
      checkTicks(content);
    }
    return new StintsAndDifference(content);
  }

  // The eye reads the estimate off the distance of the ticks, so it must be that distance.
  private static void checkTicks(Content content) {
    Pair pair = content.pairs().get(0);
    double distance = mean(content, pair.of()) - mean(content, pair.less());
    double size = Math.abs(distance) + Math.abs(pair.estimate()) + content.worthwhile().halfWidth();
    if (Math.abs(distance - pair.estimate()) > 0.02 * size) {
      throw new IllegalArgumentException(
          "The means lie " + distance + " apart but the estimate is " + pair.estimate());
    }
  }

  static double mean(Content content, SetupMark mark) {
    return content.rows().stream()
        .filter(row -> row.mark() == mark)
        .mapToDouble(Row::mean)
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
