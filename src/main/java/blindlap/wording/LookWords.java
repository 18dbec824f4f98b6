package blindlap.wording;

import blindlap.plan.Plan;
import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** What people read of a look before the end of a day: nothing of sign, size or p. */
public final class LookWords {
  private static final Words WORDS = Words.of("look");

  private LookWords() {}

  /** "Ride on." or "You may stop: it is settled that they differ.", as the helper reads it. */
  public static String outcome(boolean settled) {
    return WORDS.say(settled ? "settled" : "ride.on");
  }

  /**
   * The answer of a look with what comes next.
   *
   * @param again true if it was taken before
   */
  public static List<String> taken(Plan plan, int stint, boolean settled, boolean again) {
    List<String> lines = new ArrayList<>();
    lines.add(WORDS.say(again ? "taken.again" : "taken", stint));
    lines.add(outcome(settled));
    lines.add(WORDS.say(settled ? "settled.next" : "ride.on.next", plan.stints()));
    return lines;
  }

  /** What the last look said, in one line. */
  public static String last(int stint, boolean settled) {
    return WORDS.say("last", stint, outcome(settled));
  }

  /** A sentence by its key. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }
}
