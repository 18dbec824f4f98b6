package blindlap.plan;

import blindlap.stats.CutShort;
import blindlap.stats.Interval;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What takes longer to work out about a day: by simulation, with its error, and what is left of the
 * day if it is cut short.
 *
 * @param days simulated days; 0 if nothing could be simulated
 * @param chosen the planned number of stints by simulation; null for three and four setups
 * @param error95 95 % interval of its difference over repetitions of the simulation
 * @param odds how such a day would end; empty if noise or worthwhile difference is unknown
 * @param cuts what is left if the day ends after a stint, for every stint
 * @param losingOne what is left if one stint is lost, over all choices of it
 * @param losingTwo the same for two
 */
public record DayDetail(
    int days,
    DayAnswer.@Nullable Point chosen,
    @Nullable Interval error95,
    List<DayAnswer.Ending> odds,
    List<Cut> cuts,
    CutShort losingOne,
    CutShort losingTwo) {

  /**
   * What is left if the day ends after a stint.
   *
   * @param stints stints ridden
   * @param left what the orders can still show
   * @param difference what such a day shows on 8 of 10 days by formula; NaN if nothing or not known
   */
  public record Cut(int stints, CutShort left, double difference) {}

  public DayDetail {
    odds = List.copyOf(odds);
    cuts = List.copyOf(cuts);
  }

  /** Fewest stints after which something can still be shown; 0 if it never can. */
  public int fewestStints() {
    return cuts.stream()
        .filter(c -> c.left().smallestP() <= 0.05 + 1e-12)
        .mapToInt(Cut::stints)
        .min()
        .orElse(0);
  }
}
