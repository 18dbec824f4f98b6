package blindlap.compute;

import blindlap.plan.DayAnswer;
import blindlap.plan.DayDivided;
import blindlap.plan.Division;
import blindlap.plan.Measure;
import blindlap.plan.NoiseKnown;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.plan.StepsShows;
import blindlap.stats.compare.Scale;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * The ways of dividing a day as JSON (docs/method.md#day-divided). Differences are in the unit of
 * the primary measure, in per cent on the ratio scale, or in units of the noise where that is not
 * known; {@code unit} says which. Of a steps day they are from the lowest to the highest level.
 */
public final class DivisionsJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private DivisionsJson() {}

  /** All divisions, and how many were left out and why. */
  public static String write(Plan plan, DayDivided divided) {
    ObjectNode root = JSON.createObjectNode();
    root.put("engine", Engine.version());
    root.put("measure", plan.primary().map(Measure::name).orElse(""));
    root.put("difference", difference(plan));
    ArrayNode divisions = root.putArray("divisions");
    divided.divisions().forEach(each -> division(divisions.addObject(), plan, each));
    ObjectNode out = root.putObject("left_out");
    out.put("not_fitting", divided.beyond());
    out.put("showing_nothing", divided.silent());
    out.put("too_few_laps_for_median", divided.medians());
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("divisions are always JSON", e);
    }
  }

  private static void division(ObjectNode node, Plan plan, Division each) {
    node.put("protocol", each.plan().protocol().name());
    node.put("stints", each.stints()).put("scored_laps", each.scored());
    node.put("laps", each.laps());
    node.put("start", each.schedule().start().toLocalTime().toString());
    node.put("end", each.schedule().end().toLocalTime().toString());
    node.put("real_swaps_expected", each.swaps());
    node.put("handlings", each.handlings().day());
    ObjectNode shows = node.putObject("shows");
    shows.put("unit", unit(each.plan()));
    shows.put("least", each.least()).put("most", each.most());
    shows.put("source", PlanJson.word(each.source()));
    shows.put("approximate", each.source() == DayAnswer.Source.PAIRS);
    shows.put("worthwhile", PlanJson.word(each.reach().reached()));
    each.reach().share().ifPresent(share -> shows.put("worthwhile_stint_share", share));
    each.steps().ifPresent(steps -> steps(shows, each, steps));
    node.put("longest", each.longest()).put("best", each.best()).put("planned", each.is(plan));
  }

  /** For each unit of the setting, and the bend at the most that the noise may be. */
  private static void steps(ObjectNode shows, Division each, StepsShows steps) {
    shows.put("per_unit_least", steps.perUnit(each.least()));
    shows.put("per_unit_most", steps.perUnit(each.most()));
    if (steps.bendSeen()) {
      shows.put("bend_most", steps.bend()).put("bend_deeper", steps.atLeast());
    }
  }

  /** What every difference is of. */
  private static String difference(Plan plan) {
    if (plan.steps() != null) {
      return "lowest to highest level";
    }
    return plan.oneDifference() ? "two setups" : "one named pair of setups";
  }

  private static String unit(Plan plan) {
    if (NoiseKnown.of(plan).kind() == NoiseKnown.Kind.UNKNOWN) {
      return "noise";
    }
    return plan.primary().map(m -> m.scale() == Scale.RATIO ? "%" : m.unit()).orElse("");
  }
}
