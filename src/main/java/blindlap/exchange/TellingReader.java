package blindlap.exchange;

import blindlap.fault.Problem;
import blindlap.fault.TypedNumber;
import blindlap.plan.Setup;
import blindlap.plan.StepsDay;
import blindlap.plan.TellingRun;
import blindlap.plan.TellingTask;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads and writes what a telling run adds to a plan.
 *
 * @param run the trials
 * @param setups the plan's setups, which are two levels where one setting is told apart
 */
record TellingReader(TellingRun run, List<Setup> setups) {

  static TellingReader read(FieldReader f, List<Setup> typed, List<Problem> problems) {
    TellingTask task = f.option("task", TellingTask.class, TellingTask.TRIANGLE);
    StepsReader levels = f.object("one_setting", s -> StepsReader.read(s, typed, problems));
    List<Setup> setups = levels == null ? typed : levels.setups();
    StepsDay setting = levels == null ? null : levels.day();
    return new TellingReader(
        new TellingRun(
            task,
            f.integer("trials", task.usualTrials()),
            f.decimal("matters", "0.5"),
            f.text("attribute", ""),
            more(f.text("more", ""), setups, setting),
            setting),
        setups);
  }

  /** A level goes by its name, and by its number alone, as it was typed among the levels. */
  private static String more(String typed, List<Setup> setups, @Nullable StepsDay setting) {
    BigDecimal number = TypedNumber.number(typed).orElse(null);
    if (setting == null || number == null) {
      return typed;
    }
    return setups.stream()
        .filter(each -> setting.value(each).filter(v -> v.compareTo(number) == 0).isPresent())
        .map(Setup::name)
        .findFirst()
        .orElse(typed);
  }

  /**
   * Leaves out of a committed plan's fields what follows from others: rule, stints, and the setups
   * of two levels.
   */
  static void once(Map<String, Object> plan) {
    if (plan.get("telling_run") instanceof Map<?, ?> run) {
      if (plan.get("protocol") instanceof Map<?, ?>) {
        plan.remove("protocol");
        plan.remove("stints");
      }
      Map<String, Object> fields = new LinkedHashMap<>();
      run.forEach((name, value) -> fields.put(String.valueOf(name), value));
      StepsFields.oneSetup(plan, fields, "one_setting");
      plan.put("telling_run", fields);
    }
  }
}
