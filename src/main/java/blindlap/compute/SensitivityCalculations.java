package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.GuessIndex;
import blindlap.stats.tell.Sensitivity;
import java.util.List;
import java.util.Set;

/** How well a person tells samples apart, and indices of blinding. */
final class SensitivityCalculations {
  private static final String SAME_OR_OTHER = "same-or-other";

  private SensitivityCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "sensitivity",
            Set.of(
                "task",
                "trials",
                "correct",
                "hits",
                "misses",
                "false_alarms",
                "correct_rejections"),
            SensitivityCalculations::sensitivity),
        Calculation.of(
            "sensitivity-curve", Set.of("task", "d_prime"), SensitivityCalculations::curve),
        Calculation.of(
            "guess-index", Set.of("table", "weights"), SensitivityCalculations::guessIndex));
  }

  private static Evaluation sensitivity(Given given) {
    if (given.text("task").equals(SAME_OR_OTHER)) {
      return sameOrOther(given);
    }
    given.allowOnly(Set.of("task", "trials", "correct"));
    Discrimination task = given.option("task", Discrimination.class, List.of(SAME_OR_OTHER));
    Sensitivity found = Sensitivity.ofChoices(task, given.whole("trials"), given.whole("correct"));
    return Evaluation.of(
        common(new ResultFields().number("proportion", found.proportion()), found),
        "d' from the task's curve for unit-variance normal percepts; delta-method standard error; "
            + "Clopper-Pearson ends through the inverse curve.");
  }

  private static Evaluation sameOrOther(Given given) {
    given.allowOnly(Set.of("task", "hits", "misses", "false_alarms", "correct_rejections"));
    Sensitivity found =
        Sensitivity.ofSameOrOther(
            given.whole("hits"),
            given.whole("misses"),
            given.whole("false_alarms"),
            given.whole("correct_rejections"));
    return Evaluation.of(
        common(new ResultFields().number("criterion", found.criterion()), found),
        "Equal-variance signal detection; standard error of Gourevitch & Galanter (1967).",
        "If one of the four counts is 0, a half is added to all four first.");
  }

  private static ResultFields common(ResultFields result, Sensitivity found) {
    Interval interval = found.interval95();
    return result
        .number("d_prime", found.dPrime())
        .number("standard_error", found.standardError())
        .interval("interval_95", interval.low(), interval.high());
  }

  private static Evaluation curve(Given given) {
    Discrimination task = given.option("task", Discrimination.class);
    double[] distances = given.numbers("d_prime");
    double[] proportions = new double[distances.length];
    for (int i = 0; i < distances.length; i++) {
      try {
        proportions[i] = task.proportion(distances[i]);
      } catch (StatsException e) {
        throw e.named("d_prime[" + i + "]");
      }
    }
    return Evaluation.of(
        new ResultFields().numbers("proportion", proportions),
        "Proportion of right answers for unit-variance normal percepts.");
  }

  private static Evaluation guessIndex(Given given) {
    double[][] table = given.table("table");
    GuessIndex found =
        given.has("weights")
            ? GuessIndex.of(table, given.numbers("weights"))
            : GuessIndex.of(table);
    Interval a = found.bangInterval95(0);
    Interval b = found.bangInterval95(1);
    ResultFields result =
        new ResultFields()
            .numbers("bang", found.bang())
            .numbers("bang_se", found.bangSe())
            .table(
                "bang_interval_95",
                new double[] {a.low(), a.high()},
                new double[] {b.low(), b.high()})
            .number("james", found.james())
            .number("james_se", found.jamesSe());
    Interval james = found.jamesInterval95();
    if (Double.isNaN(found.james())) {
      result.none("james_interval_95");
    } else {
      result.interval("james_interval_95", james.low(), james.high());
    }
    return Evaluation.of(
        result,
        "Bang, Ni & Davis (2004); James et al. (1996) with a multinomial delta-method error.",
        "The errors suppose independent guesses; those of one rider in a row are not.");
  }
}
