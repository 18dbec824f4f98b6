package blindlap.exchange;

import blindlap.fault.TypedNumber;
import blindlap.plan.DeclaredNoise;
import blindlap.plan.Setup;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Fields of a plan in the order in which a person thinks of them, each value once: what follows
 * from another field, or is always the same, is left out, so that changing one value is enough.
 */
public final class PlanFields {
  private static final String ONE_SETTING =
      "setup setup_id setting unit levels way least most source low high";

  private static final Map<String, List<String>> ORDER =
      Map.ofEntries(
          order(
              "",
              "question rider trail trail_version day conditions kind setups steps_day telling_run"
                  + " differences_reason change bikes bike measures covariates protocol rule stints"
                  + " looks laps timetable noise blinding expectations series series_sessions"
                  + " override"),
          order(
              "setups",
              "name id component settings mass mass_g ballast_g price steps limits most_refits"
                  + " consumables cautions"),
          order("settings", "name value unit tolerance equal check range step readings"),
          order("bike", "name value unit tolerance equal check range step readings"),
          order("limits", "what value source"),
          order("steps_day", ONE_SETTING),
          order("one_setting", ONE_SETTING),
          order("telling_run", "task trials matters attribute more one_setting"),
          order("bikes", "first second change_after differences"),
          order("differences", "name first second"),
          order(
              "measures",
              "name kind unit low_words high_words role better worthwhile worthwhile_reason"
                  + " timed_by from_gate to_gate definition drift scale summary assessor"
                  + " assessor_knows"),
          order("trail_version", "number gates sha256"),
          order("gates", "name first second direction"),
          order("first", "latitude longitude"),
          order("second", "latitude longitude"),
          order("covariates", "name kind unit by per reason correlation"),
          order(
              "protocol",
              "name title when setups block patterns max_run min_trend_efficiency usual_stints"
                  + " levels"),
          order("rule", "setups stints block patterns max_run min_trend_efficiency"),
          order("laps", "warm_up settling scored"),
          order(
              "timetable",
              "zone start daylight_end lap climb swap practised scoring rest_every rest cool_down"
                  + " lap_budget"),
          order("noise", "usual_difference sd laps df stint_share source"),
          order(
              "blinding",
              "level blinded prepared_by prepared_on masks units recovers helper others_who_know"
                  + " cover ballast noise rider_waits helper_waits bike_moved_by levers_touched_by"
                  + " remaining_cues timed_by guesses times record_of"),
          order("expectations", "tester rider helper"));

  private static Map.Entry<String, List<String>> order(String of, String names) {
    return Map.entry(of, List.of(names.split(" ", -1)));
  }

  /** There is one value for each of them. */
  private static final Set<String> FIXED = Set.of("plan", "level", "missing");

  /** What is usual in rows that stand many times. */
  private static final Map<String, Set<String>> USUAL =
      Map.of(
          "check", Set.of("each stint"),
          "equal", Set.of("no"),
          "readings", Set.of("1"),
          "drift", Set.of("line"),
          "scale", Set.of("raw"),
          "summary", Set.of("mean"),
          "per", Set.of("stint"));

  /** Written yes and no, as a person would, whatever stands for it. */
  private static final Set<String> YES_OR_NO =
      Set.of("equal", "blinded", "guesses", "recovers", "assessor_knows");

  private PlanFields() {}

  /** A plan's fields without those that say again what another one says. */
  public static Map<String, Object> once(Map<String, ?> fields) {
    Map<String, Object> once = new LinkedHashMap<>(fields);
    FIXED.forEach(once::remove);
    StepsFields.oneSetup(once);
    TellingReader.once(once);
    once.computeIfPresent("setups", (name, setups) -> each(setups, PlanFields::setup));
    once.computeIfPresent("bike", (name, bike) -> each(bike, PlanFields::row));
    once.computeIfPresent("measures", (name, measures) -> each(measures, PlanFields::row));
    once.computeIfPresent("covariates", (name, covariates) -> each(covariates, PlanFields::row));
    once.computeIfPresent("noise", (name, noise) -> noise(noise));
    once.computeIfPresent("blinding", (name, blinding) -> blinding(blinding));
    return once;
  }

