package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.TellingRun;
import blindlap.session.day.LapId;
import blindlap.session.day.LapState;
import blindlap.session.day.Trial;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What may be said of the trials of a telling run (docs/method.md#telling-runs): one answer a
 * trial, forced, after all its laps; void before its answer or not at all. Whoever could void
 * trials after the answer would drop the unsure ones, and the share that is really told would rise.
 * An answer that is taken back before its lap is done, as after a slip of the finger, was none.
 */
final class TrialRules {
  private final SessionState state;
  private final Set<LapId> ridden = new HashSet<>();
  private final Set<Integer> voided = new HashSet<>();
  private final Set<Integer> answered = new HashSet<>();

  /** Trials of which the facts at hand say both a void and an answer, each told once. */
  private final Set<Integer> both = new HashSet<>();

  private final Set<Integer> voidedHere = new HashSet<>();
  private final Set<Integer> answeredHere = new HashSet<>();

  TrialRules(SessionState state) {
    this.state = state;
    for (LapState lap : state.laps()) {
      if (lap.ridden()) {
        ridden.add(lap.id());
      }
    }
    for (Trial trial : Trial.of(state.day())) {
      trial.voided().ifPresent(event -> voided.add(trial.number()));
      if (trial.answer().isPresent() || state.everAnswered(trial.last())) {
        answered.add(trial.number());
      }
    }
  }

  /**
   * What is wrong with facts of a telling run, said together; nothing of other sessions.
   *
   * @param places where each lap stands, if they were typed
   */
  List<Problem> refuse(List<Fact> facts, Map<LapId, String> places) {
    TellingRun run = state.plan().telling();
    if (run == null) {
      return List.of();
    }
    for (Fact fact : facts) {
      if (fact instanceof Fact.LapRidden lap) {
        ridden.add(lap.lap());
      }
    }
    List<Problem> problems = new ArrayList<>();
    for (Fact fact : facts) {
      refuse(run, fact)
          .map(problem -> new Problem(problem.fault(), place(fact, places), problem.details()))
          .ifPresent(problems::add);
    }
    return problems;
  }

  private static String place(Fact fact, Map<LapId, String> places) {
    if (fact instanceof Fact.GuessGiven given) {
      return places.getOrDefault(new LapId(given.stint(), 1), "");
    }
    return fact instanceof Fact.LapVoided lap ? places.getOrDefault(lap.lap(), "") : "";
  }

  private Optional<Problem> refuse(TellingRun run, Fact fact) {
    if (fact instanceof Fact.GuessGiven given) {
      return answer(run, given);
    } else if (fact instanceof Fact.LapVoided lap) {
      return spoiled(run.trial(lap.lap().stint()));
    } else if (fact instanceof Fact.VoidWithdrawn lap) {
      return counted(run, run.trial(lap.lap().stint()));
    }
    return Optional.empty();
  }

  private Optional<Problem> answer(TellingRun run, Fact.GuessGiven given) {
    int trial = run.trial(given.stint());
    boolean ends = given.stint() == run.lastStint(trial);
    if (ends && voidedHere.contains(trial)) {
      return both(trial);
    }
    if (ends && voided.contains(trial)) {
      return Optional.of(Problem.of(SessionFault.TRIAL_IS_VOID, "", trial));
    }
    Optional<Problem> place = TrialPlaces.answer(run, given.stint(), given.guess());
    if (place.isPresent()) {
      return place;
    }
    // The last lap may be in hand: its sheet asks before it is done, and counts once it is.
    int last = run.lastStint(trial);
    int wanted = state.day().handedOver(last) ? last - 1 : last;
    for (int stint = run.firstStint(trial); stint <= wanted; stint++) {
      if (!ridden.contains(new LapId(stint, 1))) {
        return Optional.of(Problem.of(SessionFault.TRIAL_NOT_RIDDEN, "", trial, stint));
      }
    }
    answered.add(trial);
    answeredHere.add(trial);
    return Optional.empty();
  }

  private Optional<Problem> spoiled(int trial) {
    if (answeredHere.contains(trial)) {
      return both(trial);
    }
    if (answered.contains(trial)) {
      return Optional.of(Problem.of(SessionFault.TRIAL_IS_ANSWERED, "", trial));
    }
    voided.add(trial);
    voidedHere.add(trial);
    return Optional.empty();
  }

  /** Typed at one time, so that nobody can say which of the two was there first. */
  private Optional<Problem> both(int trial) {
    return both.add(trial)
        ? Optional.of(Problem.of(SessionFault.TRIAL_VOID_AND_ANSWERED, "", trial))
        : Optional.empty();
  }

  /** A void trial counts again only while the run has not gone on. */
  private Optional<Problem> counted(TellingRun run, int trial) {
    int after = run.lastStint(trial) + 1;
    boolean gone =
        !state.step().day()
            || ridden.stream().anyMatch(lap -> lap.stint() >= after)
            || state.handedOver() >= after;
    return gone ? Optional.of(Problem.of(SessionFault.TRIAL_GONE_BY, "", trial)) : Optional.empty();
  }
}
