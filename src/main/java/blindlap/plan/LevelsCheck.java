package blindlap.plan;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;

/** Checks of the levels of one setting and of how they are set, whatever kind of plan has them. */
final class LevelsCheck {
  private final Plan plan;
  private final StepsDay steps;
  private final String at;
  private final FoundProblems problems;

  /**
   * @param at where the setting stands in the plan
   */
  LevelsCheck(Plan plan, StepsDay steps, String at, FoundProblems problems) {
    this.plan = plan;
    this.steps = steps;
    this.at = at;
    this.problems = problems;
  }

  /**
   * @param number says what is wrong with so many levels, and is false if anything is
   */
  void all(IntPredicate number) {
    int before = problems.count();
    limits();
    if (problems.count() == before) {
      levels(number);
    }
  }

  private void limits() {
    BigDecimal least = steps.least();
    BigDecimal most = steps.most();
    if (steps.setting().isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, at + ".setting");
    }
    if (steps.setup().isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, at + ".setup");
    }
    if (least != null && most != null && least.compareTo(most) >= 0) {
      problems.add(PlanFault.LIMITS_CROSSED, at + ".least", shown(least), shown(most));
    }
    if (steps.way() == StepsDay.Way.PRESSURE) {
      pressure(least, most);
    } else if (steps.low() != null || steps.high() != null) {
      String field = steps.low() != null ? "low" : "high";
      problems.add(PlanFault.LOW_AND_HIGH_UNASKED, at + "." + field);
    }
  }

  private void pressure(@Nullable BigDecimal least, @Nullable BigDecimal most) {
    BigDecimal low = steps.low();
    BigDecimal high = steps.high();
    if (low == null || high == null) {
      problems.add(PlanFault.LOW_AND_HIGH_MISSING, at + "." + (low == null ? "low" : "high"));
      return;
    }
    if (low.compareTo(high) >= 0) {
      problems.add(PlanFault.LIMITS_CROSSED, at + ".low", shown(low), shown(high));
      return;
    }
    if (least != null && low.compareTo(least) < 0) {
      problems.add(PlanFault.BELOW_THE_LIMIT, at + ".low", shown(low), shown(least));
    }
    if (most != null && high.compareTo(most) > 0) {
      problems.add(PlanFault.ABOVE_THE_LIMIT, at + ".high", shown(high), shown(most));
    }
  }

  private void levels(IntPredicate number) {
    List<Setup> levels =
        plan.setups().stream().filter(s -> s.setting(steps.setting()).isPresent()).toList();
    if (levels.size() < plan.setups().size() && !levels.isEmpty()) {
      problems.add(PlanFault.LEVEL_MISSING, "setups", steps.setting());
      return;
    }
    if (!numbers(levels) || !apart(levels)) {
      return;
    }
    if (!number.test(levels.size())) {
      return;
    }
    levels.forEach(level -> allowed(level, steps.value(level).orElseThrow()));
    Set<String> others = new HashSet<>(Differences.of(plan).names());
    others.removeIf(name -> Setting.key(name).equals(Setting.key(steps.setting())));
    if (!others.isEmpty()) {
      String named = String.join(", ", others.stream().sorted().toList());
      problems.add(PlanFault.LEVELS_DIFFER_OTHERWISE, "setups", steps.setting(), named);
    }
  }

  private boolean numbers(List<Setup> levels) {
    Optional<Setup> words =
        levels.stream().filter(level -> steps.value(level).isEmpty()).findFirst();
    words.ifPresent(
        level ->
            problems.add(
                PlanFault.LEVEL_NOT_A_NUMBER,
                at + ".levels",
                level.setting(steps.setting()).orElseThrow().value()));
    return words.isEmpty();
  }

  /** One setting at one value is one level, however it is written. */
  private boolean apart(List<Setup> levels) {
    Set<String> names = new HashSet<>();
    for (int i = 0; i < levels.size(); i++) {
      BigDecimal value = steps.value(levels.get(i)).orElseThrow();
      for (Setup other : levels.subList(0, i)) {
        if (value.compareTo(steps.value(other).orElseThrow()) == 0) {
          problems.add(PlanFault.LEVELS_EQUAL, at + ".levels", shown(value));
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

  private void allowed(Setup level, BigDecimal value) {
    String where = at + ".levels";
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
