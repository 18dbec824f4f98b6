package blindlap.review;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.Rule;
import blindlap.plan.Setup;
import blindlap.stats.order.Orders;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/** Invented fields for tests, made in memory. */
public final class FieldDays {
  private FieldDays() {}

  /**
   * What is true of a field.
   *
   * @param measure the primary measure of every day
   * @param shocks the setups of every day, such as "KL"
   * @param leads what every shock adds to a value
   * @param changed what a shock adds besides on the last day alone
   */
  public record Truth(
      Measure measure,
      List<String> shocks,
      double base,
      Map<Character, Double> leads,
      Map<Character, Double> changed,
      double noise) {}

  /** The field of days that were ridden so. */
  public static FieldFinding finding(Truth truth, Random random) {
    List<FieldEntry> entries = new ArrayList<>();
    for (int day = 0; day < truth.shocks().size(); day++) {
      FieldEntry.of(record(truth, day, random)).ifPresent(entries::add);
    }
    return new FieldAnalysis(
            new FieldFinding.Asked("R. Lind", "Quarry loop", truth.measure().name()),
            Optional.empty(),
            entries,
            List.of())
        .finding();
  }

  private static DayRecord record(Truth truth, int day, Random random) {
    String shocks = truth.shocks().get(day);
    boolean last = day == truth.shocks().size() - 1;
    Rule rule = Rule.blocks(shocks.length(), 12, shocks.length() == 2 ? 4 : 3);
    Plan plan = plan(rule, truth.measure(), shocks, LocalDate.of(2026, 6, 6).plusDays(7L * day));
    double[] effects =
        shocks
            .chars()
            .mapToDouble(
                c ->
                    truth.leads().getOrDefault((char) c, 0.0)
                        + (last ? truth.changed().getOrDefault((char) c, 0.0) : 0))
            .toArray();
    Measure.Kind kind = truth.measure().kind();
    String order = Days.order(rule, random);
    int decimals = kind == Measure.Kind.COUNT || kind == Measure.Kind.CATEGORY_SCALE ? 0 : 2;
    double[] values =
        Days.values(Orders.parse(order), truth.base(), effects, truth.noise(), decimals, random);
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.max(kind.timed() ? 0.01 : kind.least(), values[i]);
    }
    DayRecord made = Days.day(plan, order, Map.of(truth.measure().name(), values));
    return new DayRecord(
        "0123456789abcde" + day,
        plan,
        made.key(),
        made.laps(),
        made.guesses(),
        made.blindBroken(),
        plan.stints(),
        new TreeMap<>(),
        List.of());
  }

  private static Plan plan(Rule rule, Measure measure, String shocks, LocalDate day) {
    Plan plan = Days.plan(rule, List.of(measure));
    return new Plan(
        plan.kind(),
        plan.question(),
        plan.expectations(),
        plan.rider(),
        plan.trail(),
        day,
        plan.conditions(),
        shocks.chars().mapToObj(c -> Setup.named("Shock " + (char) c)).toList(),
        plan.change(),
        plan.bikes(),
        plan.differencesReason(),
        plan.bike(),
        plan.measures(),
        plan.protocol(),
        plan.stints(),
        plan.laps(),
        plan.blinding(),
        plan.timetable(),
        plan.noise(),
        plan.override(),
        plan.series(),
        plan.seriesSessions(),
        plan.covariates(),
        plan.looks(),
        null,
        null,
        null);
  }
}
