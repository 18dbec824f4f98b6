package blindlap.wording;

import blindlap.wording.day.Words;

/** The words of the one-stint view. */
public final class OneStintWords {
  private static final Words WORDS = Words.of("onestint");

  private OneStintWords() {}

  /** Words of this view's bundle. */
  public static String say(String key, Object... details) {
    return WORDS.say(key, details);
  }

  /** What the entry of a broken blind says if the rider saw. */
  public static String broken(String name) {
    return say("broken", name);
  }
}
