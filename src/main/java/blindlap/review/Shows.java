package blindlap.review;

import blindlap.fault.Unusable;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import blindlap.stats.power.PairsPower;
import blindlap.stats.power.StepsPower;

/**
 * What days of a rule show on 8 of 10, in units of noise: by formula, where a single day has too
 * few orders for it by simulated days with a fixed seed, for three and more setups by the
 * approximation for pairs; of a steps day from its lowest to its highest level.
 */
final class Shows {
  private static final double POWER = 0.8;
  private static final int SIMULATED = 2000;

  /** Days of levels take longer to simulate, and every order has a knot of its own. */
  private static final int SIMULATED_OF_LEVELS = 500;

  private static final long SEED = 20_251_127L;

  private final Plan plan;
  private final Drift drift;

  /**
   * @param plan whose levels are set, if it is a steps day
   */
  Shows(Plan plan, Drift drift) {
    this.plan = plan;
    this.drift = drift;
  }

  /**
   * @param days days alike, pooled; 1 for three and more setups
   * @return NaN if they can never show anything
   */
  double difference(Rule rule, int days) {
    try {
      Assignments set = rule.assignments();
      boolean levels = plan.steps() != null;
      if (rule.setups() > 2 && !levels) {
        PairsPower pairs = PairsPower.of(set, drift);
        return pairs.approximation().difference(1, POWER);
      }
      DayPower power =
          levels ? StepsPower.of(set, plan.levelNumbers(), drift).trend() : DayPower.of(set, drift);
      Detectable together = power.formula().days(days);
      return days > 1 || together.formulaHolds()
          ? together.difference(1, POWER)
          : power
              .difference(1, POWER, levels ? SIMULATED_OF_LEVELS : SIMULATED, SEED, () -> false)
              .difference();
    } catch (Unusable noSuchRule) {
      // Such as a longest run that no order of so many stints keeps to.
      return Double.NaN;
    }
  }
}
