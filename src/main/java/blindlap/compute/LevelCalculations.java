package blindlap.compute;

import blindlap.stats.compare.LevelMeans;
import blindlap.stats.compare.OrderSet;
import blindlap.stats.compare.Scale;
import blindlap.stats.compare.Trend;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Orders;
import blindlap.stats.tell.LevelGuessTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The trend over the levels of one setting, and guesses of them. */
final class LevelCalculations {
  private LevelCalculations() {}

  /** Words of the request for which way a measure is better. */
  private enum Better {
    LOWER,
    HIGHER
  }

  static List<Calculation> all() {
    return List.of(
        OrderGiven.calculation(
            "trend",
            OrderGiven.withStints(
                "order", "levels", "fitted", "drift", "covariates", "worthwhile", "at", "better"),
            given -> given.given().has("fitted") ? fitted(given) : trend(given)));
  }

  private static Evaluation trend(OrderGiven given) {
    double[] levels = given.given().numbers("levels");
    Trend found =
        Trend.of(
            given.set(),
            levels,
            given.order(),
            given.values(),
            given.valid(),
            given.nuisance(),
            given.sampling());
    ResultFields result = fields(given.scale(), found, levels);
    interval(result, given.scale(), found, "interval_95", 0.95);
    interval(result, given.scale(), found, "interval_90", 0.90);
    verdict(result, given, found);
    result.objects("at", OrderCalculations.at(given, found.curve()));
    bend(result, found);
    result.number("attainable_level", OrderSet.ofTrend(given.set()).attainableLevel());
    means(result, given.scale(), found);
    ends(result, given, found, levels);
    given.stateSample(result, found.sampled());
    if (found.sampled()) {
      result.number("p_error", found.pError(found.curve().p(0)));
    }
    List<String> notes = new ArrayList<>();
    notes.add(given.reference(found.sampled()));
    notes.add(
        "The p of the bend is exact if no level matters; with a strong trend it is cautious.");
    notes.add("Intervals of the means and between levels rest on normal theory.");
    if (given.scale() == Scale.RATIO) {
      notes.add(
          "Estimates, intervals and means are ratios or in the unit of the values; noise_sd and"
              + " standard_error are in log units.");
    }
    return new Evaluation(
        result,
        "Re-randomisation of the least-squares trend over the levels after drift, inverted to a"
            + " confidence curve; means by least squares, between levels by Tukey and Kramer.",
        notes);
  }

  /** The estimate alone, by what was really on: nobody drew that. */
  private static Evaluation fitted(OrderGiven given) {
    for (String field : List.of("order", "worthwhile", "at", "better")) {
      if (given.given().has(field)) {
        throw given
            .given()
            .refuse(field, "must be left out when fitted is given, which gives an estimate alone.");
      }
    }
    double[] levels = given.given().numbers("levels");
    Trend found =
        Trend.estimateAt(
            given.set(),
            levels,
            given.given().numbers("fitted"),
            given.values(),
            given.valid(),
            given.nuisance());
    return new Evaluation(
        new ResultFields()
            .number("estimate", given.scale().back(found.estimate()))
            .number("per_unit", given.scale().back(found.perUnit(levels))),
        "Least-squares trend over the levels that were on, after drift.",
        List.of("Without p: the levels that were on are not those that were drawn."));
  }

  /** Guesses of levels: the answer to {@code guesses} where levels are given. */
  static Evaluation guesses(OrderGiven given) {
    LevelGuessTest found =
        LevelGuessTest.of(
            given.set(),
            given.given().numbers("levels"),
            given.order(),
            given.given().text("guesses"),
            given.valid(),
            given.sampling());
    ResultFields result =
        new ResultFields()
            .whole("count", given.set().count())
            .number("t", found.t())
            .whole("right", found.right())
            .whole("wrong", found.wrong())
            .whole("unsure", found.unsure())
            .number("p", found.p())
            .number("mid_p", found.midP());
    given.stateSample(result, found.sampled());
    return new Evaluation(
        result,
        "Re-randomisation of the sum of level times guess, the guesses held fixed.",
        List.of(
            given.reference(found.sampled()),
            "A result without sign of unblinding does not show that the blind held."));
  }

  private static ResultFields fields(Scale scale, Trend found, double[] levels) {
    return new ResultFields()
        .whole("count", found.count())
        .number("estimate", scale.back(found.estimate()))
        .number("per_unit", scale.back(found.perUnit(levels)))
        .number("noise_sd", found.noiseSd())
        .whole("df", found.df())
        .number("p", found.curve().p(0))
        .number("p_greater", found.curve().pGreater(0))
        .number("p_less", found.curve().pLess(0));
  }

  private static void interval(
      ResultFields result, Scale scale, Trend found, String field, double level) {
    Optional<Interval> interval =
        found.noVariation() ? Optional.empty() : found.curve().interval(level);
    if (found.noVariation()) {
      result.none(field);
    } else {
      result.interval(
          field,
          interval.map(i -> scale.back(i.low())).orElse(Double.NaN),
          interval.map(i -> scale.back(i.high())).orElse(Double.NaN));
    }
  }

  private static void verdict(ResultFields result, OrderGiven given, Trend found) {
    double[] margin = OrderCalculations.margin(given);
    if (margin.length == 0) {
      result.none("verdict");
    } else {
      result.text("verdict", found.verdict(margin[0], margin[1]).textOfTrend());
    }
  }

  private static void bend(ResultFields result, Trend found) {
    found
        .bend()
        .ifPresentOrElse(
            bend ->
                result.object(
                    "bend", new ResultFields().number("t", bend.t()).number("p", bend.p())),
            () -> result.none("bend"));
  }

  private static void means(ResultFields result, Scale scale, Trend found) {
    if (found.means().isEmpty()) {
      result.none("means").none("between");
      return;
    }
    LevelMeans means = found.means().get();
    result.objects(
        "means",
        means.means().stream()
            .map(
                mean ->
                    interval(
                        new ResultFields()
                            .number("level", mean.level())
                            .whole("stints", mean.stints())
                            .number("mean", scale.back(mean.mean()))
                            .number("standard_error", mean.standardError()),
                        scale,
                        means.interval(mean, 0.95)))
            .toList());
    result.objects(
        "between",
        means.pairs().stream()
            .map(
                pair ->
                    interval(
                        new ResultFields()
                            .text(
                                "pair",
                                Orders.letter(pair.first()) + "-" + Orders.letter(pair.second()))
                            .number("estimate", scale.back(pair.estimate())),
                        scale,
                        means.interval(pair, 0.95)))
            .toList());
  }

  private static ResultFields interval(ResultFields fields, Scale scale, Interval interval) {
    return fields.interval("interval_95", scale.back(interval.low()), scale.back(interval.high()));
  }

  private static void ends(ResultFields result, OrderGiven given, Trend found, double[] levels) {
    if (!given.given().has("better")) {
      return;
    }
    boolean lower = given.given().option("better", Better.class) == Better.LOWER;
    level(result, "middle_better", found.middleBetter(lower), levels);
    level(result, "still_better", found.stillBetter(lower), levels);
  }

  private static void level(ResultFields result, String field, OptionalInt setup, double[] levels) {
    setup.ifPresentOrElse(found -> result.number(field, levels[found]), () -> result.none(field));
  }
}
