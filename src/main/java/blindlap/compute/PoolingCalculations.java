package blindlap.compute;

import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.VarianceComponents;
import blindlap.stats.pool.RiderPooling;
import java.util.List;
import java.util.Set;

/** Riders pooled, and scatter split between and within them. */
final class PoolingCalculations {
  private PoolingCalculations() {}

  private enum Method {
    REML
  }

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "pool-riders", Set.of("estimates", "variances"), PoolingCalculations::riders),
        Calculation.of(
            "variance-components", Set.of("groups", "method"), PoolingCalculations::components));
  }

  private static Evaluation riders(Given given) {
    double[] estimates = given.numbers("estimates");
    RiderPooling.Mean mean = RiderPooling.mean(estimates);
    ResultFields result =
        new ResultFields()
            .object(
                "mean",
                interval(
                        new ResultFields().number("estimate", mean.estimate()),
                        "interval_95",
                        mean.interval95())
                    .whole("df", mean.df()));
    if (!given.has("variances")) {
      return Evaluation.of(result, "Plain mean with a t interval.");
    }
    double[] variances = given.numbers("variances");
    result.object("reml", reml(RiderPooling.reml(estimates, variances)));
    RiderPooling.DerSimonianLaird moments = RiderPooling.derSimonianLaird(estimates, variances);
    result.object(
        "dersimonian_laird",
        new ResultFields()
            .number("tau_squared", moments.tauSquared())
            .number("estimate", moments.estimate())
            .number("se", moments.se()));
    return Evaluation.of(
        result,
        "Plain mean with a t interval; REML with Hartung-Knapp (2001) and its modification (Röver "
            + "et al. 2015); DerSimonian & Laird (1986).",
        "The plain mean does not use the variances.");
  }

  private static ResultFields reml(RiderPooling.Reml reml) {
    ResultFields fields =
        new ResultFields()
            .number("tau_squared", reml.tauSquared())
            .number("estimate", reml.estimate())
            .number("se", reml.se());
    interval(fields, "interval_95", reml.interval95());
    interval(fields, "hartung_knapp_interval_95", reml.hartungKnapp95());
    return interval(fields, "modified_hartung_knapp_interval_95", reml.modifiedHartungKnapp95());
  }

  private static ResultFields interval(ResultFields fields, String name, Interval interval) {
    return fields.interval(name, interval.low(), interval.high());
  }

  private static Evaluation components(Given given) {
    given.option("method", Method.class);
    VarianceComponents found = VarianceComponents.reml(given.table("groups"));
    return Evaluation.of(
        new ResultFields()
            .number("mean", found.mean())
            .number("mean_se", found.meanSe())
            .number("between_sd", found.betweenSd())
            .number("within_sd", found.withinSd()),
        "One-way random effects by restricted maximum likelihood; between variance not below 0.");
  }
}
