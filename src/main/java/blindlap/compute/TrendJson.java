package blindlap.compute;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.StepsDay;
import blindlap.review.Comparison;
import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Trend;
import blindlap.stats.order.Orders;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The trend over the levels of a steps day, in the JSON of the finding; fields are called as in the
 * answer to {@code trend}.
 */
final class TrendJson {
  private static final double LEVEL = 0.95;

  private TrendJson() {}

  /** What the levels are; nothing of other days. */
  static void put(ObjectNode root, Plan plan) {
    StepsDay steps = plan.steps();
    if (steps == null) {
      return;
    }
    ObjectNode node = root.putObject("steps_day");
    node.put("setting", steps.setting());
    node.put("unit", steps.unit());
    ArrayNode levels = node.putArray("levels");
    for (BigDecimal level : plan.levels().orElseThrow()) {
      levels.add(level);
    }
  }

  /**
   * What a trend has beside estimate, p and intervals; what is not tested is null. Of middle and
   * ends nothing is said but for the primary measure, since several would be wrong more often.
   */
  static void put(ObjectNode node, Comparison comparison, Trend trend, double[] levels) {
    Measure measure = comparison.measure();
    Scale scale = measure.scale();
    JsonNumbers.number(node, "per_unit", scale.back(trend.perUnit(levels)));
    boolean tested = comparison.tested();
    trend
        .bend()
        .filter(bend -> tested)
        .ifPresentOrElse(
            bend -> {
              ObjectNode bent = node.putObject("bend");
              JsonNumbers.number(bent, "t", bend.t());
              JsonNumbers.number(bent, "p", bend.p());
            },
            () -> node.putNull("bend"));
    ArrayNode means = node.putArray("means");
    ArrayNode between = node.putArray("between");
    trend.means().ifPresent(found -> means(means, between, scale, found));
    if (measure.role() != Measure.Role.PRIMARY) {
      return;
    }
    boolean directed = tested && measure.better() != Measure.Better.NEITHER;
    boolean lower = measure.better() == Measure.Better.LOWER;
    OptionalInt nothing = OptionalInt.empty();
    level(node, "middle_better", directed ? trend.middleBetter(lower) : nothing, levels);
    level(node, "still_better", directed ? trend.stillBetter(lower) : nothing, levels);
  }

  private static void means(ArrayNode means, ArrayNode between, Scale scale, LevelMeans found) {
    for (LevelMeans.Mean mean : found.means()) {
      ObjectNode each = means.addObject();
      each.put("level", mean.level());
      each.put("stints", mean.stints());
      JsonNumbers.number(each, "mean", scale.back(mean.mean()));
      JsonNumbers.number(each, "standard_error", mean.standardError());
      JsonNumbers.interval(
          each, "interval_95", Optional.of(JsonNumbers.back(scale, found.interval(mean, LEVEL))));
    }
    for (LevelMeans.Pair pair : found.pairs()) {
      ObjectNode each = between.addObject();
      each.put("pair", Orders.letter(pair.first()) + "-" + Orders.letter(pair.second()));
      JsonNumbers.number(each, "estimate", scale.back(pair.estimate()));
      JsonNumbers.interval(
          each, "interval_95", Optional.of(JsonNumbers.back(scale, found.interval(pair, LEVEL))));
    }
  }

  private static void level(ObjectNode node, String field, OptionalInt setup, double[] levels) {
    if (setup.isPresent()) {
      node.put(field, levels[setup.getAsInt()]);
    } else {
      node.putNull(field);
    }
  }
}
