package blindlap.exchange;

import blindlap.plan.Plan;
import blindlap.session.HelperEntry;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Corrections of wrong fits in the helper's opened records, in the order they were said. */
final class HelperCorrections {
  private HelperCorrections() {}

  /**
   * A correction.
   *
   * @param helper who said it
   */
  record Made(String helper, HelperEntry.Correction correction) {}

  /** All of them; those of a stint that the plan does not have are left out. */
  static List<Made> of(Map<Integer, String> texts, Plan plan) {
    List<Made> made = new ArrayList<>();
    new TreeMap<>(texts)
        .values()
        .forEach(
            text ->
                HelperEntryText.read(text, plan)
                    .ifPresent(
                        entry ->
                            entry.corrections().stream()
                                .filter(c -> c.stint() >= 0 && c.stint() <= plan.stints())
                                .forEach(c -> made.add(new Made(entry.helper(), c)))));
    return made;
  }
}
