package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.desk.Tolerance;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What was measured, and how it lies to its tolerance. */
final class SwapValues {
  private SwapValues() {}

  /** How many settings of a stint are not measured yet, or cannot be read. */
  static int unread(HelperDay day, HelperEntry entry) {
    return (int)
        day.settings(entry.stint(), entry.fitted()).stream()
            .filter(s -> !Tolerance.readable(s, entry.measured().getOrDefault(s.name(), "")))
            .count();
  }

  /** An entry with every value in it judged. */
  static HelperEntry judged(HelperDay day, HelperEntry entry) {
    HelperEntry judged = entry;
    for (Map.Entry<String, String> each : entry.measured().entrySet()) {
      judged = judged(day, judged, each.getKey(), each.getValue());
    }
    return judged;
  }

  /** An entry with one more value; a reason stays with the value that it was given for. */
  static HelperEntry judged(HelperDay day, HelperEntry from, String name, String typed) {
    Setting setting =
        day.settings(from.stint(), from.fitted()).stream()
            .filter(s -> s.name().equals(name))
            .findFirst()
            .orElse(null);
    if (setting == null) {
      return from;
    }
    Map<String, String> measured = new LinkedHashMap<>(from.measured());
    measured.put(name, typed);
    List<HelperEntry.Outside> outside = new ArrayList<>(from.outside());
    Optional<HelperEntry.Outside> known =
        outside.stream().filter(o -> o.setting().equals(name)).findFirst();
    outside.removeIf(o -> o.setting().equals(name));
    if (Tolerance.readable(setting, typed)) {
      Tolerance.outside(setting, typed)
          .map(o -> known.filter(k -> k.measured().equals(o.measured())).orElse(o))
          .ifPresent(outside::add);
    }
    return from.withMeasured(measured, outside);
  }
}
