package blindlap.wording;

import blindlap.session.OneStint;
import blindlap.wording.day.Words;

/** The words of the one-stint view. */
public final class OneStintWords {
  private static final Words WORDS = Words.of("onestint");

  private OneStintWords() {}

  /** Words of this view's bundle. */
  public static String say(String key, Object... details) {
    return WORDS.say(key, details);
  }

  /** To whom what to set for a stint was shown, and whether the rider saw. */
  public static String shown(int stint, OneStint shown) {
    Boolean saw = shown.riderSaw();
    String key = saw == null ? "report.open" : saw ? "report.yes" : "report.no";
    return say("report", shown.name(), stint, say(key));
  }

  /** What the entry of a broken blind says if the rider saw. */
  public static String broken(String name) {
    return say("broken", name);
  }
}
