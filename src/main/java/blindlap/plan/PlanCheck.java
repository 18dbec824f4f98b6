package blindlap.plan;

import blindlap.stats.Assignments;
import blindlap.stats.OrderSet;
import blindlap.stats.Scale;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Everything that must be right before a plan can be committed. Problems are given in the order of
 * the plan; an empty list means the plan holds.
 */
public final class PlanCheck {
  /** Column names of lap files that a measure must not take. */
  public static final Set<String> RESERVED =
      Set.of("lap", "code", "lap_in_stint", "void", "note", "guess");

  private static final int MOST_LAPS = 9;
  private static final int MOST_NAME = 60;

  private final Plan plan;
  private final List<Problem> problems = new ArrayList<>();

  private PlanCheck(Plan plan) {
    this.plan = plan;
  }

  /** All problems of a plan. */
  public static List<Problem> problems(Plan plan) {
    PlanCheck check = new PlanCheck(plan);
    check.setups();
    check.measures();
    check.laps();
    if (plan.kind() == Plan.Kind.COMPARISON) {
      check.rule();
    }
    return List.copyOf(check.problems);
  }

  private void add(PlanFault fault, String where, Object... details) {
    problems.add(Problem.of(fault, where, details));
  }

  private void setups() {
    int number = plan.setups().size();
    int least = plan.kind() == Plan.Kind.NOISE_RUN ? 1 : 2;
    if (number < least) {
      add(PlanFault.TOO_FEW_SETUPS, "setups", number, least);
    }
    if (number > 4) {
      add(PlanFault.TOO_MANY_SETUPS, "setups", number);
    }
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < number; i++) {
      Setup setup = plan.setups().get(i);
      String where = "setups[" + (i + 1) + "]";
      if (setup.name().isBlank()) {
        add(PlanFault.MISSING_FIELD, where + ".name");
      } else if (!seen.add(setup.name().strip().toLowerCase(java.util.Locale.ROOT))
          | !seen.add("id " + setup.id())) {
        add(PlanFault.SAME_SETUP, where, setup.name());
      }
      length(setup.name(), where + ".name");
    }
  }

  private void length(String text, String where) {
    if (text.length() > MOST_NAME) {
      add(PlanFault.TOO_LONG, where, MOST_NAME);
    }
  }

  private void measures() {
    Set<String> names = new HashSet<>();
    List<String> primaries = new ArrayList<>();
    for (int i = 0; i < plan.measures().size(); i++) {
      Measure measure = plan.measures().get(i);
      String where = "measures[" + (i + 1) + "]";
      if (measure.name().isBlank()) {
        add(PlanFault.MISSING_FIELD, where + ".name");
      }
      if (!names.add(measure.name().strip().toLowerCase(java.util.Locale.ROOT))) {
        add(PlanFault.SAME_MEASURE, where, measure.name());
      }
      if (RESERVED.contains(measure.name().strip().toLowerCase(java.util.Locale.ROOT))) {
        add(PlanFault.RESERVED_MEASURE, where, measure.name());
      }
      if (measure.role() == Measure.Role.PRIMARY) {
        primaries.add(measure.name());
      }
      length(measure.name(), where + ".name");
      measure(measure, where);
    }
    if (primaries.isEmpty()) {
      add(PlanFault.NO_PRIMARY, "measures");
    } else if (primaries.size() > 1) {
      add(PlanFault.TWO_PRIMARIES, "measures", String.join(", ", primaries));
    }
  }

  private void measure(Measure measure, String where) {
    if (measure.unit().isBlank()) {
      add(PlanFault.NO_UNIT, where + ".unit", measure.name());
    }
    boolean needsWorthwhile =
        plan.kind() == Plan.Kind.COMPARISON && measure.role() != Measure.Role.SECONDARY;
    if (measure.worthwhile() == null && needsWorthwhile) {
      add(PlanFault.NO_WORTHWHILE, where + ".worthwhile", measure.name());
    }
    if (measure.worthwhile() != null && measure.worthwhile().signum() <= 0) {
      add(
          PlanFault.WORTHWHILE_NOT_POSITIVE,
          where + ".worthwhile",
          measure.name(),
          measure.worthwhile().toPlainString());
    }
    if (measure.role() == Measure.Role.WATCH_FOR_HARM
        && measure.better() == Measure.Better.NEITHER) {
      add(PlanFault.HARM_WITHOUT_DIRECTION, where + ".better", measure.name());
    }
    if (measure.kind().rating()
        && (measure.lowWords().isBlank() || measure.highWords().isBlank())) {
      add(PlanFault.NO_END_WORDS, where, measure.name());
    }
    if (measure.scale() == Scale.RATIO && !measure.kind().timed()) {
      add(PlanFault.RATIO_NEEDS_POSITIVE, where + ".scale", measure.name());
    }
  }

  private void laps() {
    range("laps.warm_up", plan.laps().warmUp(), 0);
    range("laps.settling", plan.laps().settling(), 0);
    range("laps.scored", plan.laps().scored(), 1);
  }

  private void range(String where, int value, int least) {
    if (value < least || value > MOST_LAPS) {
      add(PlanFault.LAPS_RANGE, where, value, least, MOST_LAPS);
    }
  }

  private void rule() {
    Protocol protocol = plan.protocol();
    int setups = plan.setups().size();
    if (setups < 2 || setups > 4) {
      return;
    }
    if (plan.stints() < 2 || plan.stints() > Rule.MOST_STINTS) {
      add(PlanFault.STINTS_RANGE, "stints", plan.stints(), 2, Rule.MOST_STINTS);
      return;
    }
    if (!protocol.setups().isEmpty() && !protocol.setups().contains(setups)) {
      add(PlanFault.PROTOCOL_SETUPS, "protocol", protocol.title(), setups);
      return;
    }
    Integer block = protocol.block();
    if (block != null && block > 0 && plan.stints() % block != 0) {
      add(PlanFault.STINTS_NOT_MULTIPLE, "stints", plan.stints(), block);
      return;
    }
    try {
      orders(plan.rule().assignments());
    } catch (IllegalArgumentException contradiction) {
      add(
          PlanFault.RULE_CONTRADICTS,
          "protocol",
          java.util.Objects.requireNonNullElse(contradiction.getMessage(), ""));
    }
  }

  private void orders(Assignments set) {
    if (set.count().signum() == 0) {
      add(PlanFault.NO_ADMISSIBLE_ORDER, "protocol");
      return;
    }
    if (!set.closedUnderRenaming()) {
      add(
          PlanFault.RULE_CONTRADICTS,
          "protocol",
          "the set of orders is not closed under renaming setups");
      return;
    }
    OrderSet summary = OrderSet.of(set);
    if (summary.attainableLevel() == 0 && plan.override().isBlank()) {
      add(PlanFault.CANNOT_SHOW_ANYTHING, "override", summary.smallestP());
    }
  }
}
