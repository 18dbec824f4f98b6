package blindlap.compute;

import blindlap.stats.compare.ConfidenceCurve;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.TwoSetups;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Assignments;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The set of admissible orders, and two setups compared over it. */
final class OrderCalculations {
  private static final int MOST_LISTED = 1_000_000;
  private static final double[] LEVELS = {0.95, 0.90, 0.80, 0.50};
  private static final String[] LEVEL_FIELDS = {
    "interval_95", "interval_90", "interval_80", "interval_50"
  };

  private OrderCalculations() {}

  static List<Calculation> all() {
    return List.of(
        OrderGiven.calculation("orders", Set.of("list"), OrderCalculations::orders),
        OrderGiven.calculation(
            "compare-two",
            OrderGiven.withStints("order", "drift", "covariates", "worthwhile", "at", "curve"),
            OrderCalculations::compareTwo));
  }

  private static Evaluation orders(OrderGiven given) {
    Assignments set = given.set();
    if (set.setups() == 2 && !set.closedUnderRenaming()) {
      throw given
          .given()
          .refuse(
              given.given().has("rule") ? "rule" : "orders",
              "gives a set of orders that is not closed under swapping A and B.");
    }
    OrderSet found = OrderSet.of(set);
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .number("smallest_p", found.smallestP())
            .number("attainable_level", found.attainableLevel())
            .number("mean_swaps", found.meanSwaps())
            .whole("min_swaps", found.minSwaps())
            .whole("max_swaps", found.maxSwaps());
    Double efficiency = found.trendEfficiency();
    if (efficiency == null) {
      result.none("trend_efficiency");
    } else {
      result.number("trend_efficiency", efficiency);
    }
    if (given.given().flag("list", false)) {
      if (!set.atMost(MOST_LISTED)) {
        throw given.given().refuse("list", tooMany(set));
      }
      result.texts("orders", set.list());
    }
    return Evaluation.of(
        result, "Counted exactly along the graph of admissible orders; nothing is sampled.");
  }

  private static String tooMany(Assignments set) {
    return String.format(
        Locale.ROOT, "would print %,d orders; at most %,d are.", set.count(), MOST_LISTED);
  }

  private static Evaluation compareTwo(OrderGiven given) {
    double[] margin = margin(given);
    TwoSetups found =
        TwoSetups.compare(
            given.set(),
            given.order(),
            given.values(),
            given.valid(),
            given.nuisance(),
            given.sampling());
    ConfidenceCurve curve = found.curve();
    double p = curve.p(0);
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .number("estimate", given.scale().back(found.estimate()))
            .number("c", found.c())
            .number("noise_sd", found.noiseSd())
            .whole("df", found.df())
            .number("p", p)
            .number("p_b_greater", curve.pGreater(0))
            .number("p_b_less", curve.pLess(0));
    intervalsAndVerdict(result, given, found, margin);
    result.objects("at", at(given, curve));
    result.flag("no_variation", found.noVariation());
    if (given.given().flag("curve", false) && !found.noVariation()) {
      result.numbers("knots", Arrays.stream(curve.knots()).map(given.scale()::back).toArray());
    }
    if (found.sampled()) {
      given.stateSample(result, true);
      result.number("p_error", found.pError(p)).whole("orders_counted", curve.total());
    }
    return new Evaluation(
        result,
        "Re-randomisation test of the least-squares difference after drift, inverted to a "
            + "confidence curve (Fisher 1935; Garthwaite 1996).",
        notes(given, found));
  }

  private static void intervalsAndVerdict(
      ResultFields result, OrderGiven given, TwoSetups found, double[] margin) {
    for (int i = 0; i < LEVELS.length; i++) {
      interval(result, LEVEL_FIELDS[i], given.scale(), found, LEVELS[i]);
    }
    if (margin.length == 0) {
      result.none("verdict");
    } else {
      result.text("verdict", found.verdict(margin[0], margin[1]).text());
    }
  }

  private static List<String> notes(OrderGiven given, TwoSetups found) {
    List<String> notes = new ArrayList<>();
    notes.add(given.reference(found.sampled()));
    if (found.noVariation()) {
      notes.add("Nothing varies once drift and setup are removed, so no test is possible.");
    }
    if (given.scale() == Scale.RATIO) {
      notes.add("Estimate, intervals and knots are ratios B/A; noise_sd and c are in log units.");
    }
    return notes;
  }

  private static void interval(
      ResultFields result, String field, Scale scale, TwoSetups found, double level) {
    if (found.noVariation()) {
      result.none(field);
      return;
    }
    Optional<Interval> interval = found.curve().interval(level);
    if (interval.isEmpty()) {
      result.interval(field, Double.NaN, Double.NaN);
    } else {
      result.interval(field, scale.back(interval.get().low()), scale.back(interval.get().high()));
    }
  }

  /** The worthwhile difference as shifts −D and +D; nothing where none is given. */
  static double[] margin(OrderGiven given) {
    Given fields = given.given();
    if (!fields.has("worthwhile")) {
      return new double[0];
    }
    double worthwhile = fields.number("worthwhile");
    if (worthwhile <= 0) {
      throw fields.refuse("worthwhile", "must be above 0, but is " + worthwhile + ".");
    }
    double margin = given.scale().margin(worthwhile);
    return new double[] {-margin, margin};
  }

  /** The counts at every shift that is asked for. */
  static List<ResultFields> at(OrderGiven given, ConfidenceCurve curve) {
    double[] said = given.given().has("at") ? given.given().numbers("at") : new double[0];
    double[] shifts = given.scale().forward("at", said);
    List<ResultFields> list = new ArrayList<>();
    for (int i = 0; i < said.length; i++) {
      list.add(
          new ResultFields()
              .number("shift", said[i])
              .whole("count_plus", curve.countPlus(shifts[i]))
              .whole("count_minus", curve.countMinus(shifts[i]))
              .number("p", curve.p(shifts[i])));
    }
    return list;
  }
}
