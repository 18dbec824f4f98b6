package blindlap.desk;

import blindlap.fault.Problem;
import blindlap.plan.Setting;
import blindlap.session.HelperEntry;
import blindlap.session.SafetyCheck;
import java.util.ArrayList;
import java.util.List;

/** What must be done before a lap may start, whoever swaps. */
final class ReadyToRide {
  private ReadyToRide() {}

  /**
   * What is missing; empty if a lap may start.
   *
   * @param settings what is to be measured
   * @param laps ridden so far, warm-up included: after each it is asked whether the rider is fit
   * @param first true before the first stint of the day
   */
  static List<Problem> missing(HelperEntry entry, List<Setting> settings, int laps, boolean first) {
    List<Problem> missing = new ArrayList<>();
    int checks = SafetyCheck.values().length - entry.confirmed().size();
    if (checks > 0) {
      missing.add(Problem.of(DeskFault.CHECKS_OPEN, "", checks));
    }
    missing.addAll(unmeasured(entry, settings));
    Boolean fit = entry.fit().get(laps);
    if (!first && fit == null) {
      missing.add(Problem.of(DeskFault.FIT_OPEN, ""));
    } else if (Boolean.FALSE.equals(fit)) {
      missing.add(Problem.of(DeskFault.RIDER_NOT_FIT, ""));
    }
    return missing;
  }

  /** Settings that are not measured, and those outside their tolerance without a reason. */
  static List<Problem> unmeasured(HelperEntry entry, List<Setting> settings) {
    List<Problem> missing = new ArrayList<>(Tolerance.unread(settings, entry.measured()));
    for (HelperEntry.Outside outside : entry.outside()) {
      if (outside.reason().isBlank()) {
        missing.add(Problem.of(DeskFault.OUTSIDE_TOLERANCE, "", outside.setting()));
      }
    }
    return missing;
  }
}