  /** The fields of one object in order; those without a place of their own stand last. */
  static Map<String, Object> ordered(String path, Map<?, ?> object) {
    Map<String, Object> rest = new LinkedHashMap<>();
    object.forEach((name, value) -> rest.put(String.valueOf(name), value));
    Map<String, Object> ordered = new LinkedHashMap<>();
    String last = path.substring(path.lastIndexOf('.') + 1);
    for (String name : Objects.requireNonNull(ORDER.getOrDefault(last, List.of()))) {
      if (rest.containsKey(name)) {
        ordered.put(name, rest.remove(name));
      }
    }
    ordered.putAll(rest);
    return ordered;
  }

  /** True for what says nothing: no text, and lists and objects of nothing. */
  static boolean empty(@Nullable Object value) {
    return value == null
        || value instanceof String text && text.isEmpty()
        || value instanceof List<?> list && list.isEmpty()
        || value instanceof Map<?, ?> map && map.values().stream().allMatch(PlanFields::empty);
  }

  private interface Less {
    Object of(Map<String, Object> object);
  }

  private static Object each(@Nullable Object list, Less less) {
    List<Object> items = new ArrayList<>();
    if (!(list instanceof List<?> all)) {
      return list == null ? items : list;
    }
    for (Object item : all) {
      items.add(item instanceof Map<?, ?> map ? less.of(ordered("", map)) : item);
    }
    return items;
  }

  private static Object row(Map<String, Object> row) {
    Map<String, Object> less = yesOrNo(row);
    less.entrySet()
        .removeIf(
            field ->
                Objects.requireNonNull(USUAL.getOrDefault(field.getKey(), Set.of()))
                    .contains(String.valueOf(field.getValue())));
    return less;
  }

  private static Object setup(Map<String, Object> setup) {
    Map<String, Object> less = new LinkedHashMap<>(setup);
    String name = text(setup, "name");
    if (text(setup, "id").equals(Setup.idOf(name))) {
      less.remove("id");
    }
    BigDecimal grams = SetupReader.grams(text(setup, "mass"));
    if (grams != null && sameNumber(grams, text(setup, "mass_g"))) {
      less.remove("mass_g");
    }
    less.computeIfPresent("settings", (key, settings) -> each(settings, PlanFields::row));
    return less;
  }

  /** The SD is left out where it is worked out from what two laps usually differ by. */
  private static @Nullable Object noise(@Nullable Object noise) {
    if (!(noise instanceof Map<?, ?> map)) {
      return noise;
    }
    Map<String, Object> less = new LinkedHashMap<>(ordered("noise", map));
    BigDecimal usual = TypedNumber.number(text(less, "usual_difference")).orElse(null);
    if (usual != null && sameNumber(DeclaredNoise.usually(usual, "").sd(), text(less, "sd"))) {
      less.remove("sd");
    }
    return less;
  }

  private static Object blinding(Object blinding) {
    return blinding instanceof Map<?, ?> map ? yesOrNo(ordered("blinding", map)) : blinding;
  }

  private static Map<String, Object> yesOrNo(Map<String, Object> fields) {
    Map<String, Object> said = new LinkedHashMap<>(fields);
    said.replaceAll(
        (name, value) ->
            !YES_OR_NO.contains(name)
                ? value
                : switch (String.valueOf(value)) {
                  case "true" -> "yes";
                  case "false" -> "no";
                  default -> value;
                });
    return said;
  }

  private static String text(Map<String, ?> fields, String name) {
    Object value = fields.get(name);
    return value == null ? "" : String.valueOf(value);
  }

  private static boolean sameNumber(BigDecimal number, String typed) {
    return TypedNumber.number(typed).filter(other -> number.compareTo(other) == 0).isPresent();
  }
}
