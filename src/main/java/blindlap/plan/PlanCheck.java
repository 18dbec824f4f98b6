package blindlap.plan;

import blindlap.fault.Problem;
import blindlap.fault.RuleFault;
import blindlap.fault.Unusable;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Assignments;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Everything that must be right before a plan can be committed. FoundProblems are given in the
 * order of the plan; an empty list means the plan holds.
 */
public final class PlanCheck {
  /** Column names of lap files that a measure must not take. */
  public static final Set<String> RESERVED =
      Set.of("lap", "code", "lap_in_stint", "void", "note", "guess");

  private final Plan plan;
  private final FoundProblems problems = new FoundProblems();

  private PlanCheck(Plan plan) {
    this.plan = plan;
  }

  private static final int MOST_SESSIONS = 100;

  /** All problems of a plan; nothing is left out because of another. */
  public static List<Problem> problems(Plan plan) {
    return problems(plan, RuleBook.ofProgram());
  }

  /**
   * The same.
   *
   * @param rules makes the set of the plan's rule, unless it is known
   */
  public static List<Problem> problems(Plan plan, RuleBook rules) {
    return problems(plan, Optional.of(rules));
  }

  /**
   * What can be said at once: all but what depends on the set of the plan's rule where that is
   * neither known nor small.
   */
  public static Judged atOnce(Plan plan, RuleBook rules) {
    boolean whole = !plan.kind().measured() || !goesUp(plan) || rules.atOnce(plan.rule());
    return new Judged(problems(plan, whole ? Optional.of(rules) : Optional.empty()), whole);
  }

  /**
   * What was found in a plan.
   *
   * @param whole false if its rule is still to be judged
   */
  public record Judged(List<Problem> problems, boolean whole) {
    public Judged {
      problems = List.copyOf(problems);
    }
  }

  private static boolean goesUp(Plan plan) {
    return DayBases.possible(plan.setups().size(), plan.stints(), plan.protocol().block());
  }

  private static List<Problem> problems(Plan plan, Optional<RuleBook> rules) {
    PlanCheck check = new PlanCheck(plan);
    new TextCheck(check.problems).all(plan);
    new SetupCheck(plan, check.problems).all();
    new StepsCheck(plan, check.problems).all();
    new TellingCheck(plan, check.problems).all();
    check.measures();
    new TimingCheck(plan, check.problems).all();
    new CovariateCheck(plan, RESERVED, check.problems).all();
    new DayCheck(plan, check.problems).all();
    check.noise();
    check.series();
    new LooksCheck(plan, check.problems).all();
    new BlindCheck(plan, check.problems).all();
    if (plan.kind().measured()) {
      check.rule(rules);
    } else if (plan.kind() == Plan.Kind.TELLING_RUN) {
      return List.copyOf(check.problems.list); // whose rule follows from its trials
    } else if (plan.stints() < 2 || plan.stints() > Rule.MOST_STINTS) {
      check.add(PlanFault.STINTS_RANGE, "stints", plan.stints(), 2, Rule.MOST_STINTS);
    }
    return List.copyOf(check.problems.list);
  }

  private void add(PlanFault fault, String where, Object... details) {
    problems.add(fault, where, details);
  }

  private void noise() {
    DeclaredNoise noise = plan.noise();
    if (noise == null) {
      return;
    }
    if (noise.sd().signum() <= 0) {
      add(PlanFault.NOT_POSITIVE, "noise.sd", noise.sd().toPlainString());
    }
    Integer laps = noise.laps();
    if (laps != null && (laps < 1 || laps > DeclaredNoise.MOST_LAPS)) {
      add(PlanFault.LAPS_RANGE, "noise.laps", laps, 1, DeclaredNoise.MOST_LAPS);
    }
    if (noise.df() != null && noise.df() < 1) {
      add(PlanFault.NOT_POSITIVE, "noise.df", noise.df());
    }
  }

  private void series() {
    Integer sessions = plan.seriesSessions();
    if (sessions == null) {
      return;
    }
    if (plan.series() == null) {
      add(PlanFault.MISSING_FIELD, "series");
    }
    if (sessions < 2 || sessions > MOST_SESSIONS) {
      add(PlanFault.SERIES_RANGE, "series_sessions", sessions, 2, MOST_SESSIONS);
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
      measure(measure, where);
    }
    if (plan.kind() == Plan.Kind.TELLING_RUN) {
      return; // its answers are what counts, and TellingCheck says what else may be recorded
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
    boolean needsWorthwhile = plan.kind().measured() && measure.role() != Measure.Role.SECONDARY;
    if (measure.worthwhile() == null && needsWorthwhile) {
      PlanFault missing =
          plan.kind() == Plan.Kind.STEPS_DAY
              ? PlanFault.NO_WORTHWHILE_TREND
              : PlanFault.NO_WORTHWHILE;
      add(missing, where + ".worthwhile", measure.name());
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
    if (plan.laps().scored() < measure.summary().fewestLaps()) {
      add(
          PlanFault.MEDIAN_NEEDS_LAPS,
          where + ".summary",
          measure.name(),
          plan.laps().scored(),
          measure.summary().fewestLaps());
    }
  }

  private void rule(Optional<RuleBook> rules) {
    Protocol protocol = plan.protocol();
    int setups = plan.setups().size();
    boolean steps = plan.kind() == Plan.Kind.STEPS_DAY;
    if (setups < (steps ? StepsDay.FEWEST : 2) || setups > (steps ? StepsDay.MOST : 4)) {
      return;
    }
    if (plan.stints() < 2 || plan.stints() > Rule.MOST_STINTS) {
      add(PlanFault.STINTS_RANGE, "stints", plan.stints(), 2, Rule.MOST_STINTS);
      return;
    }
    if (!plan.suits(protocol)) {
      add(PlanFault.PROTOCOL_SETUPS, "protocol", protocol.title(), setups);
      return;
    }
    Integer block = protocol.block();
    if (block != null && block > 0 && plan.stints() % block != 0) {
      add(PlanFault.STINTS_NOT_MULTIPLE, "stints", plan.stints(), block);
      return;
    }
    try {
      rules.map(book -> book.of(plan.rule())).ifPresent(this::orders);
    } catch (Unusable contradiction) {
      problems.list.add(contradiction.problem("protocol"));
    }
  }

  private void orders(RuleBook.Entry rule) {
    Assignments set = rule.set();
    if (set.count().signum() == 0) {
      add(PlanFault.NO_ADMISSIBLE_ORDER, "protocol");
      return;
    }
    if (!set.closedUnderRenaming()) {
      problems.list.add(Problem.of(RuleFault.NOT_CLOSED, "protocol"));
      return;
    }
    // A trend counts orders in twos, whatever the number of levels.
    boolean trend = plan.kind() == Plan.Kind.STEPS_DAY;
    OrderSet summary = trend ? rule.summary().ofTrend() : rule.summary();
    if (summary.attainableLevel() == 0 && plan.override().isBlank()) {
      add(PlanFault.CANNOT_SHOW_ANYTHING, "override", summary.smallestP());
    }
  }
}
