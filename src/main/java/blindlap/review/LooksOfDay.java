package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.session.day.LapId;
import blindlap.stats.look.PrefixRule;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.Sampling;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the looks of a day say, and its end after them (docs/method.md#looks). */
public final class LooksOfDay {
  /** At which a day is settled. */
  public static final double LEVEL = 0.05;

  private LooksOfDay() {}

  /** The rule over looks that were taken, the day not being over. */
  public static PrefixRule taken(
      Plan plan, Assignments set, int[] order, Measure primary, List<TakenLook> looks) {
    return PrefixRule.of(
        set, order, values(plan, primary, looks), false, primary.drift(), Sampling.PREFERRED);
  }

  /**
   * The same with the end of the day, at which all of the level that is left is spent.
   *
   * @param end one value per stint; those of stints that a look used are put in place of them
   */
  static PrefixRule ended(
      Plan plan,
      Assignments set,
      int[] order,
      Measure primary,
      List<TakenLook> looks,
      double[] end) {
    List<PrefixRule.Look> all = values(plan, primary, looks);
    double[] mixed = end.clone();
    PrefixRule.Look last = all.get(all.size() - 1);
    System.arraycopy(last.values(), 0, mixed, 0, last.upTo());
    all.add(new PrefixRule.Look(plan.stints(), mixed));
    return PrefixRule.of(set, order, all, true, primary.drift(), Sampling.PREFERRED);
  }

  private static List<PrefixRule.Look> values(Plan plan, Measure primary, List<TakenLook> looks) {
    List<PrefixRule.Look> values = new ArrayList<>();
    looks.forEach(
        look -> values.add(new PrefixRule.Look(look.stint(), stints(look, plan, primary))));
    return values;
  }

  /** One value per stint on the scale of the analysis, as a look used it; NaN where none. */
  static double[] stints(TakenLook look, Plan plan, Measure measure) {
    return StintValues.of(
            plan, id -> lap(look, id, measure), measure, StintValues.Laps.counting(plan))
        .values();
  }

  private static Optional<DayRecord.Lap> lap(TakenLook look, LapId id, Measure measure) {
    return Optional.ofNullable(look.values().get(id))
        .map(
            value ->
                new DayRecord.Lap(id, true, Map.of(measure.name(), value), Optional.empty(), ""));
  }
}
