package blindlap.wording;

import blindlap.wording.day.Words;
import java.util.ArrayList;
import java.util.List;

/** Words of a day without a helper. */
public final class AloneWords {
  private static final Words WORDS = Words.of("mount");

  private AloneWords() {}

  /** A sentence of the bundle. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** The steps where the plan names none, or they may not be told apart. */
  public static List<String> steps() {
    List<String> steps = new ArrayList<>();
    for (int i = 1; WORDS.has("step." + i); i++) {
      steps.add(WORDS.say("step." + i));
    }
    return steps;
  }
}
