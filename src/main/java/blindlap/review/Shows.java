package blindlap.review;

import blindlap.fault.Unusable;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Drift;
import blindlap.stats.power.DayPower;
import blindlap.stats.power.Detectable;
import blindlap.stats.power.PairsPower;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * What days of a rule show on 8 of 10, in units of noise: by formula, where a single day has too
 * few orders for it by simulated days with a fixed seed, for levels by their trend, for three and
 * more setups by the approximation for pairs.
 */
final class Shows {
  private static final double POWER = 0.8;
  private static final int SIMULATED = 2000;
  private static final int SIMULATED_OF_LEVELS = 500;
  private static final long SEED = 20_251_127L;

  private final Drift drift;

  /** Of a steps day; null else. */
  private final double @Nullable [] levels;

  /**
   * @param plan of the day; of a steps day differences are from the lowest to the highest level
   */
  Shows(Plan plan, Drift drift) {
    this.drift = drift;
    this.levels = plan.steps() == null ? null : plan.levelNumbers();
  }

  /**
   * @param days days alike, pooled; 1 for levels and for three and more setups
   * @return NaN if they can never show anything
   */
  double difference(Rule rule, int days) {
    try {
      Assignments set = rule.assignments();
      if (levels != null) {
        boolean[] all = new boolean[rule.stints()];
        Arrays.fill(all, true);
        return DayPower.ofLevels(set, levels, all, drift)
            .difference(1, POWER, SIMULATED_OF_LEVELS, SEED, () -> false)
            .difference();
      }
      if (rule.setups() > 2) {
        PairsPower pairs = PairsPower.of(set, drift);
        return pairs.approximation().difference(1, POWER);
      }
      DayPower power = DayPower.of(set, drift);
      Detectable together = power.formula().days(days);
      return days > 1 || together.formulaHolds()
          ? together.difference(1, POWER)
          : power.difference(1, POWER, SIMULATED, SEED, () -> false).difference();
    } catch (Unusable noSuchRule) {
      // Such as a longest run that no order of so many stints keeps to.
      return Double.NaN;
    }
  }
}
