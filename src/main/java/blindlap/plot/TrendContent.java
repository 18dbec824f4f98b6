package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.List;
import java.util.Optional;

/**
 * What {@link LevelsAndTrend} draws. Differences are from the lowest level to the highest, in the
 * unit of the values.
 *
 * @param levels 3 or more, rising
 * @param stints every stint that counts
 * @param middle the day's mean, at the mean of the levels
 * @param trend estimated difference
 * @param ninetyFive its 95 % interval
 * @param ninety its 90 % interval
 * @param worthwhile smallest difference that matters; empty where none was declared
 * @param values axis of the values
 * @param axisWords what the levels are, under their axis
 * @param up what higher values mean, such as "slower"
 * @param mean the word for a level's mean
 * @param said the trend in short lines, the first ones strong
 * @param strong how many of them are strong
 */
public record TrendContent(
    List<Level> levels,
    List<Stint> stints,
    double middle,
    double trend,
    Limits ninetyFive,
    Limits ninety,
    Optional<Band> worthwhile,
    Axis values,
    String axisWords,
    String up,
    String mean,
    List<String> said,
    int strong,
    Spoken spoken) {
  /**
   * A level.
   *
   * @param value where it stands on its axis
   * @param words as it is said
   * @param mean of its stints; NaN where none counts
   */
  public record Level(double value, String words, double mean) {}

  /**
   * A stint.
   *
   * @param level index of its level
   * @param value what was recorded, the day's drift removed
   */
  public record Stint(int level, double value) {}

  /** Checks the levels. */
  public TrendContent {
    levels = List.copyOf(levels);
    stints = List.copyOf(stints);
    said = List.copyOf(said);
    boolean rising = levels.size() > 1;
    for (int i = 1; i < levels.size(); i++) {
      rising &= levels.get(i - 1).value() < levels.get(i).value();
    }
    if (!rising) {
      throw new IllegalArgumentException("A trend goes over two rising levels at least");
    }
  }

  double lowest() {
    return levels.get(0).value();
  }

  double highest() {
    return levels.get(levels.size() - 1).value();
  }

  /** Where a line of some difference stands over a place of the level axis. */
  double line(double difference, double level) {
    double mean = levels.stream().mapToDouble(Level::value).average().orElseThrow();
    return middle + difference * (level - mean) / (highest() - lowest());
  }
}
