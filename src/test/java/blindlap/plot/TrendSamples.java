package blindlap.plot;

import blindlap.plot.surface.Spoken;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/** Invented steps days of one setting. */
final class TrendSamples {
  private TrendSamples() {}

  static Map<String, LevelsAndTrend> all() {
    Map<String, LevelsAndTrend> all = new TreeMap<>();
    all.put("trend-real", trend(new double[] {4, 7, 10, 13}, 2.6, 0.8, 0.9, true));
    all.put("trend-falling", trend(new double[] {4, 7, 10, 13}, -2.6, 0.8, 0.9, true));
    all.put("trend-flat", trend(new double[] {8, 10, 14}, 0.2, 1.6, 0.8, true));
    all.put("trend-six-uneven", trend(new double[] {1, 2, 4, 7, 11, 16}, -1.1, 0.6, 0.7, true));
    all.put("trend-no-worthwhile", trend(new double[] {20, 22, 24}, 0.9, 0.7, 0.8, false));
    all.put("trend-unbounded", unbounded());
    return all;
  }

  private static LevelsAndTrend unbounded() {
    Limits none = new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    return LevelsAndTrend.of(content(new double[] {5, 6, 7}, 0.6, none, none, 0.5, true));
  }

  private static LevelsAndTrend trend(
      double[] levels, double trend, double half, double noise, boolean matters) {
    return LevelsAndTrend.of(
        content(
            levels,
            trend,
            new Limits(trend - half, trend + half),
            new Limits(trend - 0.8 * half, trend + 0.8 * half),
            noise,
            matters));
  }

  private static TrendContent content(
      double[] at, double trend, Limits wide, Limits narrow, double noise, boolean matters) {
    Random random = new Random(3);
    double mean = java.util.Arrays.stream(at).average().orElseThrow();
    double span = at[at.length - 1] - at[0];
    List<TrendContent.Stint> stints = new ArrayList<>();
    List<TrendContent.Level> levels = new ArrayList<>();
    for (int level = 0; level < at.length; level++) {
      double sum = 0;
      for (int i = 0; i < 4; i++) {
        double y = 95 + trend * (at[level] - mean) / span + noise * 0.5 * random.nextGaussian();
        stints.add(new TrendContent.Stint(level, y));
        sum += y / 4;
      }
      levels.add(
          new TrendContent.Level(at[level], String.format(Locale.ROOT, "%.0f", at[level]), sum));
    }
    return new TrendContent(
        levels,
        stints,
        95,
        trend,
        wide,
        narrow,
        matters
            ? Optional.of(
                new Band(
                    0.8, List.of("flatter than 0.8 s", "from end to end:", "too small to matter")))
            : Optional.empty(),
        new Axis(
            "lap time",
            Axis.Counting.CLOCK,
            (value, step) -> String.format(Locale.ROOT, "%d:%04.1f", (int) value / 60, value % 60)),
        "rebound, clicks from closed; all stints, the day's drift removed",
        "slower",
        "mean",
        List.of(
            "2.6 s from", "4 to 13 clicks", "thin 95 %: 1.8 to 3.5 s", "grey 90 %: 1.9 to 3.3 s"),
        2,
        new Spoken("A trend over levels.", ""));
  }

  /** Stints of another measure over four uneven levels. */
  static SmallLevels small() {
    Random random = new Random(5);
    List<Double> levels = List.of(2.0, 4.0, 7.0, 11.0);
    List<SmallLevels.Stint> stints = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      double level = levels.get(i % levels.size());
      stints.add(new SmallLevels.Stint(level, 14 + 0.1 * level + 0.3 * random.nextGaussian()));
    }
    return SmallLevels.of(levels, stints, new Spoken("Upper sector, every stint.", ""));
  }

  /** Eighteen guesses of the nearer end, some right; the middle level is nearer to neither. */
  static GuessedEnds guesses() {
    List<GuessedEnds.Stint> stints = new ArrayList<>();
    for (int i = 0; i < 18; i++) {
      GuessedEnds.Guess guess = GuessedEnds.Guess.values()[(i * 5 + i / 4) % 3];
      stints.add(new GuessedEnds.Stint(i + 1, (i * 7 + i / 5) % 5 / 4.0, guess));
    }
    return GuessedEnds.of(
        new GuessedEnds.Content(
            stints,
            "level",
            "guess",
            "low",
            "high",
            "?",
            new Spoken("Guesses of the end that the level was nearer to.", "")));
  }
}
