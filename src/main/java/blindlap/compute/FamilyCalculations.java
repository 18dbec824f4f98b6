package blindlap.compute;

import blindlap.stats.compare.ManySetups;
import blindlap.stats.compare.SeveralMeasures;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Nuisance;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** More than two setups, and more than one measure, over the admissible orders. */
final class FamilyCalculations {
  private FamilyCalculations() {}

  static List<Calculation> all() {
    return List.of(
        OrderGiven.calculation(
            "compare-many",
            OrderGiven.withStints("order", "drift", "covariates"),
            FamilyCalculations::compareMany),
        OrderGiven.calculation(
            "compare-measures",
            Set.of("order", "measures", "drift", "covariates"),
            FamilyCalculations::compareMeasures));
  }

  private static Evaluation compareMany(OrderGiven given) {
    ManySetups found =
        ManySetups.compare(
            given.set(),
            given.order(),
            given.values(),
            given.valid(),
            given.nuisance(),
            given.sampling());
    List<ResultFields> pairs =
        found.pairs().stream().map(pair -> pairFields(given, found, pair)).toList();
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .number("f", found.f())
            .number("p", found.p())
            .objects("pairs", pairs)
            .number("noise_sd", found.noiseSd())
            .whole("df", found.df())
            .flag("no_variation", found.noVariation());
    given.stateSample(result, found.sampled());
    if (found.sampled()) {
      result.number("p_error", found.pError(found.p()));
    }
    return new Evaluation(
        result,
        "Re-randomisation of F and of every pair's t; pairs adjusted by the single-step maximum "
            + "(Westfall & Young 1993).",
        List.of(
            given.reference(found.sampled()),
            "Adjusted p-values are exact if no setup differs; if some do, by simulation only.",
            "interval_95 is approximate: Tukey and Kramer, for all pairs together, if laps behave"
                + " normally."));
  }

  private static ResultFields pairFields(OrderGiven given, ManySetups found, ManySetups.Pair pair) {
    ResultFields fields =
        new ResultFields()
            .text("pair", pair.name())
            .number("estimate", given.scale().back(pair.estimate()))
            .number("t", pair.t())
            .number("p", pair.p())
            .number("p_adjusted", pair.pAdjusted());
    Optional<Interval> interval = found.interval(pair, 0.95);
    if (interval.isEmpty()) {
      fields.none("interval_95");
    } else {
      fields.interval(
          "interval_95",
          given.scale().back(interval.get().low()),
          given.scale().back(interval.get().high()));
    }
    if (found.sampled()) {
      fields.number("p_error", found.pError(pair.p()));
    }
    return fields;
  }

  private static Evaluation compareMeasures(OrderGiven given) {
    List<SeveralMeasures.Series> measures = new ArrayList<>();
    Nuisance nuisance = given.nuisance();
    List<Given> listed = given.given().objects("measures");
    for (int i = 0; i < listed.size(); i++) {
      Given measure = listed.get(i);
      measure.allowOnly(Set.of("name", "values", "laps", "summary"));
      double[] values = StintsGiven.values(measure, "measures[" + i + "].", given.scale());
      measures.add(new SeveralMeasures.Series(measure.text("name"), values, nuisance));
    }
    SeveralMeasures found =
        SeveralMeasures.compare(
            given.set(), given.order(), measures, given.valid(), given.sampling());
    ResultFields result =
        new ResultFields()
            .whole("count", found.count())
            .numbers("p", found.p())
            .numbers("p_adjusted", found.pAdjusted());
    found
        .pSingleStep()
        .ifPresentOrElse(
            single -> result.numbers("p_single_step", single), () -> result.none("p_single_step"));
    given.stateSample(result, found.sampled());
    if (found.sampled()) {
      result.numbers("p_error", Arrays.stream(found.p()).map(found::pError).toArray());
    }
    return new Evaluation(
        result, method(found.method()), List.of(given.reference(found.sampled())));
  }

  private static String method(SeveralMeasures.Method method) {
    return switch (method) {
      case STEP_DOWN_MAXIMUM ->
          "Re-randomisation of every measure on the same orders; adjusted by the step-down maximum "
              + "(Westfall & Young 1993).";
      case HOLM ->
          "Re-randomisation of every measure; adjusted by Holm (1979), because the usable stints "
              + "differ between measures.";
    };
  }
}
