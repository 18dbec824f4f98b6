package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.stats.compare.Scale;
import blindlap.stats.order.Assignments;
import blindlap.stats.order.AssignmentsBuilder;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.order.Sampling;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;

/** Reads the fields that every calculation over admissible orders takes. */
final class OrderGiven {
  private static final Set<String> COMMON =
      Set.of("rule", "orders", "valid", "exact", "draws", "seed", "scale");
  private static final Set<String> RULE =
      Set.of("setups", "stints", "block", "patterns", "max_run", "min_trend_efficiency", "trials");

  private final Given given;
  private final Assignments set;
  private final Sampling sampling;
  private final Scale scale;

  private OrderGiven(Given given) {
    this.given = given;
    this.set = given.has("rule") ? byRule() : listed();
    this.sampling = readSampling();
    this.scale = given.option("scale", Scale.class, Scale.RAW);
  }

  /** Words of the request for what may be sampled. */
  private enum Exact {
    PREFERRED,
    REQUIRED
  }

  /** A calculation that takes the common fields and some more. */
  static Calculation calculation(
      String name, Set<String> more, Function<OrderGiven, Evaluation> evaluator) {
    Set<String> fields = new HashSet<>(COMMON);
    fields.addAll(more);
    return Calculation.of(name, fields, given -> evaluate(given, evaluator));
  }

  /** These fields and those that give the values of stints. */
  static Set<String> withStints(String... fields) {
    Set<String> all = new HashSet<>(StintsGiven.FIELDS);
    all.addAll(List.of(fields));
    return all;
  }

  private static Evaluation evaluate(Given given, Function<OrderGiven, Evaluation> evaluator) {
    if (given.has("rule") && given.has("orders")) {
      throw given.refuse("orders", "must be left out when rule is given.");
    }
    if (!given.has("rule") && !given.has("orders")) {
      throw given.refuse("rule", "is missing.");
    }
    try {
      return evaluator.apply(new OrderGiven(given));
    } catch (StatsException e) {
      if (e.argument().equals("rule") && !given.has("rule")) {
        throw e.named("orders");
      }
      throw e;
    }
  }

  private Assignments byRule() {
    Given rule = given.object("rule");
    rule.allowOnly(RULE);
    try {
      AssignmentsBuilder builder =
          Assignments.rule(rule.whole("setups"), rule.whole("stints")).block(rule.whole("block"));
      if (rule.has("patterns")) {
        List<String> patterns = rule.texts("patterns");
        if (patterns.isEmpty()) {
          throw rule.refuse("patterns", "is empty; leave it out to allow every balanced block.");
        }
        if (rule.flag("trials", false)) {
          builder.trials(patterns);
        } else {
          builder.patterns(patterns);
        }
      }
      if (rule.has("max_run")) {
        builder.maxRun(atLeastOne(rule, "max_run"));
      }
      if (rule.has("min_trend_efficiency")) {
        builder.minTrendEfficiency(rule.number("min_trend_efficiency"));
      }
      Assignments built = builder.build();
      if (rule.has("patterns") && !built.closedUnderRenaming()) {
        throw rule.refuse("patterns", "must be closed under renaming the setups.");
      }
      return built;
    } catch (StatsException e) {
      RequestException refusal = rule.refuse(e.argument(), e.why());
      refusal.initCause(e);
      throw refusal;
    }
  }

  private static int atLeastOne(Given rule, String field) {
    int value = rule.whole(field);
    if (value < 1) {
      throw rule.refuse(field, "must be at least 1, but is " + value + ".");
    }
    return value;
  }

  private Assignments listed() {
    return Assignments.listed(given.texts("orders"));
  }

  private Sampling readSampling() {
    Sampling standard = Sampling.PREFERRED;
    return new Sampling(
        given.option("exact", Exact.class, Exact.PREFERRED) == Exact.REQUIRED,
        given.has("draws") ? given.whole("draws") : standard.draws(),
        given.has("seed") ? given.longWhole("seed") : standard.seed());
  }

  Given given() {
    return given;
  }

  /** The admissible orders; refused if there is none. */
  Assignments set() {
    if (set.count().signum() == 0) {
      throw new StatsException("rule", "admits no order.");
    }
    return set;
  }

  Sampling sampling() {
    return sampling;
  }

  Scale scale() {
    return scale;
  }

  Drift drift() {
    return given.option("drift", Drift.class);
  }

  int[] order() {
    return Orders.parse(given.text("order"));
  }

  /** What is removed: the drift, and the covariates if there are any. */
  Nuisance nuisance() {
    return given.has("covariates")
        ? Nuisance.of(drift(), List.of(given.tableWithGaps("covariates")))
        : Nuisance.of(drift());
  }

  /** The stints' values on the scale of the analysis; NaN where none. */
  double[] values() {
    return StintsGiven.values(given, "", scale);
  }

  /** True where a stint counts: everywhere unless the request says otherwise. */
  boolean[] valid() {
    if (given.has("valid")) {
      return given.flags("valid");
    }
    boolean[] all = new boolean[set.stints()];
    Arrays.fill(all, true);
    return all;
  }

  /** Refuses the ratio scale where it has no meaning. */
  void refuseRatioScale(String why) {
    if (scale == Scale.RATIO) {
      throw given.refuse("scale", "must be raw: " + why);
    }
  }

  /** States how the reference set was sampled. */
  void stateSample(ResultFields result, boolean sampled) {
    if (sampled) {
      result.whole("draws", sampling.draws()).whole("seed", sampling.seed());
    }
  }

  /** A note on the reference set. */
  String reference(boolean sampled) {
    return sampled
        ? String.format(
            Locale.ROOT,
            "%,d draws of an order with its renamings stand for all %,d orders; the observed order"
                + " is among them (Phipson & Smyth 2010).",
            sampling.draws(),
            set.count())
        : String.format(Locale.ROOT, "All %,d admissible orders were counted.", set.count());
  }
}
