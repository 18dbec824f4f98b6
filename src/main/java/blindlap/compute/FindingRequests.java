package blindlap.compute;

import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.plan.Rule;
import blindlap.review.Comparison;
import blindlap.review.CovariateFinding;
import blindlap.review.Finding;
import blindlap.review.ManyComparison;
import blindlap.review.Sensitivity;
import blindlap.review.StintValues;
import blindlap.review.TakenOut;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Orders;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * The calculation requests behind the numbers of a finding: whoever gives one to {@code blindlap
 * compute} gets the number again, without the session.
 */
public final class FindingRequests {
  /**
   * A request and what it gives.
   *
   * @param about which number, as a key of the bundle {@code computed}
   * @param measure the measure it is about; empty for the whole session
   * @param json the request
   */
  public record Named(String about, String measure, String json) {}

  private final Finding finding;
  private final List<Named> requests = new ArrayList<>();

  private FindingRequests(Finding finding) {
    this.finding = finding;
  }

  /** All requests of a finding, the primary measure first. */
  public static List<Named> of(Finding finding) {
    FindingRequests all = new FindingRequests(finding);
    finding.comparisons().forEach(all::comparison);
    finding.many().forEach(all::many);
    all.family();
    Measure primary = finding.day().plan().primary().orElseThrow();
    finding.sensitivities().forEach(each -> all.sensitivity(primary, each));
    for (Measure measure : finding.day().plan().measures()) {
      finding.aside(measure).forEach(each -> all.sensitivity(measure, each));
    }
    finding.covariates().forEach(all::check);
    all.guesses();
    all.waits();
    all.voids();
    finding.where().ifPresent(w -> new WhereRequests(w, all::given, all::add).all());
    return List.copyOf(all.requests);
  }

  private ObjectNode given() {
    ObjectNode given = StrictJson.NODES.objectNode();
    given.set("rule", rule(finding.day().plan().rule()));
    given.put("order", finding.day().order());
    return given;
  }

  static ObjectNode rule(Rule rule) {
    ObjectNode node = StrictJson.NODES.objectNode();
    node.put("setups", rule.setups());
    node.put("stints", rule.stints());
    node.put("block", rule.block());
    if (!rule.patterns().isEmpty()) {
      ArrayNode patterns = node.putArray("patterns");
      rule.patterns().forEach(patterns::add);
    }
    if (rule.trials()) {
      node.put("trials", true);
    }
    if (rule.maxRun() != null) {
      node.put("max_run", rule.maxRun());
    }
    if (rule.minTrendEfficiency() != null) {
      node.put("min_trend_efficiency", rule.minTrendEfficiency());
    }
    return node;
  }

  /** What is removed beside the drift; nothing is written where there is nothing. */
  private static void covariates(ObjectNode given, TakenOut out) {
    if (out.nuisance().covariates() > 0) {
      ArrayNode covariates = given.putArray("covariates");
      for (int i = 0; i < out.nuisance().covariates(); i++) {
        ArrayNode one = covariates.addArray();
        for (double value : out.nuisance().covariate(i)) {
          number(one, value);
        }
      }
    }
  }

  private TakenOut takenOut(Measure measure, StintValues stints) {
    return TakenOut.of(finding.day(), measure, stints);
  }

  private static void values(ObjectNode given, Measure measure, StintValues stints) {
    ArrayNode values = given.putArray("values");
    for (int stint = 1; stint <= stints.stints(); stint++) {
      number(values, stints.said(stint, measure));
    }
    given.put("drift", measure.drift().text());
    if (measure.scale() == Scale.RATIO) {
      given.put("scale", measure.scale().text());
    }
  }

  static void number(ArrayNode values, double value) {
    if (Double.isNaN(value)) {
      values.addNull();
    } else {
      values.add(value);
    }
  }

  private void comparison(Comparison comparison) {
    Measure measure = comparison.measure();
    ObjectNode given = given();
    values(given, measure, comparison.stints());
    covariates(given, takenOut(measure, comparison.stints()));
    BigDecimal worthwhile = measure.worthwhile();
    if (worthwhile != null) {
      given.put("worthwhile", worthwhile.doubleValue());
    }
    if (comparison.harm().isPresent() && worthwhile != null) {
      ArrayNode at = given.putArray("at");
      double margin = measure.scale().margin(worthwhile.doubleValue());
      at.add(measure.scale().back(-margin)).add(measure.scale().back(margin));
    }
    if (levels(given)
        && measure.role() == Measure.Role.PRIMARY
        && measure.better() != Measure.Better.NEITHER) {
      given.put("better", PlanJson.word(measure.better()));
    }
    add("comparison", measure.name(), one(), given);
    if (comparison.ratio().isPresent()) {
      ObjectNode ratio = given();
      ArrayNode values = ratio.putArray("values");
      for (double value : comparison.stints().values()) {
        number(values, value);
      }
      add("ratio", measure.name(), "count-ratio", ratio);
    }
  }

  /** How the one difference of the day is compared: of two setups, or over levels. */
  private String one() {
    return finding.day().plan().steps() == null ? "compare-two" : "trend";
  }

  /** The numbers of the levels; nothing is written, and it is false, where there are none. */
  private boolean levels(ObjectNode given) {
    if (finding.day().plan().steps() == null) {
      return false;
    }
    ArrayNode levels = given.putArray("levels");
    for (double level : finding.day().plan().levelNumbers()) {
      levels.add(level);
    }
    return true;
  }

