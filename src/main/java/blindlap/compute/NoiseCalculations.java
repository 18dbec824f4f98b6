package blindlap.compute;

import blindlap.stats.distribution.Interval;
import blindlap.stats.noise.Agreement;
import blindlap.stats.noise.OneWay;
import blindlap.stats.noise.Repeatability;
import blindlap.stats.noise.Spread;
import java.util.List;
import java.util.Set;

/** How much repeated numbers scatter, and how well two ways of measuring agree. */
final class NoiseCalculations {
  private NoiseCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of("spread", Set.of("values"), NoiseCalculations::spread),
        Calculation.of("one-way", Set.of("groups"), NoiseCalculations::oneWay),
        Calculation.of("repeatability", Set.of("groups"), NoiseCalculations::repeatability),
        Calculation.of("agreement", Set.of("first", "second"), NoiseCalculations::agreement));
  }

  private static Evaluation spread(Given given) {
    Spread spread = Spread.of(given.numbers("values"));
    ResultFields result =
        new ResultFields()
            .whole("n", spread.n())
            .number("mean", spread.mean())
            .number("sd", spread.sd())
            .number("lag1", spread.lag1());
    String method = "Two-pass centred sums in double-double arithmetic; SD with n - 1.";
    return Double.isNaN(spread.lag1())
        ? Evaluation.of(result, method, "All values are equal, so lag1 is not defined.")
        : Evaluation.of(result, method);
  }

  private static Evaluation oneWay(Given given) {
    OneWay found = OneWay.of(given.table("groups"));
    return Evaluation.of(
        new ResultFields()
            .whole("between_df", found.betweenDf())
            .whole("within_df", found.withinDf())
            .number("between_ss", found.betweenSquares())
            .number("within_ss", found.withinSquares())
            .number("between_ms", found.betweenMean())
            .number("within_ms", found.withinMean())
            .number("f", found.f())
            .number("p", found.p())
            .number("r_squared", found.rSquared())
            .number("residual_sd", found.residualSd()),
        "One-way analysis of variance, fixed effects, upper tail of F.");
  }

  private static Evaluation repeatability(Given given) {
    Repeatability found = Repeatability.ofGroups(given.table("groups"));
    Interval interval = found.sdInterval95();
    return Evaluation.of(
        new ResultFields()
            .number("sd", found.sd())
            .whole("df", found.df())
            .number("coefficient", found.coefficient())
            .interval("sd_interval_95", interval.low(), interval.high())
            .numbers("group_sd", found.groupSd()),
        "SD pooled within groups; coefficient 1.96·√2·SD (Bland & Altman 1999); χ² interval.",
        "The interval is right if the values behave normally.");
  }

  private static Evaluation agreement(Given given) {
    Agreement found = Agreement.of(given.numbers("first"), given.numbers("second"));
    Interval limits = found.limits();
    return Evaluation.of(
        new ResultFields()
            .number("bias", found.bias())
            .number("sd", found.sd())
            .number("lower", limits.low())
            .number("upper", limits.high()),
        "Limits of agreement, first - second, 1.96 SD of the differences (Bland & Altman 1986).");
  }
}
