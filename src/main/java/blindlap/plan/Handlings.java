package blindlap.plan;

/**
 * How often parts are handled: before the warm-up laps if there are any, and before every stint,
 * because dummy swaps wear bolts too.
 *
 * @param day handlings of the whole day
 * @param perSetup handlings before stints of one setup; every setup has equally many. The levels of
 *     one setting are one setup; of a telling run between two it is the most that could fall to one
 * @param perSetupAtMost the same with the warm-up handling, which falls to a setup drawn apart
 */
public record Handlings(int day, int perSetup, int perSetupAtMost) {
  /** The handlings of a plan; a noise run has one setup. */
  public static Handlings of(Plan plan) {
    int warmUp = plan.laps().warmUp() > 0 ? 1 : 0;
    boolean onePart = plan.kind() == Plan.Kind.STEPS_DAY || plan.oneSetting() != null;
    TellingRun telling = plan.telling();
    if (telling != null && !onePart) {
      int each = telling.perSetupAtMost();
      return new Handlings(plan.stints() + warmUp, each, each + warmUp);
    }
    int setups = onePart ? 1 : Math.max(1, plan.setups().size());
    int each = (plan.stints() + setups - 1) / setups;
    return new Handlings(plan.stints() + warmUp, each, each + warmUp);
  }
}
