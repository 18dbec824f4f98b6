package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.review.Comparison;
import blindlap.stats.compare.HarmTest;
import blindlap.wording.day.Words;
import java.util.List;

/** What came of a measure that is watched for harm, of two setups. */
final class HarmWords {
  private static final Words WORDS = Words.of("finding");

  private final List<String> setups;
  private final Comparison comparison;

  /** True of a null run, where the names alone differ. */
  private final boolean byName;

  HarmWords(List<String> setups, Comparison comparison, boolean byName) {
    this.setups = setups;
    this.comparison = comparison;
    this.byName = byName;
  }

  /** For both setups; nothing where no harm was tested. */
  List<String> lines() {
    return comparison
        .harm()
        .map(h -> List.of(line(1, h.bAgainstA(), h), line(0, h.aAgainstB(), h)))
        .map(lines -> byName ? ByName.lines(lines) : lines)
        .orElse(List.of());
  }

  private String line(int setup, HarmTest.Finding found, HarmTest test) {
    return WORDS.say(
        "harm." + found.name(),
        setups.get(setup),
        setups.get(1 - setup),
        comparison.measure().name(),
        Sizes.worthwhile(comparison.measure()),
        DifferenceWords.p(test.adjusted()));
  }

  /** In the same sentence as the verdict. */
  String inHeadline(int setup) {
    return byName
        ? WORDS.say("headline.harm.null", comparison.measure().name())
        : did(comparison.measure(), setups.get(setup));
  }

  static String did(Measure measure, String setup) {
    return WORDS.say(
        measure.better() == Measure.Better.HIGHER ? "headline.harm.less" : "headline.harm.more",
        setup,
        measure.name(),
        Sizes.worthwhile(measure));
  }
}
