package blindlap.desk;

import blindlap.session.SessionState;
import blindlap.session.day.Trial;
import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Stints that the helper's day passes over: those of a void trial for which the bike was not handed
 * over. They wait for no record, and nothing was fitted for them.
 */
final class PassedOver {
  private PassedOver() {}

  /** From 1, in order; none but in a telling run. */
  static SortedSet<Integer> of(SessionState state) {
    SortedSet<Integer> passed = new TreeSet<>();
    if (state.plan().telling() == null) {
      return passed;
    }
    for (Trial trial : Trial.of(state.day())) {
      for (int stint = trial.first(); stint <= trial.last(); stint++) {
        if (trial.voided().isPresent() && !state.helperRecords().containsKey(stint)) {
          passed.add(stint);
        }
      }
    }
    return Collections.unmodifiableSortedSet(passed);
  }
}
