package blindlap.plan;

import blindlap.stats.distribution.Interval;
import blindlap.stats.power.SimulatedPairs;
import java.util.List;
import java.util.Optional;

/**
 * What a day can show by simulation, with its error.
 *
 * @param days simulated days
 * @param chosen the planned number of stints
 * @param error95 95 % interval of its difference over repetitions of the simulation
 * @param odds how such a day would end; empty for three and four setups, and if noise or worthwhile
 *     difference is unknown
 * @param pairs the same for three and four setups
 * @param looks what the declared looks save; empty where none is declared
 */
public record DayDetail(
    int days,
    DayAnswer.Point chosen,
    Interval error95,
    List<DayAnswer.Ending> odds,
    List<PairEnding> pairs,
    Optional<LooksShow> looks) {

  /**
   * How such a day would end if one setup differed from all others.
   *
   * @param difference by how much it truly differs
   * @param odds shares of days
   * @param best the same at the least that the noise may be; the odds themselves where that is
   *     known
   */
  public record PairEnding(double difference, SimulatedPairs.Odds odds, SimulatedPairs.Odds best) {}

  public DayDetail {
    odds = List.copyOf(odds);
    pairs = List.copyOf(pairs);
  }
}
