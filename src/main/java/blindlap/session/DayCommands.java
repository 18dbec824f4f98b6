package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.Guess;
import blindlap.session.day.LapId;
import blindlap.session.day.LapInput;
import blindlap.session.day.LapState;
import blindlap.session.day.Source;
import blindlap.session.day.Step;
import blindlap.session.day.VoidEvent;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Decides what may be recorded on the day. Each method answers facts, or why not. */
public final class DayCommands {
  private final SessionState state;
  private final Plan plan;
  private final boolean unseen;

  public DayCommands(SessionState state) {
    this(state, false);
  }

  private DayCommands(SessionState state, boolean unseen) {
    this.state = state;
    this.plan = state.plan();
    this.unseen = unseen;
  }

  /**
   * The same for somebody who had no state before him when he said it, as on a phone without
   * signal: what he says replaces nothing that he had not seen, so that nothing is refused for its
   * sake.
   */
  public DayCommands unseen() {
    return new DayCommands(state, true);
  }

  private List<Problem> overTwo(Fact fact) {
    return unseen ? List.of() : new TwoValues(state).refuse(fact);
  }

  /**
   * Records laps, all or none.
   *
   * @param laps what was ridden, in the order of the file
   * @param source where the values come from
   */
  public Outcome record(List<LapInput> laps, Source source) {
    return record(laps, source, false);
  }

  /**
   * Records laps from paper: of laps that are ridden already, the answers that were left open; all
   * or none.
   */
  public Outcome recordWithOpen(List<LapInput> laps) {
    return record(laps, Source.PAPER, true);
  }

  private Outcome record(List<LapInput> laps, Source source, boolean withOpen) {
    List<Problem> problems = new ArrayList<>(mayRecord());
    if (!problems.isEmpty()) {
      return new Outcome.Refused(problems);
    }
    Map<LapId, String> seen = new HashMap<>();
    List<Fact> facts = new ArrayList<>();
    for (LapInput lap : laps) {
      List<Problem> twice = twice(lap, seen);
      if (!twice.isEmpty()) {
        problems.addAll(twice);
        continue;
      }
      List<Problem> here = check(lap, source);
      boolean open = withOpen && addsOnly(lap);
      if (here.isEmpty() && state.day().ridden(lap.lap()) && !open) {
        here = List.of(Problem.of(SessionFault.LAP_TWICE, lap.where(), number(lap.lap())));
      }
      problems.addAll(here);
      if (here.isEmpty()) {
        addFacts(lap, source, facts);
      }
    }
    return accepted(problems, facts, seen);
  }

  /** All of it or nothing, once the trials of a telling run let it be said, too. */
  private Outcome accepted(List<Problem> problems, List<Fact> facts, Map<LapId, String> places) {
    List<Problem> all =
        problems.isEmpty() ? new TrialRules(state).refuse(facts, places) : List.copyOf(problems);
    return all.isEmpty() ? new Outcome.Accepted(facts) : new Outcome.Refused(all);
  }

  /**
   * Records laps again where values were mistyped; only values that differ become corrections.
   *
   * @param reason why, not blank
   */
  public Outcome correct(List<LapInput> laps, String reason) {
    return correct(laps, reason, TwoValues.Decider.NOBODY);
  }

