package blindlap.plan;

import java.util.List;

/** Checks of the looks that a plan declares before its end (docs/method.md#looks). */
final class LooksCheck {
  /** The end is always one more. */
  static final int MOST = 3;

  /** A shorter day has too little to save, and too few orders to tell apart early. */
  static final int LEAST_STINTS = 20;

  private final Plan plan;
  private final FoundProblems problems;

  LooksCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  /** Looks as they stand in files: "16, 20". */
  static String text(List<Integer> looks) {
    return String.join(", ", looks.stream().map(String::valueOf).toList());
  }

  void all() {
    List<Integer> looks = plan.looks();
    if (looks.isEmpty()) {
      return;
    }
    if (plan.kind() == Plan.Kind.STEPS_DAY) {
      problems.add(PlanFault.STEPS_WITH_LOOKS, "looks");
    } else if (plan.kind() == Plan.Kind.TELLING_RUN) {
      problems.add(PlanFault.TELLING_WITH_LOOKS, "looks");
    } else if (plan.kind() != Plan.Kind.COMPARISON || plan.setups().size() != 2) {
      problems.add(PlanFault.LOOKS_TWO_SETUPS, "looks");
    } else if (plan.series() != null) {
      problems.add(PlanFault.LOOKS_IN_SERIES, "looks");
    } else if (!plan.covariates().isEmpty()) {
      problems.add(PlanFault.LOOKS_WITH_COVARIATES, "looks");
    } else if (plan.stints() < LEAST_STINTS) {
      problems.add(PlanFault.LOOKS_SHORT_DAY, "looks", plan.stints(), LEAST_STINTS);
    } else if (looks.size() > MOST) {
      problems.add(PlanFault.LOOKS_TOO_MANY, "looks", looks.size(), MOST);
    } else if (plan.rule().block() >= plan.stints()) {
      problems.add(PlanFault.LOOKS_ONE_BLOCK, "looks");
    } else {
      int before = 0;
      for (int look : looks) {
        each(look, before);
        before = look;
      }
    }
  }

  private void each(int look, int before) {
    int block = plan.rule().block();
    if (look < 1 || look >= plan.stints()) {
      problems.add(PlanFault.LOOK_RANGE, "looks", look, plan.stints());
    } else if (look <= before) {
      problems.add(PlanFault.LOOKS_ORDER, "looks", look, before);
    } else if (block > 0 && look % block != 0) {
      int whole = Math.max(block, look - look % block);
      problems.add(PlanFault.LOOK_INSIDE_BLOCK, "looks", look, block, whole);
    }
  }
}
