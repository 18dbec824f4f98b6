package blindlap.review;

import blindlap.plan.BlindLevel;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.session.SessionState;
import blindlap.session.day.Step;
import blindlap.stats.compare.Verdict;
import blindlap.stats.tell.TellingVerdict;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The other sessions of a question: what a reader must know to judge how often it was asked, and
 * whether an answer was known when it was asked again (docs/method.md#history).
 *
 * @param past in the order of their commits, by the clocks of their writers
 */
public record QuestionHistory(List<Past> past) {
  /** No other session. */
  public static final QuestionHistory NONE = new QuestionHistory(List.of());

  public QuestionHistory {
    past = List.copyOf(past);
  }

  /** What may be told of a session's finding. */
  public enum Told {
    /** Its key is sealed. */
    SEALED,
    /** Its declared series is not finished, so not even what it was is told. */
    SERIES,
    /** One setup was on throughout, under every name. */
    NULL_RUN,
    /** It is unsealed; its verdict, if it has one, stands beside. */
    FOUND
  }

  /**
   * A session of the question.
   *
   * @param session its id
   * @param day when it was ridden or is to be
   * @param rider as its plan has it
   * @param trail as its plan has it
   * @param step where it stands
   * @param reason why it was abandoned; empty if it was not
   * @param primary name of its primary measure; empty if it has none
   * @param told what may be told of its finding
   * @param verdict empty unless the finding is told and has one
   * @param alike same rider, trail and setups, or setup and setting of a steps day; otherwise it
   *     only asks in the same words
   * @param knownBefore its result was known when the session in hand was committed, or is to be
   * @param level how blind it was
   * @param trend true of a steps day, whose verdict is of its trend
   * @param telling the verdict of a telling run, which has no other
   */
  public record Past(
      String session,
      LocalDate day,
      String rider,
      String trail,
      Step step,
      String reason,
      String primary,
      Told told,
      Optional<Verdict> verdict,
      boolean alike,
      boolean knownBefore,
      BlindLevel level,
      boolean trend,
      Optional<TellingVerdict> telling) {

    /** The verdict's fixed string. */
    public Optional<String> verdictText() {
      return telling
          .map(TellingVerdict::text)
          .or(() -> verdict.map(found -> trend ? found.textOfTrend() : found.text()));
    }
  }

  /** The session whose result was known first, if the one in hand is a repeat after a result. */
  public Optional<Past> repeats() {
    return past.stream().filter(Past::knownBefore).findFirst();
  }

  /**
   * Text as it is compared: surrounding blanks and capitals do not matter, everything else does.
   */
  public static String plain(String words) {
    return words.strip().toLowerCase(Locale.ROOT);
  }

  /**
   * Same rider, same trail, same set of setups by their ids; whatever the primary measure. Steps
   * days ask the same of one setting of one setup, whatever the levels; telling runs at the same
   * levels, however they are typed.
   */
  public static boolean alike(Plan a, Plan b) {
    return plain(a.rider()).equals(plain(b.rider()))
        && plain(a.trail()).equals(plain(b.trail()))
        && compared(a).equals(compared(b));
  }

  /** A steps day and a comparison ask different things, even in the same words. */
  private static boolean sameKind(Plan a, Plan b) {
    return comparison(a) && a.kind() == b.kind();
  }

  private static Set<String> compared(Plan plan) {
    StepsDay setting = plan.oneSetting();
    if (setting == null) {
      return ids(plan);
    }
    Set<String> compared = new HashSet<>();
    compared.add(setting.setupId());
    compared.add("setting " + plain(setting.setting()));
    if (plan.telling() != null) { // whether more can be told apart is another question
      plan.levels()
          .ifPresent(
              at -> at.forEach(level -> compared.add("level " + level.stripTrailingZeros())));
    }
    return compared;
  }

  private static Set<String> ids(Plan plan) {
    return plan.setups().stream().map(Setup::id).collect(Collectors.toSet());
  }

  private static boolean comparison(Plan plan) {
    return plan.kind().drawn();
  }

  /**
   * The history of a plan.
   *
   * @param plan what is asked
   * @param session the committed session of the plan; null for a plan that is about to be committed
   * @param others sessions of any kind; those that ask something else, noise runs and old days are
   *     left out
   * @param hidden true for a session whose series is not finished
   * @param open makes the record of an unsealed session
   */
  public static QuestionHistory of(
      Plan plan,
      @Nullable SessionState session,
      List<SessionState> others,
      Predicate<SessionState> hidden,
      Function<SessionState, DayRecord> open) {
    if (!comparison(plan)) {
      return NONE;
    }
    Instant committed = session == null ? Instant.MAX : session.committedAt();
    boolean declared = plan.series() != null && plan.seriesSessions() != null;
    List<SessionState> sorted = new ArrayList<>(others);
    sorted.sort(
        Comparator.comparing(SessionState::committedAt).thenComparing(state -> state.id().text()));
    List<Past> past = new ArrayList<>();
    for (SessionState other : sorted) {
      boolean self = session != null && other.id().equals(session.id());
      boolean words = plain(other.plan().question()).equals(plain(plan.question()));
      if (!self && sameKind(other.plan(), plan) && (words || alike(other.plan(), plan))) {
        past.add(past(other, alike(other.plan(), plan), !declared, committed, hidden, open));
      }
    }
    return new QuestionHistory(past);
  }

  private static Past past(
      SessionState state,
      boolean alike,
      boolean mayRepeat,
      Instant committed,
      Predicate<SessionState> hidden,
      Function<SessionState, DayRecord> open) {
    Plan plan = state.plan();
    Told told = told(state, hidden, open);
    boolean known =
        SeriesAnalysis.unsealedAt(state).filter(at -> at.isBefore(committed)).isPresent();
    return new Past(
        state.id().text(),
        plan.day(),
        plan.rider(),
        plan.trail(),
        state.step(),
        state.abandonedBecause().orElse(""),
        plan.telling() == null
            ? plan.primary().map(measure -> measure.name()).orElse("")
            : PlanJson.word(plan.telling().task()),
        told,
        told == Told.FOUND && plan.telling() == null
            ? Analysis.verdictOnly(open.apply(state)).flatMap(Comparison::verdict)
            : Optional.empty(),
        alike,
        // What a sealed session or an unfinished series hides, this does not give away either.
        alike && mayRepeat && told == Told.FOUND && known,
        plan.level(),
        plan.steps() != null,
        told == Told.FOUND && plan.telling() != null
            ? Optional.of(TellingAnalysis.finding(open.apply(state)).telling().verdict())
            : Optional.empty());
  }

  private static Told told(
      SessionState state, Predicate<SessionState> hidden, Function<SessionState, DayRecord> open) {
    if (!state.unsealed()) {
      return Told.SEALED;
    }
    if (hidden.test(state)) {
      return Told.SERIES;
    }
    return open.apply(state).nullRun() ? Told.NULL_RUN : Told.FOUND;
  }
}