  /**
   * The same.
   *
   * @param decider who decides where two machines recorded different values
   */
  public Outcome correct(List<LapInput> laps, String reason, TwoValues.Decider decider) {
    List<Problem> problems = new ArrayList<>(reviewOpen());
    if (reason.isBlank()) {
      problems.add(Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.CORRECTION));
    }
    if (!problems.isEmpty()) {
      return new Outcome.Refused(problems);
    }
    Map<LapId, String> seen = new HashMap<>();
    List<Fact> facts = new ArrayList<>();
    for (LapInput lap : laps) {
      List<Problem> here = new ArrayList<>(twice(lap, seen));
      if (here.isEmpty()) {
        here.addAll(check(lap, Source.FILE));
      }
      problems.addAll(here);
      LapState known = state.lap(lap.lap()).orElse(null);
      if (here.isEmpty() && (known == null || !known.ridden())) {
        problems.add(Problem.of(SessionFault.LAP_NOT_RIDDEN, lap.where(), number(lap.lap())));
      } else if (here.isEmpty() && known != null) {
        problems.addAll(new Uncorrected(state).problems(lap, known));
        problems.addAll(corrections(lap, known, reason, decider, facts));
      }
    }
    return accepted(problems, facts, seen);
  }

  /** A lap that stands twice in one file: which of the two was meant is not for us to guess. */
  private List<Problem> twice(LapInput lap, Map<LapId, String> seen) {
    String before = seen.putIfAbsent(lap.lap(), lap.where());
    return before == null
        ? List.of()
        : List.of(
            Problem.of(SessionFault.LAP_TWICE_IN_FILE, lap.where(), number(lap.lap()), before));
  }

  private List<Problem> corrections(
      LapInput lap, LapState known, String reason, TwoValues.Decider decider, List<Fact> facts) {
    List<Problem> problems = new ArrayList<>();
    for (Measure measure : plan.measures()) {
      BigDecimal value = lap.values().get(measure.name());
      BigDecimal before = known.values().get(measure.name());
      boolean same =
          value == null ? before == null : before != null && value.compareTo(before) == 0;
      if (!same && known.twice().containsKey(measure.name())) {
        problems.addAll(
            new TwoValues(state)
                .problems(
                    lap.lap(), measure.name(), value, reason, decider, lap.where(measure.name())));
        facts.add(TwoValues.chosen(lap.lap(), measure.name(), value, reason, decider));
      } else if (!same) {
        facts.add(new Fact.ScoreCorrected(lap.lap(), measure.name(), value, reason));
      }
    }
    facts.addAll(new CovariateCommands(state).corrections(lap, reason));
    if (!lap.note().isBlank() && !lap.note().equals(known.note())) {
      facts.add(new Fact.NoteWritten(lap.lap(), lap.note()));
    }
    String reasonOfVoid = lap.voidReason();
    if (reasonOfVoid != null && !reasonOfVoid.isBlank() && known.voided().isEmpty()) {
      VoidEvent.parse(reasonOfVoid)
          .ifPresent(event -> facts.add(new Fact.LapVoided(lap.lap(), event, "", valuesSeen())));
    }
    return problems;
  }

  /** Takes a value out, with a reason. */
  public Outcome takeOut(LapId lap, String measure, String reason) {
    Fact out = new Fact.ScoreCorrected(lap, measure, null, reason);
    List<Problem> problems = new ArrayList<>(reviewOpen());
    problems.addAll(new TwoValues(state).refuse(out));
    plan.measure(measure)
        .filter(known -> !known.timing().by().asked())
        .ifPresent(known -> problems.add(Problem.of(SessionFault.RECORDING_GIVES, "", measure)));
    if (reason.isBlank()) {
      problems.add(Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.CORRECTION));
    }
    return outcome(problems, out);
  }

  private List<Problem> check(LapInput lap, Source source) {
    List<Problem> problems = new ArrayList<>(mayExist(lap.lap(), lap.where()));
    problems.addAll(new CovariateCommands(state).problems(lap, source));
    for (Map.Entry<String, BigDecimal> value : lap.values().entrySet()) {
      problems.addAll(
          ValueCheck.problems(plan, value.getKey(), value.getValue(), lap.where(value.getKey())));
      problems.addAll(ValueCheck.scoredLater(state, value.getKey(), lap.where(value.getKey())));
    }
    String reason = lap.voidReason();
    if (reason != null && !reason.isBlank() && VoidEvent.parse(reason).isEmpty()) {
      problems.add(Problem.of(SessionFault.NOT_AN_EVENT, lap.where(), reason, events()));
    }
    String guess = lap.guess();
    if (state.covered() && !(blank(guess) && blank(lap.sureness()) && blank(lap.cue()))) {
      problems.add(Problem.of(SessionFault.GUESSES_KNOWING, lap.where()));
    } else if (guess != null && !guess.isBlank() && GuessWords.parse(plan, guess).isEmpty()) {
      problems.add(GuessWords.refused(plan, lap.where(), guess));
    }
    String sure = lap.sureness();
    if (sure != null && !sure.isBlank() && Guess.Sureness.parse(sure).isEmpty()) {
      problems.add(Problem.of(SessionFault.NOT_A_SURENESS, lap.where(), sure));
    }
    return problems;
  }

  /** True if nothing of what was typed stands on the lap's sheet already. */
  private boolean addsOnly(LapInput lap) {
    LapState known = state.lap(lap.lap()).orElse(LapState.untouched(lap.lap()));
    boolean guessed = state.guesses().containsKey(lap.lap().stint());
    return lap.values().keySet().stream().noneMatch(known.values()::containsKey)
        && lap.conditions().keySet().stream().noneMatch(known.conditions()::containsKey)
        && (blank(lap.note()) || known.note().isBlank())
        && new CovariateCommands(state).addsOnly(lap)
        && (blank(lap.guess()) && blank(lap.sureness()) && blank(lap.cue()) || !guessed)
        && blank(lap.voidReason());
  }

  private static boolean blank(@Nullable String typed) {
    return typed == null || typed.isBlank();
  }

  private void addFacts(LapInput lap, Source source, List<Fact> facts) {
    if (!state.day().ridden(lap.lap())) {
      facts.add(new Fact.LapRidden(lap.lap(), source));
    }
    for (Measure measure : plan.measures()) {
      BigDecimal value = lap.values().get(measure.name());
      if (value != null) {
        facts.add(new Fact.ScoreGiven(lap.lap(), measure.name(), value, source));
      }
    }
    facts.addAll(new CovariateCommands(state).facts(lap, source));
    if (!lap.note().isBlank()) {
      facts.add(new Fact.NoteWritten(lap.lap(), lap.note()));
    }
    String reason = lap.voidReason();
    if (reason != null && !reason.isBlank()) {
      VoidEvent event = VoidEvent.parse(reason).orElseThrow();
      facts.add(new Fact.LapVoided(lap.lap(), event, "", valuesSeen()));
    }
    if (!lap.conditions().isEmpty()) {
      facts.add(new Fact.ConditionsNoted(lap.lap(), lap.conditions()));
    }
    if (!blank(lap.guess()) || !blank(lap.sureness()) || !blank(lap.cue())) {
      facts.add(new Fact.GuessGiven(lap.lap().stint(), guess(lap)));
    }
  }

  private Guess guess(LapInput lap) {
    String typed = lap.guess();
    String sure = lap.sureness();
    return new Guess(
        typed == null ? null : GuessWords.parse(plan, typed).map(Guess::setup).orElse(null),
        sure == null ? null : Guess.Sureness.parse(sure).orElse(null),
        lap.cue());
  }

  /** Records one value as it is given on the score sheet; a later one replaces it. */
  public Outcome score(LapId lap, String measure, BigDecimal value, Source source) {
    List<Problem> problems = new ArrayList<>(mayRecord());
    problems.addAll(mayExist(lap, ""));
    problems.addAll(ValueCheck.problems(plan, measure, value, ""));
    Fact given = new Fact.ScoreGiven(lap, measure, value, source);
    problems.addAll(overTwo(given));
    return outcome(problems, given);
  }

  /** Any other fact of the day about a lap: a note, conditions, a watch record, a ridden lap. */
  public Outcome note(LapId lap, Fact fact) {
    List<Problem> problems = new ArrayList<>(mayRecord());
    problems.addAll(mayExist(lap, ""));
    problems.addAll(overTwo(fact));
    return outcome(problems, fact);
  }

  /** A phone may send any number: of levels it may name more than there are ends. */
  private boolean answers(@Nullable Integer guessed) {
    return guessed == null || PlanPlaces.guessed(plan, guessed).isEmpty();
  }

  /** A fact of the day about a stint: a guess, a hand-over, a helper's record, a deviation. */
  public Outcome stint(int stint, Fact fact) {
    List<Problem> problems = new ArrayList<>(mayRecord());
    // Stint 0 is the warm-up: it is handled and handed over like any other.
    boolean warmUp =
        stint == 0 && !(fact instanceof Fact.GuessGiven) && !(fact instanceof Fact.GuessTakenBack);
    if (!warmUp && (stint < 1 || stint > plan.stints())) {
      problems.add(Problem.of(SessionFault.NO_SUCH_STINT, "", stint, plan.stints()));
    }
    if (fact instanceof Fact.GuessGiven && state.covered()) {
      problems.add(Problem.of(SessionFault.GUESSES_KNOWING, ""));
    } else if (fact instanceof Fact.GuessGiven && !plan.asksGuesses()) {
      problems.add(Problem.of(SessionFault.NO_GUESSES, ""));
    } else if (fact instanceof Fact.GuessGiven given && !answers(given.guess().setup())) {
      problems.add(GuessWords.refused(plan, "", GuessWords.number(given.guess())));
    }
    if (fact instanceof Fact.StintHandled && state.helperRecords().containsKey(stint)) {
      problems.add(Problem.of(SessionFault.HANDLED_TWICE, "", stint));
    }
    return outcome(problems, fact);
  }

  /**
   * Declares a lap void.
   *
   * @param reason an event of {@link VoidEvent}, in words
   * @param words what happened; may be empty
   */
  public Outcome voidLap(LapId lap, String reason, String words) {
    List<Problem> problems = new ArrayList<>(reviewOpen());
    problems.addAll(mayExist(lap, ""));
    if (problems.isEmpty() && !state.day().ridden(lap)) {
      problems.add(Problem.of(SessionFault.LAP_NOT_RIDDEN, "", number(lap)));
    }
    if (VoidEvent.parse(reason).isEmpty()) {
      problems.add(Problem.of(SessionFault.NOT_AN_EVENT, "", reason, events()));
    }
    if (state.lap(lap).flatMap(LapState::voided).isPresent()) {
      problems.add(Problem.of(SessionFault.ALREADY_VOID, "", number(lap)));
    }
    return problems.isEmpty()
        ? accepted(
            problems,
            List.of(
                new Fact.LapVoided(
                    lap, VoidEvent.parse(reason).orElseThrow(), words, valuesSeen())),
            Map.of())
        : new Outcome.Refused(problems);
  }

  /** Takes a void back. */
  public Outcome withdrawVoid(LapId lap, String reason) {
    List<Problem> problems = new ArrayList<>(reviewOpen());
    if (state.lap(lap).flatMap(LapState::voided).isEmpty()) {
      problems.add(Problem.of(SessionFault.NOT_VOID, "", number(lap)));
    }
    if (reason.isBlank()) {
      problems.add(Problem.of(SessionFault.REASON_MISSING, "", ReasonFor.VOID_WITHDRAWN));
    }
    return outcome(problems, new Fact.VoidWithdrawn(lap, reason));
  }

  private Outcome outcome(List<Problem> problems, Fact fact) {
    return accepted(problems, List.of(fact), Map.of());
  }

  private boolean valuesSeen() {
    return state.step() == Step.DAY_CLOSED;
  }

  private List<Problem> mayRecord() {
    List<Problem> problems = reviewOpen();
    if (problems.isEmpty() && !state.step().day()) {
      return List.of(Problem.of(SessionFault.RECORDING_IS_OVER, "", state.step()));
    }
    return problems;
  }

  private List<Problem> reviewOpen() {
    return ReviewOver.problems(state);
  }

  private List<Problem> mayExist(LapId lap, String where) {
    if (lap.stint() > plan.stints() || lap.lap() > plan.laps().perStint()) {
      return List.of(Problem.of(SessionFault.NO_SUCH_LAP, where, number(lap), plan.lapsOfDay()));
    }
    int last = state.day().lastStint();
    if (lap.stint() > last) {
      return List.of(Problem.of(SessionFault.AFTER_CUT_SHORT, where, number(lap), last));
    }
    return List.of();
  }

  private int number(LapId lap) {
    return lap.ofDay(plan.laps().perStint());
  }

  private static String events() {
    return String.join(
        ", ", java.util.Arrays.stream(VoidEvent.values()).map(VoidEvent::text).toList());
  }
}
