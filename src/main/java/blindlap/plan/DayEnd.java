package blindlap.plan;

import blindlap.stats.compare.CutShort;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;

/** What a day that ends early has left. It needs nothing of the key. */
public final class DayEnd {
  private static final double LEVEL = 0.05 + 1e-12;

  private DayEnd() {}

  /** The smallest p that can still come out if the day ends after this stint; 1 if none can. */
  public static double smallestP(Plan plan, int stints) {
    Assignments set = plan.rule().assignments();
    CutShort left =
        plan.steps() == null
            ? CutShort.after(set, stints, drift(plan))
            : CutShort.afterOfTrend(set, stints, drift(plan));
    return left.smallestP();
  }

  /** The first stint after which the day may end and still show something; 0 if none is. */
  public static int earliest(Plan plan) {
    for (int stint = 1; stint <= plan.stints(); stint++) {
      if (smallestP(plan, stint) <= LEVEL) {
        return stint;
      }
    }
    return 0;
  }

  private static Drift drift(Plan plan) {
    return plan.primary().map(Measure::drift).orElse(Drift.LINE);
  }
}
