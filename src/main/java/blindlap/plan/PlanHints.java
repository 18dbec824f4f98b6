package blindlap.plan;

import blindlap.fault.Problem;
import blindlap.fault.Unusable;
import blindlap.stats.order.Foreseen;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;

/** What the tester should know of a plan that holds; the plan can be committed all the same. */
public final class PlanHints {
  private final Plan plan;
  private final List<Problem> hints = new ArrayList<>();

  private PlanHints(Plan plan) {
    this.plan = plan;
  }

  /** All hints, in the order of the plan. */
  public static List<Problem> of(Plan plan) {
    PlanHints hints = new PlanHints(plan);
    if (plan.kind().drawn()) {
      hints.differences();
      hints.masses();
      hints.blinding();
    }
    hints.claim();
    hints.limits();
    hints.day();
    return List.copyOf(hints.hints);
  }

  private void add(PlanHint hint, String where, Object... details) {
    hints.add(Problem.of(hint, where, details));
  }

  private void differences() {
    Differences differences = Differences.of(plan);
    List<String> names = differences.names();
    if (!differences.rows().isEmpty() && names.isEmpty()) {
      add(PlanHint.NOTHING_DIFFERS, "setups");
    }
    if (names.size() > 1 && !plan.differencesReason().isBlank()) {
      boolean told = plan.kind() == Plan.Kind.TELLING_RUN;
      PlanHint hint = told ? PlanHint.TELLS_PACKAGES : PlanHint.COMPARES_PACKAGES;
      add(hint, "setups", String.join(", ", names), plan.differencesReason());
    }
    if (plan.kind() == Plan.Kind.COMPARISON && plan.setups().size() > 2) {
      add(PlanHint.MANY_SETUPS, "setups", plan.setups().size());
    }
    Bikes bikes = plan.bikes();
    if (bikes != null && bikes.changeAfter() == null) {
      add(PlanHint.BIKES_KEPT, "bikes.change_after", plan.stints() / 2);
    }
  }

  /** What a telling run puts to the test is what somebody says he would notice. */
  private void claim() {
    if (plan.kind() == Plan.Kind.TELLING_RUN && plan.expectations().rider().isBlank()) {
      add(PlanHint.NOTHING_CLAIMED, "expectations.rider");
    }
  }

  private void masses() {
    List<BigDecimal> masses =
        plan.setups().stream().map(Setup::massOnBike).filter(Objects::nonNull).toList();
    if (masses.size() > 0 && masses.size() < plan.setups().size()) {
      add(PlanHint.MASS_OF_SOME, "setups");
    } else if (masses.size() > 1) {
      BigDecimal between = Collections.max(masses).subtract(Collections.min(masses));
      if (between.signum() > 0) {
        add(PlanHint.MASS_SHOWS, "setups", between.stripTrailingZeros().toPlainString());
      }
    }
  }

  private void blinding() {
    Blinding blinding = plan.blinding();
    switch (blinding.level()) {
      case OPEN -> add(PlanHint.UNBLINDED, "blinding");
      case DRAWN -> drawn();
      case MASKED -> {
        add(PlanHint.MASKED, "blinding.level");
        if (blinding.preparation().masks() == Preparation.Masks.MARKS) {
          add(PlanHint.MARKS_NOT_SEALED, "blinding.masks");
        }
      }
      case PREPARED -> prepared(blinding.preparation());
      case HELPER -> {
        if (blinding.helper().isBlank()) {
          add(PlanHint.NO_HELPER, "blinding.helper");
        }
      }
    }
    if (blinding.guessesTyped() && !blinding.guesses()) {
      add(PlanHint.GUESSES_NOT_ASKED, "blinding.guesses", PlanJson.word(blinding.level()));
    }
    for (Measure measure : plan.measures()) {
      Assessor assessor = measure.assessor();
      if (assessor != null && assessor.knowsKey()) {
        add(PlanHint.ASSESSOR_KNOWS, "measures", measure.name(), assessor.name());
      }
    }
  }

  private void drawn() {
    add(PlanHint.DRAWN, "blinding.level");
    Rule rule = plan.rule();
    boolean possible = DayBases.possible(rule.setups(), rule.stints(), rule.block());
    if (!possible || rule.block() >= rule.stints()) {
      return;
    }
    try {
      // A longest run or a trend over the day would give away more still.
      double blocks = Foreseen.stints(rule.blockSequences()) * rule.stints() / rule.block();
      double shuffle =
          Foreseen.stints(Rule.blocks(rule.setups(), rule.stints(), rule.stints()).assignments());
      add(
          PlanHint.BLOCKS_FORESEEN,
          "protocol",
          Math.round(blocks),
          rule.stints(),
          Math.round(shuffle));
    } catch (Unusable contradiction) {
      return; // the plan does not hold, and its rule is named elsewhere
    }
  }

  private void prepared(Preparation friend) {
    Integer units = friend.units();
    if (!friend.recovers() && (units == null || units < plan.stints())) {
      add(
          PlanHint.UNITS_TOO_FEW,
          "blinding.units",
          units == null ? plan.setups().size() : units,
          plan.stints());
    }
    if (friend.on() == null) {
      add(PlanHint.PREPARED_WHEN, "blinding.prepared_on");
    }
  }

  private void limits() {
    StepsDay steps = plan.oneSetting();
    if (steps != null
        && (steps.least() != null || steps.most() != null)
        && steps.source().isBlank()) {
      String where = plan.steps() == null ? TellingCheck.ONE_SETTING : StepsCheck.STEPS_DAY;
      add(PlanHint.LIMIT_WITHOUT_SOURCE, where + ".source", steps.setting());
    }
    for (int i = 0; i < plan.setups().size(); i++) {
      for (Setup.Limit limit : plan.setups().get(i).limits()) {
        if (limit.source().isBlank()) {
          add(PlanHint.LIMIT_WITHOUT_SOURCE, "setups[" + (i + 1) + "].limits", limit.what());
        }
      }
    }
  }

  private void day() {
    if (plan.noise() == null && plan.kind().measured()) {
      add(PlanHint.NO_NOISE, "noise");
    }
    if (plan.timetable() == null) {
      add(PlanHint.NO_TIMETABLE, "timetable");
    }
    Timetable table = plan.timetable();
    if (table != null && table.practised().longerThan(table.swap())) {
      add(
          PlanHint.SWAP_TOO_SHORT,
          "timetable.swap",
          table.swap().toPlainString(),
          Practised.text(table.practised().longest()),
          table.practised().minutes().toPlainString());
    }
    if (!plan.override().isBlank()) {
      add(PlanHint.OVERRIDDEN, "override", plan.override());
    }
  }
}
