package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.Step;
import java.util.Optional;

/** Words of the window's frame and of the Notebook page. */
public final class NotebookWords {
  private static final Words WORDS = Words.of("notebook");
  private static final Words STEPS = Words.of("steps");

  private NotebookWords() {}

  /** A sentence of the page. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** The word of a step. */
  public static String step(Step step) {
    return STEPS.say(step.name());
  }

  /** "R. Lind, Quarry loop, 16 stints; matters from 0.5 s". */
  public static String facts(Plan plan) {
    Optional<Measure> primary = plan.primary().filter(m -> m.worthwhile() != null);
    return primary
        .map(
            m ->
                WORDS.say(
                    "facts.worthwhile",
                    plan.rider(),
                    plan.trail(),
                    plan.stints(),
                    java.util.Objects.requireNonNull(m.worthwhile()).toPlainString(),
                    m.unit()))
        .orElseGet(() -> WORDS.say("facts", plan.rider(), plan.trail(), plan.stints()));
  }
}
