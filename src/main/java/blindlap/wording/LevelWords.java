package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.wording.day.Words;

/** The blind levels in words: what each is called, proves, needs, and lets a finding say. */
public final class LevelWords {
  static final Words WORDS = Words.of("levels");

  private LevelWords() {}

  /** "drawn as you go". */
  public static String name(BlindLevel level) {
    return WORDS.say("name." + level.name());
  }

  /** What stands before an answer; empty with a helper. */
  public static String label(BlindLevel level) {
    return WORDS.say("label." + level.name());
  }

  /** What it proves: what is left besides the hardware. */
  public static String proves(BlindLevel level) {
    return WORDS.say("proves." + level.name());
  }

  /** What it takes. */
  public static String needs(BlindLevel level) {
    return WORDS.say("needs." + level.name());
  }

  /** What a finding may then say. */
  public static String mayBeSaid(BlindLevel level) {
    return WORDS.say("words." + level.name());
  }
}
