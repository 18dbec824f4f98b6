package blindlap.plan;

import java.util.List;

/**
 * All ways of dividing a day that fit it, its lap budget and what parts may be handled, and can
 * show something.
 *
 * @param divisions the plan's own rule first, then by scored laps and stints
 * @param beyond rules with a number of scored laps of which not even the shortest day that could
 *     show something fits
 * @param silent those with the most stints that fit and yet can show nothing on 8 of 10 days
 * @param medians numbers of scored laps that are too few for a median that the plan declares
 * @param rough days whose sets of orders are too small for the formula and still to be simulated,
 *     one a set
 */
public record DayDivided(
    List<Division> divisions, int beyond, int silent, int medians, List<Plan> rough) {
  public DayDivided {
    divisions = List.copyOf(divisions);
    rough = List.copyOf(rough);
  }

  /** Those with the most stints that fit, of their rule and number of scored laps. */
  public List<Division> longest() {
    return divisions.stream().filter(Division::longest).toList();
  }

  /** How many there are with fewer stints, of the same rule and as many scored laps. */
  public int shorter() {
    return divisions.size() - longest().size();
  }
}
