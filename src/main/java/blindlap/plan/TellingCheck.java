package blindlap.plan;

import blindlap.stats.tell.TrialsPower;
import java.math.BigDecimal;

/** Checks of a telling run: its trials, what is asked, and what such a run cannot have. */
final class TellingCheck {
  /** Where the setting whose two levels are told apart stands in a plan. */
  static final String ONE_SETTING = "telling_run.one_setting";

  private final Plan plan;
  private final FoundProblems problems;

  TellingCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  void all() {
    TellingRun run = plan.telling();
    if (plan.kind() != Plan.Kind.TELLING_RUN) {
      if (run != null) {
        problems.add(PlanFault.TELLING_UNASKED, "telling_run", PlanJson.word(plan.kind()));
      }
      return;
    }
    refused();
    if (run == null) {
      problems.add(PlanFault.TELLING_MISSING, "telling_run");
      return;
    }
    StepsDay setting = run.oneSetting();
    if (setting != null) {
      new LevelsCheck(plan, setting, ONE_SETTING, problems).all(this::two);
    }
    attribute(run);
    rests(run);
    trials(run);
  }

  private boolean two(int levels) {
    if (levels != TellingRun.LEVELS) {
      problems.add(PlanFault.TELLING_TWO_LEVELS, ONE_SETTING + ".levels", levels);
    }
    return levels == TellingRun.LEVELS;
  }

  /** What has no meaning where answers are counted as right or wrong. */
  private void refused() {
    if (plan.setups().size() > 2 && plan.oneSetting() == null) {
      problems.add(PlanFault.TELLING_TWO_SETUPS, "setups", plan.setups().size());
    }
    if (plan.change() == ChangeMethod.TWO_BIKES) {
      problems.add(PlanFault.TELLING_TWO_BIKES, "change");
    }
    if (plan.series() != null) {
      problems.add(PlanFault.TELLING_IN_SERIES, "series");
    }
    if (!plan.covariates().isEmpty()) {
      problems.add(
          PlanFault.TELLING_WITH_COVARIATES, "covariates", plan.covariates().get(0).name());
    }
    plan.measures().stream()
        .filter(measure -> measure.role() != Measure.Role.SECONDARY)
        .findFirst()
        .ifPresent(
            measure ->
                problems.add(
                    PlanFault.TELLING_MEASURE,
                    "measures",
                    measure.name(),
                    PlanJson.word(measure.role())));
    BlindLevel level = plan.blinding().level();
    if (level != BlindLevel.HELPER) {
      problems.add(PlanFault.TELLING_NEEDS_HELPER, "blinding.level", PlanJson.word(level));
    } else if (!plan.blinding().guesses()) {
      problems.add(PlanFault.TELLING_ANSWERS, "blinding.guesses");
    }
    if (plan.laps().settling() != 0 || plan.laps().scored() != 1) {
      problems.add(PlanFault.TELLING_LAPS, "laps", plan.laps().perStint());
    }
  }

  /** Nothing stands between the laps of a trial but what every lap has before it. */
  private void rests(TellingRun run) {
    Timetable table = plan.timetable();
    int every = table == null ? 0 : table.restEvery();
    int laps = run.task().laps();
    if (every > 0 && every % laps != 0) {
      problems.add(PlanFault.TELLING_REST, "timetable.rest_every", every, laps, 4 * laps, 5 * laps);
    }
  }

  private void attribute(TellingRun run) {
    boolean asked = run.task() == TellingTask.TWO_CHOICE;
    if (!asked) {
      String field = run.attribute().isBlank() ? "more" : "attribute";
      if (!run.attribute().isBlank() || !run.more().isBlank()) {
        problems.add(
            PlanFault.ATTRIBUTE_UNASKED, "telling_run." + field, PlanJson.word(run.task()));
      }
      return;
    }
    if (run.attribute().isBlank()) {
      problems.add(PlanFault.ATTRIBUTE_MISSING, "telling_run.attribute");
    }
    if (plan.setups().size() < 2) {
      return; // which says enough of them
    }
    if (plan.setups().stream().noneMatch(setup -> setup.name().equals(run.more()))) {
      String names = String.join(", ", plan.setups().stream().map(Setup::name).toList());
      problems.add(PlanFault.MORE_UNKNOWN, "telling_run.more", run.more(), names);
    }
  }

  private void trials(TellingRun run) {
    boolean share = run.matters().signum() > 0 && run.matters().compareTo(BigDecimal.ONE) <= 0;
    if (!share) {
      problems.add(PlanFault.MATTERS_RANGE, "telling_run.matters", run.matters().toPlainString());
    }
    if (run.trials() < 1 || run.trials() > TellingRun.MOST_TRIALS) {
      problems.add(
          PlanFault.TRIALS_RANGE, "telling_run.trials", run.trials(), 1, TellingRun.MOST_TRIALS);
      return;
    }
    if (!plan.protocol().sameFamily(run.protocol())) {
      problems.add(PlanFault.TELLING_RULE, "protocol", PlanJson.word(run.task()));
    }
    if (plan.stints() != run.stints()) {
      problems.add(
          PlanFault.TELLING_STINTS,
          "stints",
          plan.stints(),
          run.trials(),
          run.task().laps(),
          run.stints());
    }
    if (!share) {
      return;
    }
    TrialsPower shows = run.shows();
    if (shows.least().isEmpty() && plan.override().isBlank()) {
      problems.add(PlanFault.TRIALS_SHOW_NOTHING, "override", run.trials(), shows.smallestP());
    }
  }
}