  private void many(ManyComparison many) {
    ObjectNode given = given();
    values(given, many.measure(), many.stints());
    covariates(given, takenOut(many.measure(), many.stints()));
    add("many", many.measure().name(), "compare-many", given);
  }

  /**
   * The step-down family; only where one drift and the same covariates hold for all, as one request
   * takes one. Trends are adjusted by Holm's steps from the p of their own requests.
   */
  private void family() {
    List<Comparison> family =
        finding.others().stream().filter(c -> c.adjusted().isPresent()).toList();
    boolean oneNuisance =
        family.stream().map(c -> takenOut(c.measure(), c.stints()).nuisance()).distinct().count()
            == 1;
    if (!oneNuisance || finding.day().plan().steps() != null) {
      return;
    }
    ObjectNode given = given();
    given.put("drift", family.get(0).measure().drift().text());
    covariates(given, takenOut(family.get(0).measure(), family.get(0).stints()));
    ArrayNode measures = given.putArray("measures");
    for (Comparison each : family) {
      ObjectNode measure = measures.addObject();
      measure.put("name", each.measure().name());
      ArrayNode values = measure.putArray("values");
      for (double value : each.stints().values()) {
        number(values, value);
      }
    }
    add("family", "", "compare-measures", given);
  }

  private void sensitivity(Measure measure, Sensitivity each) {
    ObjectNode given = given();
    StintValues stints = each.values(finding.day(), measure);
    values(given, measure, stints);
    covariates(given, sensitivityOut(each, measure, stints));
    boolean levels = levels(given);
    if (each.estimateOnly() && levels) {
      given.remove("order");
      ArrayNode fitted = given.putArray("fitted");
      for (double level : finding.day().levelsFitted()) {
        fitted.add(level);
      }
    } else if (each.estimateOnly()) {
      int[] fitted = finding.day().asFitted();
      given.remove("rule");
      given.put("order", Orders.letters(fitted));
      ArrayNode orders = given.putArray("orders");
      Orders.renamings(fitted, finding.day().plan().setups().size()).forEach(orders::add);
    } else if (each.masks()) {
      ArrayNode valid = given.putArray("valid");
      for (boolean use : stints.validWithout(each.stints())) {
        valid.add(use);
      }
    }
    String calculation = finding.day().plan().oneDifference() ? one() : "compare-many";
    add("sensitivity." + each.kind().name(), measure.name(), calculation, given);
  }

  private TakenOut sensitivityOut(Sensitivity each, Measure measure, StintValues stints) {
    return each.masks()
        ? takenOut(measure, stints.without(each.stints()))
        : each.takenOut(finding.day(), measure);
  }

  /** The check: the covariate itself, compared by the same orders. */
  private void check(CovariateFinding each) {
    if (each.check().isEmpty() && each.many().isEmpty()) {
      return;
    }
    ObjectNode given = given();
    ArrayNode values = given.putArray("values");
    for (double value : TakenOut.values(finding.day(), each.covariate())) {
      number(values, value);
    }
    given.put("drift", finding.day().plan().primary().orElseThrow().drift().text());
    levels(given);
    add(
        "covariate",
        each.covariate().name(),
        each.check().isPresent() ? one() : "compare-many",
        given);
  }

  private void guesses() {
    if (finding.guesses().test().isPresent() || finding.guesses().levelTest().isPresent()) {
      ObjectNode given = given();
      String about = levels(given) ? "guesses.levels" : "guesses";
      given.put("guesses", finding.guesses().letters());
      add(about, "", "guesses", given);
    }
  }

  private void waits() {
    if (finding.waits().test().isPresent()) {
      ObjectNode given = given();
      ArrayNode waits = given.putArray("waits");
      for (double wait : finding.waits().seconds(finding.day().plan().stints())) {
        number(waits, wait);
      }
      add("waits", "", "waits", given);
    }
  }

  /**
   * Void laps and void stints per setup, as two measures without drift: R, which holds also where
   * every stint of one setup has as many voids, so that nothing varies beside the setups.
   */
  private void voids() {
    StintValues stints =
        finding
            .primary()
            .map(Comparison::stints)
            .or(() -> finding.many().stream().findFirst().map(ManyComparison::stints))
            .orElse(null);
    if (stints == null || stints.voidLaps() == 0 || finding.day().plan().setups().size() != 2) {
      return;
    }
    ObjectNode given = given();
    given.put("drift", "none");
    ArrayNode measures = given.putArray("measures");
    ArrayNode laps = measures.addObject().put("name", "void laps").putArray("values");
    ArrayNode whole = measures.addObject().put("name", "void stints").putArray("values");
    for (int stint = 1; stint <= stints.stints(); stint++) {
      laps.add(stints.voidLaps(stint));
      whole.add(stints.voided(stint) ? 1 : 0);
    }
    add("voids", "", "compare-measures", given);
  }

  private void add(String about, String measure, String calculation, ObjectNode given) {
    ObjectNode request = StrictJson.NODES.objectNode();
    request.put("calculation", calculation);
    request.set("given", given);
    requests.add(new Named(about, measure, request.toString()));
  }
}
