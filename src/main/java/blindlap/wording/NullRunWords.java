package blindlap.wording;

import blindlap.plan.Setup;
import blindlap.review.Comparison;
import blindlap.review.DayRecord;
import blindlap.wording.day.Words;
import java.util.List;

/**
 * The answer of a day in words that fit what was ridden: in a null run one setup was on under all
 * names, so that neither was quicker than the other.
 */
public final class NullRunWords {
  private static final Words WORDS = FindingWords.WORDS;

  private NullRunWords() {}

  /** What stands before every answer of a null run; empty for any other day. */
  static String label(DayRecord day) {
    String key = day.plan().setups().size() > 2 ? "headline.null.many" : "headline.null";
    return day.nullRun() ? WORDS.say(key) : "";
  }

  /** The headline of a comparison that has a verdict. */
  public static Headline headline(DayRecord day, FindingWords words) {
    return day.nullRun() ? new Headline("", words.phrase(), after(day, words)) : words.headline();
  }

  /** The headline before everything that stands beside it is worked out, with its level. */
  public static Headline early(DayRecord day, Comparison primary) {
    return headline(day, new FindingWords(day.plan(), primary))
        .with(LevelWords.label(day.plan().level()), "");
  }

  static String sentence(DayRecord day, FindingWords words) {
    return day.nullRun() ? words.phrase() + after(day, words) : words.sentence();
  }

  static String lead(DayRecord day, FindingWords words) {
    return day.nullRun() ? WORDS.say("null.lead") : words.lead();
  }

  /** A measure in one sentence. */
  public static String plain(DayRecord day, FindingWords words, String measure) {
    return day.nullRun() ? measure + after(day, words) : words.plain();
  }

  /** The difference in one sentence, with no more than is shown. */
  public static String careful(DayRecord day, FindingWords words) {
    return day.nullRun() ? said("null.careful", day, words) : words.careful();
  }

  /** The difference for a plot. */
  public static String shortDifference(DayRecord day, FindingWords words) {
    return day.nullRun() ? words.signed() : words.shortDifference();
  }

  private static String after(DayRecord day, FindingWords words) {
    return said("null.names", day, words);
  }

  private static String said(String key, DayRecord day, FindingWords words) {
    List<String> setups = day.plan().setups().stream().map(Setup::name).toList();
    return WORDS.say(key, setups.get(1), setups.get(0), words.signed(), words.signedInterval(0.95));
  }
}
