package blindlap.session;

import blindlap.fault.Problem;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import java.util.Optional;

/** Whether a plan has the stint or setup that an entry is about. */
final class PlanPlaces {
  private PlanPlaces() {}

  /** Stint 0 is the warm-up. */
  static Optional<Problem> stint(Plan plan, int stint) {
    return stint < 0 || stint > plan.stints()
        ? Optional.of(Problem.of(MeaningFault.NO_SUCH_STINT, "", stint, plan.stints()))
        : Optional.empty();
  }

  /** Laps of stints, both from 1. */
  static Optional<Problem> lap(Plan plan, LapId lap) {
    int perStint = plan.laps().perStint();
    return lap.stint() < 1 || lap.lap() < 1 || lap.stint() > plan.stints() || lap.lap() > perStint
        ? Optional.of(
            Problem.of(
                MeaningFault.NO_SUCH_LAP, "", lap.stint(), lap.lap(), plan.stints(), perStint))
        : Optional.empty();
  }

  /** Answers to "what was on" from 0: setups, or the ends of a steps day. */
  static Optional<Problem> guessed(Plan plan, int answer) {
    return place(answer, GuessWords.answers(plan));
  }

  /** Setups from 0. */
  static Optional<Problem> setup(Plan plan, int setup) {
    return place(setup, plan.setups().size());
  }

  private static Optional<Problem> place(int setup, int setups) {
    return setup < 0 || setup >= setups
        ? Optional.of(Problem.of(MeaningFault.NO_SUCH_SETUP, "", setup + 1, setups))
        : Optional.empty();
  }
}
