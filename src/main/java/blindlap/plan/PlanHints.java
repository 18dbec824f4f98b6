package blindlap.plan;

import blindlap.fault.Problem;
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
    if (plan.kind() == Plan.Kind.COMPARISON) {
      hints.differences();
      hints.masses();
      hints.blinding();
    }
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
      add(PlanHint.COMPARES_PACKAGES, "setups", String.join(", ", names), plan.differencesReason());
    }
    if (plan.setups().size() > 2) {
      add(PlanHint.MANY_SETUPS, "setups", plan.setups().size());
    }
    Bikes bikes = plan.bikes();
    if (bikes != null && bikes.changeAfter() == null) {
      add(PlanHint.BIKES_KEPT, "bikes.change_after", plan.stints() / 2);
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
    if (!plan.blinding().blinded()) {
      add(PlanHint.UNBLINDED, "blinding");
    } else if (plan.blinding().helper().isBlank()) {
      add(PlanHint.NO_HELPER, "blinding.helper");
    }
  }

  private void limits() {
    for (int i = 0; i < plan.setups().size(); i++) {
      for (Setup.Limit limit : plan.setups().get(i).limits()) {
        if (limit.source().isBlank()) {
          add(PlanHint.LIMIT_WITHOUT_SOURCE, "setups[" + (i + 1) + "].limits", limit.what());
        }
      }
    }
  }

  private void day() {
    if (plan.noise() == null && plan.kind() == Plan.Kind.COMPARISON) {
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
