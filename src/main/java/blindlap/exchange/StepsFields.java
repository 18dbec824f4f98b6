package blindlap.exchange;

import blindlap.plan.StepsDay;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The fields of one setting as a person types them: one setup and its levels, where a committed
 * plan holds a setup for every level that says the same but for one value.
 */
final class StepsFields {
  private StepsFields() {}

  /** Puts one setup and its levels in place of the setups of a steps day; others stay. */
  static void oneSetup(Map<String, Object> plan) {
    oneSetup(plan, plan, "steps_day");
  }

  /**
   * The same.
   *
   * @param holder what holds the setting
   * @param key its name there
   */
  static void oneSetup(Map<String, Object> plan, Map<String, Object> holder, String key) {
    if (!(holder.get(key) instanceof Map<?, ?> day)
        || !(plan.get("setups") instanceof List<?> setups)
        || setups.isEmpty()
        || day.containsKey("levels")) {
      return;
    }
    List<String> levels = new ArrayList<>();
    Map<String, Object> one = null;
    for (Object each : setups) {
      Map<String, Object> rest = each instanceof Map<?, ?> setup ? rest(setup, day, levels) : null;
      if (rest == null || one != null && !one.equals(rest)) {
        return; // setups that were typed one by one, and stay so
      }
      one = rest;
    }
    Map<String, Object> setup = new LinkedHashMap<>();
    setup.put("name", day.get("setup"));
    setup.put("id", day.get("setup_id"));
    setup.putAll(Objects.requireNonNull(one));
    plan.put("setups", List.of(setup));
    holder.put(key, day(day, levels));
  }

  private static Map<String, Object> day(Map<?, ?> day, List<String> levels) {
    Map<String, Object> fields = new LinkedHashMap<>();
    day.forEach(
        (name, value) -> {
          if (!"setup".equals(name) && !"setup_id".equals(name)) {
            fields.put(String.valueOf(name), value);
          }
        });
    boolean comma = levels.stream().anyMatch(each -> each.contains(","));
    fields.put("levels", String.join(comma ? "; " : ", ", levels));
    return fields;
  }

  /**
   * A setup without what makes it a level, whose value is noted; null where it is more than the one
   * setup at a value.
   */
  private static @Nullable Map<String, Object> rest(
      Map<?, ?> setup, Map<?, ?> day, List<String> levels) {
    if (!(setup.get("settings") instanceof List<?> settings)
        || settings.isEmpty()
        || !(settings.get(0) instanceof Map<?, ?> level)
        || !plain(level, day)) {
      return null;
    }
    String value = text(level, "value");
    String unit = text(level, "unit");
    boolean called = text(setup, "name").equals(unit.isEmpty() ? value : value + " " + unit);
    if (!called || !text(setup, "id").equals(StepsDay.id(text(day, "setup_id"), value))) {
      return null;
    }
    levels.add(value);
    Map<String, Object> rest = new LinkedHashMap<>();
    setup.forEach((name, each) -> rest.put(String.valueOf(name), each));
    rest.remove("name");
    rest.remove("id");
    rest.put("settings", settings.subList(1, settings.size()));
    return rest;
  }

  /** True for the day's setting with nothing said of it but value and unit. */
  private static boolean plain(Map<?, ?> level, Map<?, ?> day) {
    return text(level, "name").equals(text(day, "setting"))
        && text(level, "unit").equals(text(day, "unit"))
        && Set.of("", "each stint").contains(text(level, "check"))
        && Set.of("", "no", "false").contains(text(level, "equal"))
        && Set.of("", "1").contains(text(level, "readings"))
        && text(level, "tolerance").isEmpty()
        && text(level, "range").isEmpty()
        && text(level, "step").isEmpty();
  }

  private static String text(Map<?, ?> fields, String name) {
    Object value = fields.get(name);
    return value == null ? "" : String.valueOf(value);
  }
}
