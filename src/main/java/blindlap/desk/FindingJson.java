package blindlap.desk;

import blindlap.review.Comparison;
import blindlap.review.Finding;
import blindlap.stats.Interval;
import blindlap.stats.Verdict;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/** A finding as JSON: fixed names, fixed verdict strings, numbers in full. */
final class FindingJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private FindingJson() {}

  static String write(Finding finding) {
    ObjectNode root = JSON.createObjectNode();
    root.put("session", finding.day().session());
    root.put("engine", Engine.version());
    root.put("order", finding.day().key().order());
    root.put("count", finding.orders().count());
    root.put("attainable_level", finding.orders().attainableLevel());
    ArrayNode measures = root.putArray("measures");
    finding.primary().ifPresent(primary -> measure(measures.addObject(), primary));
    finding.others().forEach(other -> measure(measures.addObject(), other));
    ArrayNode refused = root.putArray("not_compared");
    finding
        .refusals()
        .forEach(
            r -> refused.addObject().put("measure", r.measure().name()).put("why", r.reason()));
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a finding is always JSON", e);
    }
  }

  private static void measure(ObjectNode node, Comparison comparison) {
    node.put("measure", comparison.measure().name());
    node.put("role", blindlap.plan.PlanJson.word(comparison.measure().role()));
    node.put("unit", comparison.measure().unit());
    node.put("scale", comparison.measure().scale().text());
    node.put("drift", comparison.measure().drift().text());
    node.put("used", comparison.result().used());
    node.put("estimate", comparison.estimate());
    node.put("noise_sd", comparison.result().noiseSd());
    node.put("df", comparison.result().df());
    node.put("p", comparison.p());
    interval(node, "interval_95", comparison.interval(0.95));
    interval(node, "interval_90", comparison.interval(0.90));
    node.put("verdict", comparison.verdict().map(Verdict::text).orElse(null));
  }

  private static void interval(ObjectNode node, String name, Optional<Interval> interval) {
    if (interval.isEmpty()) {
      node.putNull(name);
      return;
    }
    node.putArray(name).add(interval.get().low()).add(interval.get().high());
  }
}
