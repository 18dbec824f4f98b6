package blindlap.compute;

import blindlap.stats.compare.Trend;
import blindlap.stats.compare.Verdict;
import blindlap.stats.distribution.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The trend over the levels of one setting. */
final class LevelCalculations {
  private LevelCalculations() {}

  static List<Calculation> all() {
    return List.of(
        OrderGiven.calculation(
            "trend",
            OrderGiven.withStints("order", "levels", "drift", "covariates", "worthwhile"),
            LevelCalculations::trend));
  }

  private static Evaluation trend(OrderGiven given) {
    given.refuseRatioScale("a trend is followed in the measure's own unit.");
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
    ResultFields result = fields(found, levels);
    interval(result, found, "interval_95", 0.95);
    interval(result, found, "interval_90", 0.90);
    verdict(result, given, found);
    found
        .bend()
        .ifPresentOrElse(
            bend ->
                result.object(
                    "bend", new ResultFields().number("t", bend.t()).number("p", bend.p())),
            () -> result.none("bend"));
    given.stateSample(result, found.sampled());
    if (found.sampled()) {
      result.number("p_error", found.pError(found.curve().p(0)));
    }
    List<String> notes = new ArrayList<>();
    notes.add(given.reference(found.sampled()));
    notes.add(
        "The p of the bend is exact if no level matters; with a strong trend it is cautious.");
    return new Evaluation(
        result,
        "Re-randomisation of the least-squares trend over the levels after drift, inverted to a"
            + " confidence curve.",
        notes);
  }

  private static ResultFields fields(Trend found, double[] levels) {
    return new ResultFields()
        .whole("count", found.count())
        .number("estimate", found.estimate())
        .number("per_unit", found.perUnit(levels))
        .number("noise_sd", found.noiseSd())
        .whole("df", found.df())
        .number("p", found.curve().p(0))
        .number("p_greater", found.curve().pGreater(0))
        .number("p_less", found.curve().pLess(0));
  }

  private static void interval(ResultFields result, Trend found, String field, double level) {
    Optional<Interval> interval =
        found.noVariation() ? Optional.empty() : found.curve().interval(level);
    if (found.noVariation()) {
      result.none(field);
    } else {
      result.interval(
          field,
          interval.map(Interval::low).orElse(Double.NaN),
          interval.map(Interval::high).orElse(Double.NaN));
    }
  }

  private static void verdict(ResultFields result, OrderGiven given, Trend found) {
    if (!given.given().has("worthwhile")) {
      result.none("verdict");
      return;
    }
    double worthwhile = given.given().number("worthwhile");
    if (worthwhile <= 0) {
      throw given.given().refuse("worthwhile", "must be above 0, but is " + worthwhile + ".");
    }
    Verdict verdict = found.verdict(-worthwhile, worthwhile);
    result.text(
        "verdict",
        verdict == Verdict.NO_WORTHWHILE_DIFFERENCE ? "no worthwhile trend" : verdict.text());
  }
}
