package blindlap.screen.plan;

import blindlap.screen.part.Shell;
import blindlap.wording.PlanWords;
import java.time.Clock;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What drafts begin with. */
final class PlanStart {
  private PlanStart() {}

  /**
   * Fields of a plan file as the page shows them: it has one field for a mass, which takes its
   * unit.
   */
  static Map<String, Object> readable(Map<String, ?> fields) {
    Map<String, Object> readable = new LinkedHashMap<>(fields);
    if (fields.get("setups") instanceof List<?> setups) {
      readable.put("setups", setups.stream().map(PlanStart::withMass).toList());
    }
    return readable;
  }

  private static Object withMass(Object setup) {
    if (!(setup instanceof Map<?, ?> map) || map.get("mass_g") == null) {
      return setup;
    }
    Object typed = map.get("mass");
    if (typed != null && !String.valueOf(typed).isBlank()) {
      return setup;
    }
    Map<Object, Object> own = new LinkedHashMap<>(map);
    own.put("mass", own.remove("mass_g") + " g");
    return own;
  }

  /** A new draft of this kind. */
  static Map<String, Object> fields(Clock clock, Shell.Beginning as) {
    Map<String, Object> fields = fields(clock);
    if (as == Shell.Beginning.NOISE_RUN) {
      fields.put("kind", "noise run");
      fields.put("question", PlanWords.say("noise.run.question"));
      fields.put("setups", List.of(Map.of("name", "")));
      fields.remove("protocol");
    }
    if (as == Shell.Beginning.TELLING_RUN) {
      telling(fields);
    }
    return fields;
  }

  /** Two levels of one setting, the quickest to change, with the usual trials. */
  private static void telling(Map<String, Object> fields) {
    fields.put("kind", "telling run");
    fields.put("question", PlanWords.say("telling.question"));
    fields.put("setups", List.of(Map.of("name", "")));
    fields.put("telling_run", Map.of("task", "triangle", "one_setting", Map.of("way", "clicks")));
    fields.put("laps", Map.of("warm_up", "2"));
    List.of("protocol", "stints", "measures").forEach(fields::remove);
  }

  /** A new draft, as typed: tomorrow, the usual rule and a lap time to compare. */
  static Map<String, Object> fields(Clock clock) {
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("day", clock.instant().atZone(clock.getZone()).toLocalDate().plusDays(1).toString());
    fields.put("protocol", "blocks-of-four");
    fields.put("stints", "16");
    fields.put("laps", Map.of("warm_up", "2", "settling", "0", "scored", "1"));
    fields.put("setups", List.of(Map.of("name", ""), Map.of("name", "")));
    fields.put(
        "measures",
        List.of(
            Map.of(
                "name",
                "lap time",
                "kind",
                "lap time",
                "unit",
                "s",
                "role",
                "primary",
                "better",
                "lower")));
    fields.put(
        "timetable",
        Map.of("zone", clock.getZone().getId(), "start", "09:00", "daylight_end", "17:00"));
    return fields;
  }
}
