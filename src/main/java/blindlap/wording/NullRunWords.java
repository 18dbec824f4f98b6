package blindlap.wording;

import blindlap.plan.Setup;
import blindlap.review.DayRecord;
import blindlap.wording.day.Words;
import java.util.List;

/**
 * The answer of a day in words that fit what was ridden: in a null run one setup was on under both
 * names, so that neither was quicker than the other.
 */
final class NullRunWords {
  private static final Words WORDS = FindingWords.WORDS;

  private NullRunWords() {}

  static Headline headline(DayRecord day, FindingWords words) {
    return day.nullRun() ? new Headline("", words.phrase(), after(day, words)) : words.headline();
  }

  static String sentence(DayRecord day, FindingWords words) {
    return day.nullRun() ? words.phrase() + after(day, words) : words.sentence();
  }

  static String lead(DayRecord day, FindingWords words) {
    return day.nullRun() ? WORDS.say("null.lead") : words.lead();
  }

  private static String after(DayRecord day, FindingWords words) {
    List<String> setups = day.plan().setups().stream().map(Setup::name).toList();
    return WORDS.say(
        "null.names", setups.get(1), setups.get(0), words.signed(), words.signedInterval(0.95));
  }
}
