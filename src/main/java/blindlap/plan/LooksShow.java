package blindlap.plan;

import blindlap.stats.look.PlannedLooks;
import java.util.List;

/**
 * What the looks that a plan declares would save.
 *
 * @param looks their last stints
 * @param never those after which the day can never stop
 * @param times the true difference that days were simulated with, in units of the noise
 * @param simulated such days
 */
public record LooksShow(
    List<Integer> looks, List<Integer> never, double times, PlannedLooks.Simulated simulated) {
  public LooksShow {
    looks = List.copyOf(looks);
    never = List.copyOf(never);
  }
}
