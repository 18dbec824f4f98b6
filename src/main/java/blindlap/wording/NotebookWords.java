package blindlap.wording;

import blindlap.plan.BlindLevel;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.review.Comparison;
import blindlap.review.TellingFinding;
import blindlap.session.SessionSummary;
import blindlap.session.day.Step;
import blindlap.stats.compare.Verdict;
import blindlap.wording.day.Figures;
import blindlap.wording.day.Words;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Words of the window's frame and of the Notebook page. */
public final class NotebookWords {
  private static final Words WORDS = Words.of("notebook");
  private static final Words STEPS = Words.of("steps");

  /** Parts a verdict from the words on its series; no sentence has a line end. */
  private static final char SERIES = '\n';

  private NotebookWords() {}

  /** A sentence of the page. */
  public static String say(String key, Object... arguments) {
    return WORDS.say(key, arguments);
  }

  /** The word of a step; where the rider swaps alone nothing was sealed that could be unsealed. */
  public static String step(BlindLevel level, Step step) {
    return STEPS.say(step == Step.UNSEALED && level.shown() ? "OPENED" : step.name());
  }

  /** True if the bundle has this sentence. */
  public static boolean has(String key) {
    return WORDS.has(key);
  }

  /** "Shock K against Shock L"; noise runs say that they are. */
  public static String title(SessionSummary summary) {
    if (summary.kind() == Plan.Kind.STEPS_DAY) {
      return WORDS.say("title.steps", summary.title());
    }
    if (summary.kind() != Plan.Kind.NOISE_RUN) {
      return summary.title();
    }
    if (isOldDay(summary)) {
      return WORDS.say("title.old");
    }
    return WORDS.say("title.noise", summary.title());
  }

  /** A noise run has one setup; an old day has several, or the one that says so. */
  private static boolean isOldDay(SessionSummary summary) {
    return summary.setups().size() > 1
        || summary.setups().get(0).equals(NoiseWords.say("plain.setup"));
  }

  /** Where a session stands, as lists say it; a finished noise run says what it is for. */
  public static String standing(SessionSummary summary) {
    boolean told =
        summary.kind() == Plan.Kind.NOISE_RUN
            && summary.step().ordinal() >= Step.DAY_CLOSED.ordinal()
            && summary.step() != Step.ABANDONED;
    return told ? WORDS.say("standing.noise") : step(summary.level(), summary.step());
  }

  /** "R. Lind, Quarry loop"; a plan that looks before its end says after which stints. */
  public static String facts(SessionSummary summary) {
    String facts = WORDS.say("facts.short", summary.rider(), summary.trail());
    String looks = looks(summary);
    return looks.isEmpty() ? facts : WORDS.say("facts.looks", facts, looks);
  }

  /** "looks after stint 16"; empty where the plan declares none. */
  public static String looks(SessionSummary summary) {
    return summary.looks().isEmpty() ? "" : WORDS.say("looks", StintList.words(summary.looks()));
  }

  /** A verdict phrase as the list says it: unblinded sessions and null runs are called so. */
  public static String phrase(BlindLevel level, boolean nullRun, String phrase) {
    String called = nullRun ? WORDS.say("verdict.null", phrase) : inList(phrase);
    return level == BlindLevel.HELPER ? called : WORDS.say("verdict.level", level.title(), called);
  }

  /** A list parts a verdict's phrase from the rest by a semicolon. */
  private static String inList(String phrase) {
    return phrase.replace("; ", ", ");
  }

  /** A verdict as the list keeps it: its phrase, the difference as sure as it is, the interval. */
  public static String verdict(Plan plan, boolean nullRun, Comparison comparison, boolean repeat) {
    FindingWords words = new FindingWords(plan, comparison);
    return WORDS.say(
        repeat ? "verdict.repeat" : "verdict",
        phrase(plan.level(), nullRun, words.phrase()),
        difference(plan, nullRun, words),
        nullRun || knew(plan) ? words.signedInterval(0.95) : words.interval(0.95));
  }

