package blindlap.compute;

import blindlap.plan.Covariate;
import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.review.NoiseDay;
import blindlap.review.NoiseRecord;
import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.LapNoise;
import blindlap.stats.noise.PooledCorrelation;
import blindlap.stats.noise.RiderNoise;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/**
 * Riders' noise as JSON, on the scale of the analysis: in the unit of the measure, of its logarithm
 * on the ratio scale.
 */
public final class NoiseJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private NoiseJson() {}

  /** All records, one object each. */
  public static String write(List<NoiseRecord> records) {
    ObjectNode root = JSON.createObjectNode();
    root.put("engine", Engine.version());
    ArrayNode array = root.putArray("noise");
    records.forEach(record -> record(array.addObject(), record));
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("noise is always JSON", e);
    }
  }

  private static void record(ObjectNode node, NoiseRecord record) {
    Measure measure = record.measure();
    node.put("rider", record.rider()).put("trail", record.trail());
    node.put("measure", measure.name()).put("unit", measure.unit());
    node.put("scale", measure.scale().text()).put("scored_laps", record.scoredLaps());
    record.pooled().ifPresent(pooled -> noise(node.putObject("stint_means"), pooled));
    record.split().ifPresent(split -> split(node.putObject("apart"), split, record.apart().size()));
    for (Covariate covariate : record.covariates()) {
      record.correlation(covariate).ifPresent(r -> seen(node, covariate, r));
    }
    ArrayNode days = node.putArray("days");
    record.days().forEach(day -> day(days.addObject(), day));
  }

  private static void seen(ObjectNode node, Covariate covariate, PooledCorrelation seen) {
    ObjectNode each = node.withArray("covariates").addObject();
    each.put("covariate", covariate.name()).put("unit", covariate.unit());
    each.put("correlation", seen.r());
    interval(each, "interval_95", seen.interval95());
    each.put("days", seen.days());
  }

  private static void day(ObjectNode node, NoiseDay day) {
    node.put("session", day.session()).put("day", day.day().toString());
    node.put("source", PlanJson.word(day.source())).put("stints", day.stints());
    node.put("laps", day.laps()).put("void_laps", day.voidLaps());
    day.noise().ifPresent(noise -> noise(node.putObject("stint_means"), noise));
    day.split().ifPresent(split -> split(node.putObject("apart"), split, 1));
  }

  private static void noise(ObjectNode node, RiderNoise noise) {
    node.put("sd", noise.sd());
    interval(node, "interval_95", noise.interval95IfNormal());
    node.put("df", noise.df());
  }

  private static void split(ObjectNode node, LapNoise split, int days) {
    node.put("days", days).put("laps", split.laps());
    noise(node.putObject("lap"), split.lap());
    ObjectNode stint = node.putObject("stint");
    stint.put("sd", split.shared());
    interval(stint, "interval_95", split.shared95());
    node.put("ratio", split.ratio());
    interval(node, "ratio_interval_95", split.ratio95());
    node.put("stint_share", split.share());
    interval(node, "stint_share_interval_95", split.share95());
  }

  private static void interval(ObjectNode node, String name, Interval interval) {
    node.putArray(name).add(interval.low()).add(interval.high());
  }
}
