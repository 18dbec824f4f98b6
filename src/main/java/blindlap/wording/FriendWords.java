package blindlap.wording;

import blindlap.wording.day.Words;

/** Words of what a friend does beforehand, and of masked labels on the pages. */
public final class FriendWords {
  private static final Words WORDS = Words.of("masks");

  private FriendWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** "X is on Shock K". */
  public static String on(String label, String setup) {
    return say("on", label, setup);
  }
}
