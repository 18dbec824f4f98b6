package blindlap.compute;

import blindlap.plan.PlanJson;
import blindlap.review.SeriesFinding;
import blindlap.review.SeriesMeasure;
import blindlap.review.SeriesPeeks;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.wording.day.Problems;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/** The finding of a series as JSON; shifts are on the scale of the analysis, second less first. */
public final class SeriesJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private SeriesJson() {}

  public static String write(SeriesFinding finding) {
    ObjectNode root = JSON.createObjectNode();
    root.put("series", finding.id());
    root.put("engine", Engine.version());
    root.put("question", finding.question());
    root.put("declared_sessions", finding.declared().orElse(null));
    root.put("pooled_sessions", finding.pooled());
    root.put("stage", PlanJson.word(finding.progress().stage()));
    root.put("ridden_sessions", finding.progress().ridden());
    root.put("closed_sessions", finding.progress().closed());
    root.put("unsealed_sessions", finding.progress().unsealed());
    root.put("measure", finding.measure().name());
    root.put("scale", finding.measure().scale().text());
    ArrayNode setups = root.putArray("setups");
    finding.setups().forEach(setup -> setups.add(setup.id()));
    root.put("verdict", finding.verdict().map(Verdict::text).orElse(null));
    root.put("no_verdict", finding.noVerdict().map(PlanJson::word).orElse(null));
    these(root, finding);
    general(root, finding);
    riders(root, finding);
    others(root, finding);
    early(root, finding);
    parts(root, finding);
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a finding is always JSON", e);
    }
  }

  private static void these(ObjectNode root, SeriesFinding finding) {
    finding
        .these()
        .ifPresent(
            these -> {
              ObjectNode node = root.putObject("these_riders_on_these_days");
              node.put("estimate", these.estimate());
              interval(node, "interval_95", these.curve().interval(0.95));
              interval(node, "interval_90", these.curve().interval(0.90));
              node.put("p", these.curve().p(0));
              node.put("count", these.count());
              node.put("sampled", these.sampled());
              if (these.sampled()) {
                node.put("draws", these.sampling().draws());
                node.put("seed", these.sampling().seed());
                node.put("p_error", these.pError(these.curve().p(0)));
              }
            });
  }

  private static void general(ObjectNode root, SeriesFinding finding) {
    finding
        .general()
        .ifPresent(
            general -> {
              ObjectNode node = root.putObject("riders_in_general");
              node.put("method", PlanJson.word(general.method()));
              node.put("riders", general.riders());
              node.put("estimate", general.estimate());
              interval(node, "interval_95", Optional.of(general.interval95()));
              interval(node, "interval_90", Optional.of(general.interval90()));
            });
    finding
        .agreement()
        .ifPresent(
            agreement -> {
              ObjectNode node = root.putObject("agreement");
              node.put("kendall_w", agreement.kendallW());
              node.put("p", agreement.p());
            });
  }

  private static void others(ObjectNode root, SeriesFinding finding) {
    ArrayNode others = root.putArray("other_measures");
    for (SeriesMeasure each : finding.others()) {
      ObjectNode node = others.addObject();
      node.put("measure", each.measure().name());
      node.put("role", PlanJson.word(each.measure().role()));
      node.put("sessions", each.sessions());
      node.put("estimate", each.estimate());
      interval(node, "interval_95", each.interval95());
      interval(node, "interval_90", each.interval90());
      each.p().ifPresent(p -> node.put("p", p));
      each.adjusted().ifPresent(p -> node.put("p_adjusted", p));
      each.harm()
          .ifPresent(
              harm ->
                  node.putObject("harm")
                      .put("p", harm.p())
                      .put("p_adjusted", harm.adjusted())
                      .put("second_against_first", harm.bAgainstA().text())
                      .put("first_against_second", harm.aAgainstB().text()));
    }
  }

  private static void riders(ObjectNode root, SeriesFinding finding) {
    ArrayNode riders = root.putArray("riders");
    for (SeriesFinding.Rider rider : finding.riders()) {
      ObjectNode node = riders.addObject();
      node.put("rider", rider.name());
      node.put("sessions", rider.sessions());
      if (!Double.isNaN(rider.estimate())) {
        node.put("estimate", rider.estimate());
        node.put("standard_error", rider.standardError());
        interval(node, "interval_95", rider.interval95());
      }
      node.put("noise_sd", rider.noiseSd());
      ArrayNode ranking = node.putArray("above_first");
      rider.ranking().forEach(ranking::add);
    }
  }

  private static void early(ObjectNode root, SeriesFinding finding) {
    finding
        .end()
        .ifPresent(
            end ->
                root.putObject("ended_early")
                    .put("session", end.session())
                    .put("at", end.at().toString())
                    .put("reason", end.reason())
                    .put("decided_by", end.decidedBy()));
    ArrayNode peeks = root.putArray("unsealed_early");
    for (SeriesPeeks.Peek peek : finding.peeks().peeks()) {
      ObjectNode node = peeks.addObject();
      node.put("session", peek.session());
      node.put("notebook", peek.notebook());
      node.put("at", peek.at().toString());
      ArrayNode open = node.putArray("open");
      peek.open().forEach(open::add);
    }
    root.put("order_by_clocks", finding.peeks().byClocks());
  }

  private static void parts(ObjectNode root, SeriesFinding finding) {
    ArrayNode parts = root.putArray("sessions");
    for (SeriesFinding.Part part : finding.parts()) {
      ObjectNode node = parts.addObject();
      node.put("session", part.session());
      node.put("day", part.day().toString());
      node.put("rider", part.rider());
      node.put("fate", PlanJson.word(part.fate()));
      node.put("why", part.refusal().map(Problems::sentence).orElse(part.why()));
      node.put("step", PlanJson.word(part.step()));
      ArrayNode remarks = node.putArray("remarks");
      part.remarks().forEach(remark -> remarks.add(PlanJson.word(remark)));
      node.put("estimate", part.estimate().orElse(null));
      interval(node, "interval_95", part.interval95());
    }
  }

  private static void interval(ObjectNode node, String name, Optional<Interval> interval) {
    if (interval.isEmpty()) {
      node.putNull(name);
      return;
    }
    node.putArray(name).add(interval.get().low()).add(interval.get().high());
  }
}
