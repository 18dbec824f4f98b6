package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.fault.TypedText;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What was measured, and how it lies to its tolerance: for whoever types it. */
public final class MeasuredValues {
  private MeasuredValues() {}

  /** How many settings are not measured yet, or cannot be read. */
  public static int unread(List<Setting> settings, HelperEntry entry) {
    return (int)
        settings.stream()
            .filter(s -> !Tolerance.readable(s, entry.measured().getOrDefault(s.name(), "")))
            .count();
  }

  /**
   * What is wrong with one value as it was typed; nothing if it can be kept.
   *
   * @param paper true where it was copied from paper: what is empty there stays open
   */
  public static List<Problem> wrong(Setting setting, String typed, boolean paper) {
    List<Setting> one = List.of(setting);
    Map<String, String> measured = Map.of(setting.name(), typed);
    List<Problem> problems =
        new ArrayList<>(
            paper ? Tolerance.notNumbers(one, measured) : Tolerance.unread(one, measured));
    TypedText.problem(typed, TypedText.Form.WORDS, setting.name()).ifPresent(problems::add);
    return problems;
  }

  /** An entry with every value in it judged as it stands, half typed or not. */
  public static HelperEntry judged(List<Setting> settings, HelperEntry entry) {
    HelperEntry judged = entry;
    for (Map.Entry<String, String> each : entry.measured().entrySet()) {
      judged = judged(settings, judged, each.getKey(), each.getValue());
    }
    return judged;
  }

  /** An entry with one more value; a reason stays with the value that it was given for. */
  public static HelperEntry judged(
      List<Setting> settings, HelperEntry from, String name, String typed) {
    Setting setting = settings.stream().filter(s -> s.name().equals(name)).findFirst().orElse(null);
    if (setting == null) {
      return from;
    }
    HelperEntry to = from.typing(name, typed);
    List<HelperEntry.Outside> outside = new ArrayList<>(from.outside());
    Optional<HelperEntry.Outside> known = from.outside(name);
    outside.removeIf(o -> o.setting().equals(name));
    if (Tolerance.readable(setting, typed)) {
      Tolerance.outside(setting, typed)
          .map(o -> known.filter(k -> k.measured().equals(o.measured())).orElse(o))
          .ifPresent(outside::add);
    }
    return to.withMeasured(to.measured(), outside);
  }
}
