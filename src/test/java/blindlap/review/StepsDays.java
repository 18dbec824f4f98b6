package blindlap.review;

import blindlap.desk.BundledProtocols;
import blindlap.desk.PlanPreview;
import blindlap.plan.Plan;
import blindlap.stats.order.Orders;
import java.util.Map;
import java.util.Random;

/** Steps days with invented laps, for tests that need a finding and no notebook. */
public final class StepsDays {
  private StepsDays() {}

  /**
   * A plan of one time, in blocks that hold each level once.
   *
   * @param stepsDay fields of steps_day, levels among them
   * @param better of the time
   */
  public static Plan plan(String stepsDay, int levels, int stints, String better) {
    return measured(
        stepsDay,
        levels,
        stints,
        "{name: lap time, kind: lap time, unit: s, role: primary, better: %s, worthwhile: 0.8}"
            .formatted(better));
  }

  /** The same of any one measure. */
  public static Plan measured(String stepsDay, int levels, int stints, String measure) {
    String text =
        """
        question: Which rebound is quickest?
        kind: steps day
        rider: L. Ravn
        trail: Heron line
        day: 2026-10-10
        setups: [{name: Shock P}]
        steps_day: {setting: rebound, %s}
        measures: [%s]
        protocol: %s-levels
        stints: %d
        blinding: {helper: T. Ekholm}
        """
            .formatted(stepsDay, measure, levels == 3 ? "three" : "four", stints);
    return PlanPreview.of(text, BundledProtocols.load()).plan().orElseThrow();
  }

  /** A day of one lap a stint: drift, an effect a level, and noise. */
  public static DayRecord day(Plan plan, double[] effects, double noise, Random random) {
    String order = Days.order(plan.rule(), random);
    double[] values = Days.values(Orders.parse(order), 93, effects, noise, 1, random);
    return Days.day(plan, order, Map.of("lap time", values));
  }
}
