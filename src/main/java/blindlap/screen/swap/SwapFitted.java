package blindlap.screen.swap;

import blindlap.desk.HelperDay;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What was really fitted: a touch that is taken back costs nothing of what was measured. */
final class SwapFitted {
  private final Map<Integer, HelperEntry> measuredOn = new HashMap<>();

  /** Another stint is in hand. */
  void forget() {
    measuredOn.clear();
  }

  /** An entry with another setup fitted; what was measured on it before stands again. */
  HelperEntry to(HelperDay day, HelperEntry now, int setup) {
    measuredOn.put(now.fitted(), now);
    HelperEntry before = measuredOn.get(setup);
    HelperEntry to = now.withFitted(setup);
    return before == null
        ? carried(day, now, to)
        : carried(day, now, to.withMeasured(before.measured(), before.outside()));
  }

  /** What is dialled on the bike whatever is fitted, such as a pressure, is not measured twice. */
  private static HelperEntry carried(HelperDay day, HelperEntry from, HelperEntry to) {
    HelperEntry carried = to;
    for (Setting setting : day.plan().bike()) {
      String typed = from.measured().get(setting.name());
      if (typed != null) {
        carried = withReasons(carried, from, setting.name());
        carried = SwapValues.judged(day, carried, setting.name(), typed);
      }
    }
    return carried;
  }

  /** A reason that was given for the value goes with it. */
  private static HelperEntry withReasons(HelperEntry to, HelperEntry from, String name) {
    List<HelperEntry.Outside> outside = new ArrayList<>(to.outside());
    outside.removeIf(o -> o.setting().equals(name));
    from.outside().stream().filter(o -> o.setting().equals(name)).forEach(outside::add);
    return to.withMeasured(to.measured(), outside);
  }
}
