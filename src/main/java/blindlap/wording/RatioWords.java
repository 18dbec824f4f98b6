package blindlap.wording;

import blindlap.stats.compare.CountRatio;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.List;

/** The ratio of counts in a sentence. */
final class RatioWords {
  private static final Words WORDS = Words.of("finding");

  private RatioWords() {}

  /**
   * "Shock L against Shock K: 1.40 times as many".
   *
   * @param byName true for a null run, where the names alone differ
   */
  static String said(List<String> setups, CountRatio ratio, boolean byName) {
    String line =
        WORDS.say(
            "ratio",
            setups.get(0),
            setups.get(1),
            Figures.number(ratio.ratio(), 2),
            bound(ratio.interval95().low(), false),
            bound(ratio.interval95().high(), true));
    return byName ? ByName.lines(List.of(line)).get(0) : line;
  }

  private static String bound(double ratio, boolean upper) {
    if (Double.isNaN(ratio) || Double.isInfinite(ratio)) {
      return WORDS.say(upper ? "ratio.no.upper" : "ratio.no.lower");
    }
    return Figures.outward(ratio, 2, upper, 1);
  }
}
