package blindlap.compute;

import blindlap.plan.Covariate;
import blindlap.plan.PlanJson;
import blindlap.review.CovariateFinding;
import blindlap.review.Finding;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Covariates of a finding as JSON; nothing where none is declared. */
final class CovariateJson {
  private CovariateJson() {}

  static void put(ObjectNode root, Finding finding) {
    if (finding.covariates().isEmpty()) {
      return;
    }
    ArrayNode all = root.putArray("covariates");
    finding.covariates().forEach(each -> put(all.addObject(), each));
  }

  private static void put(ObjectNode node, CovariateFinding each) {
    Covariate covariate = each.covariate();
    node.put("covariate", covariate.name());
    node.put("kind", PlanJson.word(covariate.kind()));
    node.put("unit", covariate.unit());
    node.put("reason", covariate.reason());
    node.put("used", each.leftOut().isEmpty());
    each.leftOut().ifPresent(why -> node.put("left_out", PlanJson.word(why)));
    ArrayNode without = node.putArray("without");
    each.without().forEach(without::add);
    number(node, "correlation", each.correlation());
    each.check().ifPresent(two -> check(node.putObject("check"), each, two));
    each.many().ifPresent(many -> check(node.putObject("check"), each, many));
  }

  private static void check(ObjectNode node, CovariateFinding each, OneDifference two) {
    number(node, "estimate", two.estimate());
    two.curve()
        .interval(0.90)
        .filter(i -> !two.noVariation())
        .ifPresent(
            i -> {
              ArrayNode ends = node.putArray("interval_90");
              end(ends, i.low());
              end(ends, i.high());
            });
    node.put("p", each.p());
    node.put("touched", each.touched());
  }

  private static void check(ObjectNode node, CovariateFinding each, ManySetups many) {
    number(node, "f", many.f());
    node.put("p", each.p());
    node.put("touched", each.touched());
  }

  private static void number(ObjectNode node, String name, double value) {
    if (Double.isFinite(value)) {
      node.put(name, value);
    } else {
      node.putNull(name);
    }
  }

  private static void end(ArrayNode ends, double value) {
    if (Double.isFinite(value)) {
      ends.add(value);
    } else {
      ends.addNull();
    }
  }
}
