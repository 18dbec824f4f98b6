package blindlap.compute;

import blindlap.plan.Measure;
import blindlap.plan.PlanJson;
import blindlap.plan.Setup;
import blindlap.review.FieldFinding;
import blindlap.review.FieldProfiles;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import blindlap.wording.FieldProfilesWords;
import blindlap.wording.ProfilesFoundWords;
import blindlap.wording.day.Problems;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/**
 * A field as JSON. Differences are on the scale of the analysis, second less first; they are null
 * where the days do not agree, or no days lead from one to the other.
 */
public final class FieldJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private FieldJson() {}

  public static String write(FieldFinding finding, FieldProfiles beside) {
    ObjectNode root = JSON.createObjectNode();
    root.put("engine", Engine.version());
    root.put("rider", finding.asked().rider());
    root.put("trail", finding.asked().trail());
    root.put("measure", finding.asked().measure());
    root.put("scale", finding.measure().map(m -> m.scale().text()).orElse(null));
    root.put("unit", finding.measure().map(Measure::unit).orElse(null));
    root.put("reference", finding.reference().map(Setup::id).orElse(null));
    interval(root, "worthwhile", finding.worthwhile());
    root.put("withheld", finding.withheld());
    root.put("why_none", finding.refusal().map(Problems::sentence).orElse(null));
    together(root, finding);
    setups(root, finding);
    pairs(root.putArray("against_reference"), finding.rows());
    pairs(root.putArray("between_others"), finding.others());
    next(root, finding);
    days(root, finding);
    out(root, finding);
    profiles(root, finding, beside);
    if (finding.days().isEmpty()) {
      root.putNull("request");
    } else {
      root.set("request", FieldRequests.of(finding));
    }
    try {
      return JSON.writerWithDefaultPrettyPrinter().writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("a finding is always JSON", e);
    }
  }

  /** Nothing where no profile stands beside the field. */
  private static void profiles(ObjectNode root, FieldFinding field, FieldProfiles beside) {
    Optional<FieldProfilesWords> words = FieldProfilesWords.of(field, beside);
    if (words.isEmpty()) {
      return;
    }
    ArrayNode all = root.putArray("profiles");
    List<ProfilesFoundWords.Row> rows = words.get().rows();
    for (int i = 0; i < rows.size(); i++) {
      FieldProfiles.Version version = beside.profiles().get(i);
      ObjectNode node = all.addObject();
      node.put("name", rows.get(i).name());
      node.put("version", version.number());
      node.put("made_at", version.at().toString());
      node.put("days_opened_before", version.after());
      node.put("since", PlanJson.word(version.since()));
      ProfilesJson.measures(node, rows.get(i));
    }
  }

  private static void together(ObjectNode root, FieldFinding finding) {
    finding
        .numbers()
        .ifPresent(
            numbers -> {
              root.put("df", numbers.df());
              root.put("residual_sd", numbers.residualSd());
            });
    finding
        .agreement()
        .ifPresentOrElse(
            agreement ->
                root.putObject("agreement")
                    .put("f", agreement.f())
                    .put("df1", agreement.df1())
                    .put("df2", agreement.df2())
                    .put("p", agreement.p()),
            () -> root.putNull("agreement"));
  }

  private static void next(ObjectNode root, FieldFinding finding) {
    finding
        .next()
        .ifPresentOrElse(
            next -> {
              ObjectNode node = root.putObject("next_day");
              node.put("first", next.first()).put("second", next.second());
              node.put("stints", next.stints());
              node.put("widest_now", Double.isInfinite(next.now()) ? null : next.now());
              node.put("widest_then", next.then());
            },
            () -> root.putNull("next_day"));
  }

  private static void setups(ObjectNode root, FieldFinding finding) {
    ArrayNode setups = root.putArray("setups");
    for (Setup setup : finding.setups()) {
      ObjectNode node = setups.addObject().put("id", setup.id()).put("name", setup.name());
      Setup.Price price = setup.price();
      node.put("price", price == null ? null : price.amount());
      node.put("currency", price == null ? null : price.currency());
      node.put("mass_g", setup.massOnBike());
    }
  }

  private static void pairs(ArrayNode pairs, List<FieldFinding.Pair> all) {
    for (FieldFinding.Pair pair : all) {
      ObjectNode node = pairs.addObject();
      node.put("first", pair.first()).put("second", pair.second());
      node.put("standing", PlanJson.word(pair.standing()));
      if (pair.estimate().isPresent()) {
        node.put("estimate", pair.estimate().getAsDouble());
      } else {
        node.putNull("estimate");
      }
      interval(node, "interval_95", pair.interval95());
      ArrayNode over = node.putArray("over");
      pair.over().forEach(over::add);
      ArrayNode own = node.putArray("that_day");
      for (FieldFinding.OwnDay day : pair.own()) {
        ObjectNode each = own.addObject().put("session", day.session());
        each.put("day", day.day().toString());
        each.put("verdict", day.verdict().map(Verdict::text).orElse(null));
        each.put("estimate", day.estimate());
        interval(each, "interval_95", day.interval95());
        if (day.many()) {
          each.put("told_apart", day.apart());
        }
      }
    }
  }

  private static void days(ObjectNode root, FieldFinding finding) {
    ArrayNode days = root.putArray("days");
    for (FieldFinding.Day day : finding.days()) {
      ObjectNode node = days.addObject().put("session", day.session());
      node.put("day", day.day().toString()).put("stints_used", day.used());
      ArrayNode setups = node.putArray("setups");
      day.setups().forEach(setups::add);
      ArrayNode remarks = node.putArray("remarks");
      day.remarks().stream().sorted().forEach(remark -> remarks.add(PlanJson.word(remark)));
    }
  }

  private static void out(ObjectNode root, FieldFinding finding) {
    ArrayNode out = root.putArray("not_entering");
    for (FieldFinding.Out each : finding.out()) {
      ObjectNode node = out.addObject().put("session", each.session());
      node.put("day", each.day().toString()).put("why", PlanJson.word(each.why()));
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
