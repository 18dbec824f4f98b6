package blindlap.desk;

import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What is really fitted before a stint, as it is said on a page: a touch that is taken back costs
 * nothing of what was measured.
 */
public final class ReallyFitted {
  private final Map<Integer, HelperEntry> measuredOn = new HashMap<>();

  /** Another stint is in hand. */
  public void forget() {
    measuredOn.clear();
  }

  /**
   * An entry with another setup fitted; what was measured on it before stands again.
   *
   * @param settings what is measured with that setup on
   * @param bike what is dialled on the bike whatever is fitted, such as a pressure: not measured
   *     twice
   */
  public HelperEntry to(HelperEntry now, int setup, List<Setting> settings, List<Setting> bike) {
    measuredOn.put(now.fitted(), now);
    HelperEntry before = measuredOn.get(setup);
    HelperEntry to = now.withFitted(setup);
    if (before != null) {
      to = to.withMeasured(before.measured(), before.outside());
    }
    for (Setting setting : bike) {
      String typed = now.measured().get(setting.name());
      if (typed != null) {
        to =
            MeasuredValues.judged(
                settings, withReason(to, now, setting.name()), setting.name(), typed);
      }
    }
    return to;
  }

  /** A reason that was given for the value goes with it. */
  private static HelperEntry withReason(HelperEntry to, HelperEntry from, String name) {
    List<HelperEntry.Outside> outside = new ArrayList<>(to.outside());
    outside.removeIf(o -> o.setting().equals(name));
    from.outside(name).ifPresent(outside::add);
    return to.withMeasured(to.measured(), outside);
  }

  /** Says nothing of what it holds. */
  @Override
  public String toString() {
    return "ReallyFitted[]";
  }
}
