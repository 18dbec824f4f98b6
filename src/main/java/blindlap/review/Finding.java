package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.seal.OpenKey;
import blindlap.session.SessionState;
import blindlap.stats.Assignments;
import blindlap.stats.Interval;
import blindlap.stats.OrderSet;
import blindlap.stats.Sampling;
import blindlap.stats.TwoSetups;
import blindlap.stats.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a session found: every measure compared over exactly the orders that could have been drawn.
 *
 * @param state the session, unsealed
 * @param key its opened key
 * @param orders what the set of orders is worth
 * @param primary the comparison that carries the verdict; empty if it could not be made
 * @param others the other measures that could be compared, in the order of the plan
 * @param refusals measures that could not be compared, with the reason
 */
public record Finding(
    SessionState state,
    OpenKey key,
    OrderSet orders,
    Optional<Comparison> primary,
    List<Comparison> others,
    List<Refusal> refusals) {

  /** A measure that could not be compared, and why. */
  public record Refusal(Measure measure, String reason) {}

  public Finding {
    others = List.copyOf(others);
    refusals = List.copyOf(refusals);
  }

  /**
   * Analyses a session.
   *
   * @param state an unsealed session with two setups
   * @throws IllegalStateException if it is sealed
   */
  public static Finding of(SessionState state) {
    OpenKey key =
        state.openKey().orElseThrow(() -> new IllegalStateException("the session is sealed"));
    Plan plan = state.plan();
    Assignments set = plan.rule().assignments();
    OrderSet orders = OrderSet.of(set);
    Comparison primary = null;
    List<Comparison> others = new ArrayList<>();
    List<Refusal> refusals = new ArrayList<>();
    for (Measure measure : plan.measures()) {
      try {
        Comparison comparison = compare(state, key, set, orders, measure);
        if (measure.role() == Measure.Role.PRIMARY) {
          primary = comparison;
        } else {
          others.add(comparison);
        }
      } catch (IllegalArgumentException e) {
        refusals.add(new Refusal(measure, String.valueOf(e.getMessage())));
      }
    }
    return new Finding(state, key, orders, Optional.ofNullable(primary), others, refusals);
  }

  private static Comparison compare(
      SessionState state, OpenKey key, Assignments set, OrderSet orders, Measure measure) {
    StintValues stints = StintValues.of(state, measure, StintValues.Laps.NOT_VOID);
    TwoSetups result =
        TwoSetups.compare(
            set,
            key.setups(),
            stints.values(),
            stints.valid(),
            measure.drift(),
            Sampling.PREFERRED);
    Optional<Verdict> verdict = Optional.empty();
    if (measure.role() == Measure.Role.PRIMARY) {
      verdict = Comparison.band(measure).map(band -> verdict(orders, result, band));
    }
    return new Comparison(measure, stints, result, verdict);
  }

  private static Verdict verdict(OrderSet orders, TwoSetups result, Interval band) {
    if (orders.attainableLevel() == 0) {
      return Verdict.COULD_NOT_SHOW;
    }
    return result.verdict(band.low(), band.high());
  }
}
