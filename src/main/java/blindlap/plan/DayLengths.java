package blindlap.plan;

import java.util.ArrayList;
import java.util.List;

/** Numbers of stints that are compared with a plan's own. */
final class DayLengths {
  private static final int LONGEST_CURVE = 48;

  private DayLengths() {}

  /** Numbers of stints that the curve shows, its own among them. */
  static List<Integer> of(Plan plan) {
    Integer block = plan.protocol().block();
    int setups = Math.max(2, plan.setups().size());
    int pairs = setups == 3 ? 6 : 4;
    int step = block == null || block < (plan.steps() == null ? 4 : 3) ? pairs : block;
    List<Integer> lengths = new ArrayList<>();
    int last = block == null ? Math.max(24, plan.stints()) : Math.max(LONGEST_CURVE, plan.stints());
    for (int stints = 2; stints <= last; stints++) {
      if (stints % step != 0 && stints != plan.stints() || stints < 8 && stints != plan.stints()) {
        continue;
      }
      if (stints > 32 && stints % (2 * step) != 0 && stints != plan.stints()) {
        continue;
      }
      lengths.add(stints);
    }
    return lengths;
  }
}
