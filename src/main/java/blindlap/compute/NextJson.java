package blindlap.compute;

import blindlap.plan.Measure;
import blindlap.plan.Plan;
import blindlap.plan.PlanJson;
import blindlap.review.Finding;
import blindlap.review.NeededStints;
import blindlap.review.WhatNext;
import blindlap.stats.compare.Scale;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.OptionalInt;

/** What more riding could show, as JSON: in the unit of the primary measure, or in per cent. */
final class NextJson {
  private NextJson() {}

  /** Adds {@code what_next} to a finding's object where there is something to say. */
  static void put(ObjectNode root, Finding finding) {
    Plan plan = finding.day().plan();
    if (finding.day().nullRun()) {
      return;
    }
    Optional<WhatNext> next =
        finding
            .primary()
            .flatMap(p -> WhatNext.of(finding.day(), p))
            .or(
                () ->
                    finding.many().stream()
                        .filter(m -> m.measure().role() == Measure.Role.PRIMARY)
                        .findFirst()
                        .flatMap(m -> WhatNext.of(finding.day(), m)));
    next.ifPresent(found -> write(root.putObject("what_next"), found, plan));
  }

  private static void write(ObjectNode node, WhatNext next, Plan plan) {
    boolean ratio = plan.primary().map(m -> m.scale() == Scale.RATIO).orElse(false);
    number(node, "noise_sd", next.noise().sd(), false);
    node.put("noise_df", next.noise().df());
    ArrayNode days = node.putArray("days");
    for (WhatNext.Days each : next.days()) {
      ObjectNode one = days.addObject().put("more", each.more());
      number(one, "difference", each.difference(), ratio);
      number(one, "low", each.range().low(), ratio);
      number(one, "high", each.range().high(), ratio);
    }
    next.needed().ifPresent(found -> needed(node.putObject("needed"), found, ratio));
    ArrayNode gains = node.putArray("gains");
    for (WhatNext.Gain each : next.gains()) {
      ObjectNode one = gains.addObject().put("change", PlanJson.word(each.change()));
      one.put("from", each.from()).put("to", each.to()).put("fits", each.fits());
      number(one, "low", each.best(), ratio);
      number(one, "high", each.worst(), ratio);
    }
  }

  private static void needed(ObjectNode node, NeededStints needed, boolean ratio) {
    number(node, "worthwhile", needed.worthwhile(), ratio);
    stints(node, "stints", needed.stints());
    stints(node, "fewest", needed.fewest());
    stints(node, "most", needed.most());
  }

  private static void stints(ObjectNode node, String name, OptionalInt stints) {
    node.put(name, stints.isPresent() ? Integer.valueOf(stints.getAsInt()) : null);
  }

  private static void number(ObjectNode node, String name, double value, boolean ratio) {
    double said = ratio ? 100 * Math.expm1(value) : value;
    if (Double.isFinite(said)) {
      node.put(name, said);
    } else {
      node.putNull(name);
    }
  }
}
