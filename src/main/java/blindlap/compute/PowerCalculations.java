package blindlap.compute;

import blindlap.stats.power.MeanPower;
import java.util.List;
import java.util.Set;

/** Power of tests of means, and what is needed for it. */
final class PowerCalculations {
  private PowerCalculations() {}

  /** Words of the request for the two tails. */
  private enum Tail {
    TWO_SIDED,
    GREATER
  }

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "mean-power",
            Set.of("n", "difference", "sd", "level", "kind", "tail", "both_tails"),
            PowerCalculations::power),
        Calculation.of(
            "mean-power-solve",
            Set.of("n", "difference", "sd", "level", "kind", "tail", "both_tails", "power"),
            PowerCalculations::solve));
  }

  private static Evaluation power(Given given) {
    MeanPower test = test(given);
    double difference = given.number("difference");
    double sd = given.number("sd");
    double power;
    if (given.isList("n")) {
      double[] n = pair(given);
      power = test.power(n[0], n[1], difference, sd);
    } else {
      power = test.power(given.number("n"), difference, sd);
    }
    return Evaluation.of(new ResultFields().number("power", power), method());
  }

  private static Evaluation solve(Given given) {
    MeanPower test = test(given);
    double power = given.number("power");
    List<String> absent =
        List.of("n", "difference", "sd").stream().filter(each -> !given.has(each)).toList();
    if (absent.isEmpty()) {
      throw given.refuse("n", "is given, and so are difference and sd: leave one of them out.");
    }
    if (absent.size() > 1) {
      throw given.refuse(absent.get(1), "is missing: only one of n, difference and sd may be.");
    }
    String wanted = absent.get(0);
    double found =
        switch (wanted) {
          case "n" -> test.solveN(power, given.number("difference"), given.number("sd"));
          case "difference" -> solveDifference(test, power, given);
          case "sd" -> solveSd(test, power, given);
          default -> throw new IllegalStateException("nothing solves for " + wanted);
        };
    return Evaluation.of(
        new ResultFields().number(wanted, found), method() + " Solved by Brent's method.");
  }

  private static double solveDifference(MeanPower test, double power, Given given) {
    double sd = given.number("sd");
    if (given.isList("n")) {
      double[] n = pair(given);
      return test.solveDifference(power, n[0], n[1], sd);
    }
    return test.solveDifference(power, given.number("n"), sd);
  }

  private static double solveSd(MeanPower test, double power, Given given) {
    double difference = given.number("difference");
    if (given.isList("n")) {
      double[] n = pair(given);
      return test.solveSd(power, n[0], n[1], difference);
    }
    return test.solveSd(power, given.number("n"), difference);
  }

  private static MeanPower test(Given given) {
    MeanPower.Kind kind = given.option("kind", MeanPower.Kind.class);
    Tail tail = given.option("tail", Tail.class);
    boolean both =
        tail == Tail.TWO_SIDED ? given.flag("both_tails") : given.flag("both_tails", false);
    MeanPower.Tail rejects =
        tail == Tail.GREATER
            ? MeanPower.Tail.GREATER
            : both ? MeanPower.Tail.TWO_SIDED_BOTH : MeanPower.Tail.TWO_SIDED_NEAR;
    return MeanPower.of(kind, rejects, given.number("level"));
  }

  private static double[] pair(Given given) {
    double[] n = given.numbers("n");
    if (n.length != 2) {
      throw given.refuse("n", "must be one number or a pair, but has " + n.length + " numbers.");
    }
    return n;
  }

  private static String method() {
    return "t test by the noncentral t distribution.";
  }
}
