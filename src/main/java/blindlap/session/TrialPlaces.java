package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.TellingRun;
import blindlap.session.day.Guess;
import java.util.Optional;

/**
 * Whether a telling run has a place for an answer: at the end of a trial, naming one of its laps.
 */
final class TrialPlaces {
  private TrialPlaces() {}

  /** An answer in the wrong place, or that names no lap, whatever was ridden. */
  static Optional<Problem> answer(TellingRun run, int stint, Guess guess) {
    int trial = run.trial(stint);
    if (stint != run.lastStint(trial)) {
      return Optional.of(
          Problem.of(SessionFault.ANSWER_BEFORE_LAST, "", stint, trial, run.lastStint(trial)));
    }
    Integer named = guess.setup();
    int first = run.task().firstNamed();
    int last = run.task().laps();
    if (named == null) {
      return Optional.of(Problem.of(SessionFault.ANSWER_FORCED, "", trial, first, last));
    }
    return named < first - 1 || named >= last
        ? Optional.of(Problem.of(SessionFault.NOT_A_LAP_OF_TRIAL, "", named + 1, first, last))
        : Optional.empty();
  }
}
