package blindlap.plan;

/** Checks of a steps day (docs/method.md#steps-day): its levels, and what it cannot have. */
final class StepsCheck {
  /** Where it stands in a plan. */
  static final String STEPS_DAY = "steps_day";

  private final Plan plan;
  private final FoundProblems problems;

  StepsCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  void all() {
    StepsDay steps = plan.steps();
    if (plan.kind() != Plan.Kind.STEPS_DAY) {
      if (steps != null) {
        problems.add(PlanFault.STEPS_UNASKED, STEPS_DAY, PlanJson.word(plan.kind()));
      }
      return;
    }
    refused();
    if (steps == null) {
      problems.add(PlanFault.STEPS_MISSING, STEPS_DAY);
      return;
    }
    new LevelsCheck(plan, steps, STEPS_DAY, problems).all(this::number);
  }

  private boolean number(int levels) {
    boolean right = levels >= StepsDay.FEWEST && levels <= StepsDay.MOST;
    if (!right) {
      problems.add(
          PlanFault.LEVELS_RANGE, STEPS_DAY + ".levels", levels, StepsDay.FEWEST, StepsDay.MOST);
    }
    return right;
  }

  /** What belongs to a comparison of setups and has no meaning along one setting. */
  private void refused() {
    if (plan.change() == ChangeMethod.TWO_BIKES) {
      problems.add(PlanFault.STEPS_TWO_BIKES, "change");
    }
    if (plan.series() != null) {
      problems.add(PlanFault.STEPS_IN_SERIES, "series");
    }
    BlindLevel level = plan.blinding().level();
    if (level != BlindLevel.HELPER) {
      problems.add(PlanFault.STEPS_NEED_HELPER, "blinding.level", PlanJson.word(level));
    }
  }
}
