package blindlap.plan;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Checks of a steps day (docs/method.md#steps-day): its levels, how they are set, and what such a
 * day cannot have.
 */
final class StepsCheck {
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
        problems.add(PlanFault.STEPS_UNASKED, "steps_day", PlanJson.word(plan.kind()));
      }
      return;
    }
    refused();
    if (steps == null) {
      problems.add(PlanFault.STEPS_MISSING, "steps_day");
      return;
    }
    int before = problems.count();
    limits(steps);
    if (problems.count() == before) {
      levels(steps);
    }
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

  private void limits(StepsDay steps) {
    BigDecimal least = steps.least();
    BigDecimal most = steps.most();
    if (steps.setting().isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, "steps_day.setting");
    }
    if (steps.setup().isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, "steps_day.setup");
    }
    if (least != null && most != null && least.compareTo(most) >= 0) {
      problems.add(PlanFault.LIMITS_CROSSED, "steps_day.least", shown(least), shown(most));
    }
    if (steps.way() == StepsDay.Way.PRESSURE) {
      pressure(steps, least, most);
    } else if (steps.low() != null || steps.high() != null) {
      String field = steps.low() != null ? "low" : "high";
      problems.add(PlanFault.LOW_AND_HIGH_UNASKED, "steps_day." + field);
    }
  }

  private void pressure(StepsDay steps, @Nullable BigDecimal least, @Nullable BigDecimal most) {
    BigDecimal low = steps.low();
    BigDecimal high = steps.high();
    if (low == null || high == null) {
      problems.add(PlanFault.LOW_AND_HIGH_MISSING, "steps_day." + (low == null ? "low" : "high"));
      return;
    }
    if (low.compareTo(high) >= 0) {
      problems.add(PlanFault.LIMITS_CROSSED, "steps_day.low", shown(low), shown(high));
      return;
    }
    if (least != null && low.compareTo(least) < 0) {
      problems.add(PlanFault.BELOW_THE_LIMIT, "steps_day.low", shown(low), shown(least));
    }
    if (most != null && high.compareTo(most) > 0) {
      problems.add(PlanFault.ABOVE_THE_LIMIT, "steps_day.high", shown(high), shown(most));
    }
  }

  private void levels(StepsDay steps) {
    List<Setup> levels =
        plan.setups().stream().filter(s -> s.setting(steps.setting()).isPresent()).toList();
    if (levels.size() < plan.setups().size() && !levels.isEmpty()) {
      problems.add(PlanFault.LEVEL_MISSING, "setups", steps.setting());
      return;
    }
    if (!numbers(steps, levels) || !apart(steps, levels)) {
      return;
    }
    if (levels.size() < StepsDay.FEWEST || levels.size() > StepsDay.MOST) {
      problems.add(
          PlanFault.LEVELS_RANGE,
          "steps_day.levels",
          levels.size(),
          StepsDay.FEWEST,
          StepsDay.MOST);
      return;
    }
    levels.forEach(level -> allowed(steps, level, steps.value(level).orElseThrow()));
    Set<String> others = new HashSet<>(Differences.of(plan).names());
    others.removeIf(name -> Setting.key(name).equals(Setting.key(steps.setting())));
    if (!others.isEmpty()) {
      String named = String.join(", ", others.stream().sorted().toList());
      problems.add(PlanFault.LEVELS_DIFFER_OTHERWISE, "setups", steps.setting(), named);
    }
  }

  private boolean numbers(StepsDay steps, List<Setup> levels) {
    Optional<Setup> words =
        levels.stream().filter(level -> steps.value(level).isEmpty()).findFirst();
    words.ifPresent(
        level ->
            problems.add(
                PlanFault.LEVEL_NOT_A_NUMBER,
                "steps_day.levels",
                level.setting(steps.setting()).orElseThrow().value()));
    return words.isEmpty();
  }

  /** One setting at one value is one level, however it is written. */
  private boolean apart(StepsDay steps, List<Setup> levels) {
    Set<String> names = new HashSet<>();
    for (int i = 0; i < levels.size(); i++) {
      BigDecimal value = steps.value(levels.get(i)).orElseThrow();
      for (Setup other : levels.subList(0, i)) {
        if (value.compareTo(steps.value(other).orElseThrow()) == 0) {
          problems.add(PlanFault.LEVELS_EQUAL, "steps_day.levels", shown(value));
          return false;
        }
      }
      Setup level = levels.get(i);
      if (!names.add("name " + level.name().strip().toLowerCase(Locale.ROOT))
          | !names.add("id " + level.id())) {
        problems.add(PlanFault.SAME_SETUP, "setups[" + (i + 1) + "]", level.name());
        return false;
      }
    }
    return true;
  }

  private void allowed(StepsDay steps, Setup level, BigDecimal value) {
    String where = "steps_day.levels";
    BigDecimal low = steps.low();
    BigDecimal high = steps.high();
    BigDecimal least = steps.least();
    BigDecimal most = steps.most();
    if (least != null && value.compareTo(least) < 0) {
      problems.add(PlanFault.BELOW_THE_LIMIT, where, shown(value), shown(least));
    } else if (most != null && value.compareTo(most) > 0) {
      problems.add(PlanFault.ABOVE_THE_LIMIT, where, shown(value), shown(most));
    } else if (steps.way() == StepsDay.Way.CLICKS && !Handling.countable(value)) {
      problems.add(PlanFault.LEVEL_NOT_CLICKS, where, level.name());
    } else if (low != null && high != null && !between(value, low, high)) {
      problems.add(PlanFault.LEVEL_NOT_BETWEEN, where, shown(value), shown(low), shown(high));
    }
  }

  private static boolean between(BigDecimal value, BigDecimal low, BigDecimal high) {
    return value.compareTo(low) >= 0 && value.compareTo(high) <= 0;
  }

  private static String shown(BigDecimal value) {
    return String.valueOf(PlanJson.number(value));
  }
}
