package blindlap.plan;

import blindlap.stats.Interval;
import java.util.List;

/**
 * What a day can show by simulation, with its error.
 *
 * @param days simulated days
 * @param chosen the planned number of stints
 * @param error95 95 % interval of its difference over repetitions of the simulation
 * @param odds how such a day would end; empty if noise or worthwhile difference is unknown
 */
public record DayDetail(
    int days, DayAnswer.Point chosen, Interval error95, List<DayAnswer.Ending> odds) {

  public DayDetail {
    odds = List.copyOf(odds);
  }
}