  /** The verdict of a telling run as the list keeps it: its phrase, and the count. */
  public static String verdict(Plan plan, TellingFinding finding, boolean repeat) {
    TellingWords words = new TellingWords(finding, TellingNames.of(plan));
    return WORDS.say(
        repeat ? "verdict.telling.repeat" : "verdict.telling",
        phrase(plan.level(), finding.nullRun(), words.phrase()),
        words.counted(),
        words.guessed());
  }

  /**
   * In a null run no setup was quicker, as one was on; where the rider knew, that is said first.
   */
  private static String difference(Plan plan, boolean nullRun, FindingWords words) {
    if (nullRun) {
      return WORDS.say("difference.null", words.signed());
    }
    return knew(plan)
        ? WORDS.say(
            "difference.unblinded",
            plan.setups().get(1).name(),
            plan.setups().get(0).name(),
            words.signed())
        : words.careful();
  }

  private static boolean knew(Plan plan) {
    return plan.level() == BlindLevel.OPEN || plan.level() == BlindLevel.DRAWN;
  }

  /** A verdict as the list keeps it, with where the session stands in its series behind it. */
  public static String withSeries(String verdict, String series) {
    return verdict + SERIES + series;
  }

  /** Where a session stands in its series, as the list keeps it; empty if it does not. */
  public static String series(SessionSummary summary) {
    int at = summary.verdict().indexOf(SERIES);
    return at < 0 ? "" : summary.verdict().substring(at + 1);
  }

  private static String alone(String kept) {
    int at = kept.indexOf(SERIES);
    return at < 0 ? kept : kept.substring(0, at);
  }

  /** The phrase and the rest of a verdict as the list keeps it; the rest may be empty. */
  private static List<String> verdictParts(String kept) {
    String verdict = alone(kept);
    int at = verdict.indexOf("; ");
    return at < 0
        ? List.of(verdict, "")
        : List.of(verdict.substring(0, at), verdict.substring(at + 2));
  }

  /**
   * True if the list keeps a verdict that says no more than its numbers. Notebooks of earlier
   * programs hold a difference that is not shown without calling it a best estimate; such a text is
   * worked out again.
   */
  public static boolean kept(String verdict) {
    if (verdict.isEmpty()) {
      return false;
    }
    List<String> parts = verdictParts(verdict);
    boolean told =
        Stream.of(Verdict.REAL_AND_WORTHWHILE, Verdict.REAL_BUT_SMALL, Verdict.DIRECTION_KNOWN)
            .flatMap(VerdictWords::all)
            .map(NotebookWords::inList)
            .anyMatch(parts.get(0)::endsWith);
    return parts.get(1).isEmpty()
        || parts.get(1).startsWith(WORDS.say("verdict.telling.begins"))
        || alone(verdict).equals(WORDS.say("verdict.none"))
        || told
        || Stream.of("difference.null", "difference.unblinded")
            .anyMatch(key -> parts.get(1).startsWith(WORDS.say(key + ".begins")))
        || parts.get(0).endsWith(FindingWords.WORDS.say("phrase.matters"))
        || parts.get(1).startsWith(FindingWords.WORDS.say("best.alone", "").strip());
  }

  /**
   * How a session ended or where it stands, and what is to be added to that, which may be empty:
   * the difference of a verdict, the reason for abandoning.
   */
  public static List<String> outcome(SessionSummary summary) {
    if (!summary.step().sealed() && !summary.verdict().isEmpty()) {
      List<String> parts = verdictParts(summary.verdict());
      return kept(summary.verdict()) ? parts : List.of(parts.get(0), "");
    }
    return List.of(standing(summary), summary.reason());
  }

  /** What is added to an outcome where it stands alone and begins a sentence. */
  public static String sentence(String detail) {
    return detail.isEmpty()
        ? ""
        : detail.substring(0, 1).toUpperCase(Locale.ROOT) + detail.substring(1);
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
                    Sizes.worthwhile(m)))
        .orElseGet(() -> WORDS.say("facts", plan.rider(), plan.trail(), plan.stints()));
  }
}
