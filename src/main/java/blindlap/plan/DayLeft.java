package blindlap.plan;

import blindlap.stats.compare.CutShort;
import java.util.List;
import java.util.OptionalInt;

/**
 * What is left of a day that is cut short or loses stints. Counted exactly; nothing of the drawn
 * order is needed.
 *
 * @param cuts what is left if the day ends after a stint, for every stint
 * @param losingOne what is left if one stint is lost, over all choices of it
 * @param losingTwo the same for two
 */
public record DayLeft(List<Cut> cuts, CutShort losingOne, CutShort losingTwo) {

  /**
   * What is left if the day ends after a stint.
   *
   * @param stints stints ridden
   * @param left what the orders can still show
   * @param difference what such a day shows on 8 of 10 days by formula, between two setups if there
   *     are more; NaN if nothing or not known
   */
  public record Cut(int stints, CutShort left, double difference) {}

  public DayLeft {
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

  /** Fewest stints after which a difference is known that can still be shown; empty if none is. */
  public OptionalInt fewestForDifference() {
    return cuts.stream().filter(c -> !Double.isNaN(c.difference())).mapToInt(Cut::stints).min();
  }
}
