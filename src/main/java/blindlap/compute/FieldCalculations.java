package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.order.Drift;
import blindlap.stats.order.Nuisance;
import blindlap.stats.order.Orders;
import blindlap.stats.pool.Field;
import blindlap.stats.pool.FieldDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Several setups over several days. */
final class FieldCalculations {
  private FieldCalculations() {}

  static List<Calculation> all() {
    return List.of(Calculation.of("field", Set.of("days"), FieldCalculations::field));
  }

  private static Evaluation field(Given given) {
    List<FieldDay> days = new ArrayList<>();
    List<Given> listed = given.objects("days");
    for (int i = 0; i < listed.size(); i++) {
      days.add(day(listed.get(i), "days[" + i + "]"));
    }
    Field found = Field.of(days);
    ResultFields result =
        new ResultFields()
            .whole("df", found.df())
            .number("residual_sd", found.residualSd())
            .objects("pairs", found.pairs().stream().map(pair -> pair(found, pair)).toList());
    found
        .agreement()
        .ifPresentOrElse(
            agreement ->
                result.object(
                    "agreement",
                    new ResultFields()
                        .number("f", agreement.f())
                        .whole("df1", agreement.df1())
                        .whole("df2", agreement.df2())
                        .number("p", agreement.p())),
            () -> result.none("agreement"));
    return new Evaluation(
        result,
        "Least squares of day with drift and setup; all pairs by Tukey and Kramer.",
        List.of(
            "The intervals hold only if the lead of a setup does not change from day to day; that"
                + " days agree does not prove it."));
  }

  private static FieldDay day(Given day, String at) {
    day.allowOnly(Set.of("setups", "order", "values", "valid", "drift", "covariates"));
    List<String> setups = day.texts("setups");
    if (new HashSet<>(setups).size() < setups.size()) {
      throw day.refuse("setups", "names one setup twice.");
    }
    int[] order;
    try {
      order = Orders.parse(day.text("order"));
    } catch (StatsException e) {
      throw e.named(at + ".order");
    }
    boolean[] valid = new boolean[order.length];
    Arrays.fill(valid, true);
    Drift drift = day.option("drift", Drift.class);
    return new FieldDay(
        setups,
        order,
        day.numbersWithGaps("values"),
        day.has("valid") ? day.flags("valid") : valid,
        nuisance(day, drift, at));
  }

  private static Nuisance nuisance(Given day, Drift drift, String at) {
    if (!day.has("covariates")) {
      return Nuisance.of(drift);
    }
    double[][] covariates = day.tableWithGaps("covariates");
    try {
      return Nuisance.of(drift, List.of(covariates));
    } catch (StatsException e) {
      throw e.named(at + "." + e.argument());
    }
  }

  private static ResultFields pair(Field found, Field.Pair pair) {
    Optional<Interval> interval = found.interval95(pair);
    return new ResultFields()
        .text("pair", pair.first() + "-" + pair.second())
        .number("estimate", pair.estimate())
        .number("se", pair.standardError())
        .interval(
            "interval_95",
            interval.map(Interval::low).orElse(Double.NaN),
            interval.map(Interval::high).orElse(Double.NaN))
        .whole("days", pair.days());
  }
}
