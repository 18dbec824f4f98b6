package blindlap.plan;

import blindlap.stats.power.SimulatedDays;
import blindlap.stats.power.SimulatedPairs;

/** Simulated days of a plan; more of the same plan can be joined to them. */
public sealed interface DaySimulation {
  /** Number of days. */
  int days();

  /** Days that are worth waiting for; of levels and of three and more setups each takes longer. */
  static int usualDays(Plan plan) {
    return plan.setups().size() > 2 ? 500 : 2000;
  }

  /**
   * These days and others of the same plan.
   *
   * @throws IllegalArgumentException if the others are of another plan
   */
  DaySimulation and(DaySimulation more);

  /** Days of two setups, or of levels. */
  record Two(SimulatedDays simulated) implements DaySimulation {
    @Override
    public int days() {
      return simulated.days();
    }

    @Override
    public DaySimulation and(DaySimulation more) {
      if (more instanceof Two two) {
        return new Two(simulated.and(two.simulated));
      }
      throw new IllegalArgumentException("days of another plan");
    }
  }

  /**
   * Days of three or four setups.
   *
   * @param simulated days at the true differences the page tells of, then at a rising ladder
   * @param ladder place of the ladder's first difference
   */
  record Many(SimulatedPairs simulated, int ladder) implements DaySimulation {
    @Override
    public int days() {
      return simulated.days();
    }

    @Override
    public DaySimulation and(DaySimulation more) {
      if (more instanceof Many many && many.ladder == ladder) {
        return new Many(simulated.and(many.simulated), ladder);
      }
      throw new IllegalArgumentException("days of another plan");
    }
  }
}
