package blindlap.wording;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.SessionSummary;
import blindlap.session.Step;
import java.util.List;
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

  /** True if the bundle has this sentence. */
  public static boolean has(String key) {
    return WORDS.has(key);
  }

  /** "Shock K against Shock L"; noise runs say that they are. */
  public static String title(SessionSummary summary) {
    return summary.kind() == Plan.Kind.NOISE_RUN
        ? WORDS.say("title.noise", summary.title())
        : summary.title();
  }

  /** "R. Lind, Quarry loop". */
  public static String facts(SessionSummary summary) {
    return WORDS.say("facts.short", summary.rider(), summary.trail());
  }

  /** The phrase and the rest of a verdict as the list keeps it; the rest may be empty. */
  public static List<String> verdictParts(String verdict) {
    int at = verdict.indexOf("; ");
    return at < 0
        ? List.of(verdict, "")
        : List.of(verdict.substring(0, at), verdict.substring(at + 2));
  }

  /** How many sessions a search found. */
  public static String found(int found, int all) {
    return found == 0
        ? WORDS.say("found.none")
        : WORDS.say("found", Figures.count(found), Figures.count(all));
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
