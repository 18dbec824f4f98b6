package blindlap.compute;

import static blindlap.compute.JsonNumbers.back;
import static blindlap.compute.JsonNumbers.interval;
import static blindlap.compute.JsonNumbers.number;
import static blindlap.compute.JsonNumbers.optional;

import blindlap.plan.PlanJson;
import blindlap.review.Beside;
import blindlap.review.Comparison;
import blindlap.review.Edition;
import blindlap.review.Finding;
import blindlap.review.Guesses;
import blindlap.review.ManyComparison;
import blindlap.review.Remark;
import blindlap.review.Sensitivity;
import blindlap.stats.compare.HarmTest;
import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.OneDifference;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.StintSummary;
import blindlap.stats.compare.VoidBalance;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Orders;
import blindlap.wording.FindingText;
import blindlap.wording.day.Problems;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A finding as JSON: fixed names, fixed verdict strings, numbers in full. */
public final class FindingJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private FindingJson() {}

  /** A finding with nothing beside it. */
  public static String write(Finding finding) {
    return write(finding, Beside.NOTHING);
  }

  /** A finding with the history of its question and what it was at unsealing. */
  public static String write(Finding finding, Beside beside) {
    ObjectNode root = JSON.createObjectNode();
    day(root, finding);
    root.put("sentence", new FindingText(finding).sentence());
    root.put("verdict", verdict(finding).orElse(null));
    ArrayNode measures = root.putArray("measures");
    finding.comparisons().forEach(each -> comparison(measures.addObject(), finding, each));
    finding.many().forEach(each -> many(measures.addObject(), finding, each));
    refusals(root.putArray("not_compared"), finding);
    ArrayNode otherwise = root.putArray("sensitivity");
    for (Sensitivity each : finding.sensitivities()) {
      sensitivity(
          otherwise.addObject(), each, finding.primary(), finding.many().stream().findFirst());
    }
    CovariateJson.put(root, finding);
    RecorderJson.put(root, finding);
    guesses(root.putObject("guesses"), finding.guesses());
    WaitsJson.put(root, finding.waits());
    LooksJson.put(root, finding);
    WhereJson.put(root, finding);
    ObjectNode voids = root.putObject("voids");
    voids(voids, finding.voids());
    voids(voids.putObject("laps"), finding.voidLaps());
    RemarksJson.twice(root, finding.day().remarks(Remark.Kind.SET_ASIDE));
    RemarksJson.late(root, finding.day().remarks(Remark.Kind.LATE));
    finding.left().ifPresent(left -> root.put("smallest_p_left", left.smallestP()));
    NextJson.put(root, finding);
    ProfilesJson.put(root, finding, beside.profiles());
    BesideJson.write(root, beside);
    requests(root, finding);
    return print(root);
  }

  private static void day(ObjectNode root, Finding finding) {
    root.put("session", finding.day().session());
    root.put("engine", Engine.version());
    root.put("edition", Edition.CURRENT);
    root.put("order", finding.day().order());
    root.put("count", finding.orders().count());
    root.put("attainable_level", finding.orders().attainableLevel());
    root.put("null_run", finding.day().nullRun());
    root.put("blinded", finding.day().plan().blinding().blinded());
    root.put("level", PlanJson.word(finding.day().plan().level()));
    MasksJson.put(root, finding.day());
    TrendJson.put(root, finding.day().plan());
  }

  private static void voids(ObjectNode node, VoidBalance balance) {
    ArrayNode each = node.putArray("per_setup");
    for (int count : balance.voids()) {
      each.add(count);
    }
    node.put("p", balance.p());
  }

  private static void refusals(ArrayNode refused, Finding finding) {
    finding
        .refusals()
        .forEach(
            r ->
                refused
                    .addObject()
                    .put("measure", r.measure().name())
                    .put("why", Problems.sentence(r.why())));
  }

  private static Optional<String> verdict(Finding finding) {
    return finding.primary().flatMap(Comparison::verdictText);
  }

  private static void requests(ObjectNode root, Finding finding) {
    ArrayNode requests = root.putArray("requests");
    for (FindingRequests.Named named : FindingRequests.of(finding)) {
      ObjectNode node = requests.addObject();
      node.put("about", named.about());
      node.put("measure", named.measure());
      try {
        node.set("request", JSON.readTree(named.json()));
      } catch (JsonProcessingException e) {
        throw new IllegalStateException("a request is always JSON", e);
      }
    }
  }

  private static String print(ObjectNode root) {
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a finding is always JSON", e);
    }
  }

  private static void head(
      ObjectNode node, blindlap.plan.Measure measure, int used, double noise, int df) {
    node.put("measure", measure.name());
    node.put("role", PlanJson.word(measure.role()));
    node.put("unit", measure.unit());
    node.put("scale", measure.scale().text());
    // Where it is not usual, so that packages from before it existed are not called altered.
    if (measure.summary() != StintSummary.MEAN) {
      node.put("summary", measure.summary().text());
    }
    node.put("drift", measure.drift().text());
    node.put("used", used);
    number(node, "noise_sd", noise);
    node.put("df", df);
  }

  private static void comparison(ObjectNode node, Finding finding, Comparison comparison) {
    head(
        node,
        comparison.measure(),
        comparison.stints().used(),
        comparison.result().noiseSd(),
        comparison.result().df());
    number(node, "estimate", comparison.estimate());
    optional(
        node,
        "p",
        comparison.tested() ? OptionalDouble.of(comparison.p()) : OptionalDouble.empty());
    optional(node, "p_adjusted", comparison.adjusted());
    interval(node, "interval_95", comparison.interval(0.95));
    interval(node, "interval_90", comparison.interval(0.90));
    node.put("verdict", comparison.verdictText().orElse(null));
    comparison
        .trend()
        .ifPresent(
            trend -> TrendJson.put(node, comparison, trend, finding.day().plan().levelNumbers()));
    comparison.harm().ifPresent(harm -> harm(node.putObject("harm"), comparison, harm));
    comparison
        .ratio()
        .ifPresent(
            ratio -> {
              number(node, "ratio", ratio.ratio());
              interval(node, "ratio_interval_95", Optional.of(ratio.interval95()));
            });
    ArrayNode caveats = node.putArray("caveats");
    comparison.caveats().forEach(c -> caveats.add(PlanJson.word(c)));
    List<Sensitivity> aside = finding.aside(comparison.measure());
    if (!aside.isEmpty()) {
      ArrayNode others = node.putArray("set_aside");
      aside.forEach(
          each -> sensitivity(others.addObject(), each, Optional.of(comparison), Optional.empty()));
    }
  }

  /** A watched harm, with the one-sided p at D and at −D that all else is read from. */
  private static void harm(ObjectNode node, Comparison comparison, HarmTest harm) {
    Interval band = comparison.worthwhileBand().orElseThrow();
    node.put("b_against_a", harm.bAgainstA().text())
        .put("a_against_b", harm.aAgainstB().text())
        .put("p_above_d", comparison.curve().pGreater(band.high()))
        .put("p_below_d", comparison.curve().pLess(band.high()))
        .put("p_above_minus_d", comparison.curve().pGreater(band.low()))
        .put("p_below_minus_d", comparison.curve().pLess(band.low()))
        .put("p", harm.p())
        .put("p_adjusted", harm.adjusted());
  }

  private static void many(ObjectNode node, Finding finding, ManyComparison many) {
    head(node, many.measure(), many.stints().used(), many.result().noiseSd(), many.result().df());
    number(node, "f", many.result().f());
    number(node, "p", many.said(many.result().p()));
    optional(node, "p_adjusted", many.adjusted());
    pairs(node, many, true);
    ArrayNode caveats = node.putArray("caveats");
    many.caveats().forEach(c -> caveats.add(PlanJson.word(c)));
    List<Sensitivity> aside = finding.aside(many.measure());
    if (!aside.isEmpty()) {
      ArrayNode others = node.putArray("set_aside");
      aside.forEach(
          each -> sensitivity(others.addObject(), each, Optional.empty(), Optional.of(many)));
    }
  }

  private static void pairs(ObjectNode node, ManyComparison many, boolean tested) {
    ArrayNode pairs = node.putArray("pairs");
    for (ManySetups.Pair pair : many.result().pairs()) {
      ObjectNode each = pairs.addObject();
      each.put("pair", pair.name());
      number(each, "estimate", many.measure().scale().back(pair.estimate()));
      if (tested) {
        interval(each, "interval_95", many.interval(pair));
        many.against(pair).ifPresent(size -> each.put("against_worthwhile", PlanJson.word(size)));
        harm(each, many, pair);
        number(each, "p", many.said(pair.p()));
        number(each, "p_adjusted", many.said(pair.pAdjusted()));
      }
    }
  }

  /** What a pair of a watched measure comes to, with the setup that did worse where it is shown. */
  private static void harm(ObjectNode node, ManyComparison many, ManySetups.Pair pair) {
    many.harms().stream()
        .filter(harm -> harm.pair().equals(pair))
        .forEach(
            harm -> {
              ObjectNode found = node.putObject("harm").put("found", harm.found().text());
              interval(
                  found, "interval", Optional.of(back(many.measure().scale(), harm.interval())));
              if (many.shownHarms().contains(harm)) {
                found.put("worse", Orders.letter(many.worse(pair)));
              }
            });
  }

  private static void sensitivity(
      ObjectNode node,
      Sensitivity each,
      Optional<Comparison> planned,
      Optional<ManyComparison> plannedMany) {
    node.put("kind", PlanJson.word(each.kind()));
    ArrayNode stints = node.putArray("stints");
    each.stints().forEach(stints::add);
    if (each.aside() > 0) {
      node.put("set_aside", each.aside());
    }
    each.why().ifPresent(why -> node.put("why", Problems.sentence(why)));
    each.result().ifPresent(result -> beside(node, each, planned.orElseThrow(), result));
    each.many().ifPresent(many -> beside(node, each, plannedMany.orElseThrow().with(many)));
  }

  private static void beside(
      ObjectNode node, Sensitivity each, Comparison planned, OneDifference result) {
    Scale scale = planned.measure().scale();
    number(node, "estimate", scale.back(result.estimate()));
    if (!each.estimateOnly() && !result.noVariation()) {
      number(node, "p", planned.tested() ? result.curve().p(0) : Double.NaN);
      interval(node, "interval_95", result.curve().interval(0.95).map(i -> back(scale, i)));
    }
  }

  private static void beside(ObjectNode node, Sensitivity each, ManyComparison many) {
    if (!each.estimateOnly()) {
      number(node, "p", many.said(many.result().p()));
    }
    pairs(node, many, !each.estimateOnly());
  }

  private static void guesses(ObjectNode node, Guesses guesses) {
    node.put("right", guesses.right());
    node.put("wrong", guesses.wrong());
    node.put("unknown", guesses.unknown());
    guesses
        .test()
        .ifPresent(
            test -> {
              number(node, "index_mean", test.indexMean());
              number(node, "p", test.p());
              number(node, "mid_p", test.midP());
              node.put("flagged", test.flagged());
            });
    guesses
        .levelTest()
        .ifPresent(
            test -> {
              number(node, "t", test.t());
              number(node, "p", test.p());
              number(node, "mid_p", test.midP());
              node.put("flagged", test.flagged());
            });
  }
}
