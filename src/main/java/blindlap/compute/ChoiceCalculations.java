package blindlap.compute;

import blindlap.fault.StatsException;
import blindlap.stats.compare.PValueAdjustment;
import blindlap.stats.distribution.Interval;
import blindlap.stats.distribution.ProportionInterval;
import blindlap.stats.tell.BinomialChoice;
import java.util.List;
import java.util.Set;

/** Counts of choices against chance, and p-values adjusted for their number. */
final class ChoiceCalculations {
  private ChoiceCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "choice", Set.of("trials", "chosen", "chance", "tail"), ChoiceCalculations::choice),
        Calculation.of(
            "choice-minimum",
            Set.of("trials", "chance", "level", "tail"),
            ChoiceCalculations::minimum),
        Calculation.of(
            "choice-power",
            Set.of("trials", "chance", "level", "true_proportion"),
            ChoiceCalculations::power),
        Calculation.of("adjust", Set.of("p", "method"), ChoiceCalculations::adjust));
  }

  private static Evaluation choice(Given given) {
    int trials = given.whole("trials");
    int chosen = given.whole("chosen");
    BinomialChoice test = BinomialChoice.of(trials, given.number("chance"));
    double p = test.p(chosen, given.option("tail", BinomialChoice.Tail.class));
    Interval exact = ProportionInterval.CLOPPER_PEARSON.of(chosen, trials);
    Interval score = ProportionInterval.WILSON.of(chosen, trials);
    return Evaluation.of(
        new ResultFields()
            .number("proportion", (double) chosen / trials)
            .number("p", p)
            .interval("exact_interval_95", exact.low(), exact.high())
            .interval("score_interval_95", score.low(), score.high()),
        "Exact binomial test; intervals of Clopper & Pearson (1934) and Wilson (1927).",
        "Both intervals are two-sided 95 % whatever the tail.");
  }

  private static Evaluation minimum(Given given) {
    int[] trials = trials(given);
    double chance = given.number("chance");
    double level = given.number("level");
    var tail = given.option("tail", BinomialChoice.Tail.class);
    int[] minima = new int[trials.length];
    for (int i = 0; i < trials.length; i++) {
      minima[i] = design(given, trials, i, chance).minimum(level, tail).orElse(-1);
    }
    ResultFields result = new ResultFields();
    putMinima(result, given, minima);
    return Evaluation.of(result, "Exact binomial tails; null where no count reaches the level.");
  }

  private static Evaluation power(Given given) {
    int[] trials = trials(given);
    double chance = given.number("chance");
    double level = given.number("level");
    double truth = given.number("true_proportion");
    int[] minima = new int[trials.length];
    double[] powers = new double[trials.length];
    for (int i = 0; i < trials.length; i++) {
      BinomialChoice test = design(given, trials, i, chance);
      minima[i] = test.minimum(level, BinomialChoice.Tail.GREATER).orElse(-1);
      powers[i] = test.power(level, truth);
    }
    ResultFields result = new ResultFields();
    putMinima(result, given, minima);
    if (given.isList("trials")) {
      result.numbers("power", powers);
    } else {
      result.number("power", powers[0]);
    }
    return Evaluation.of(result, "Exact binomial test, tail greater, at the true proportion.");
  }

  private static Evaluation adjust(Given given) {
    PValueAdjustment method = given.option("method", PValueAdjustment.class);
    return Evaluation.of(
        new ResultFields().numbers("adjusted", method.adjust(given.numbers("p"))),
        switch (method) {
          case HOLM -> "Holm (1979), step-down.";
          case HOCHBERG -> "Hochberg (1988), step-up.";
          case BENJAMINI_HOCHBERG -> "Benjamini & Hochberg (1995), step-up: false discovery rate.";
          case BONFERRONI -> "Bonferroni: p times their number.";
        });
  }

  private static int[] trials(Given given) {
    return given.isList("trials") ? given.wholes("trials") : new int[] {given.whole("trials")};
  }

  private static BinomialChoice design(Given given, int[] trials, int i, double chance) {
    try {
      return BinomialChoice.of(trials[i], chance);
    } catch (StatsException e) {
      boolean inList = given.isList("trials") && e.argument().equals("trials");
      throw inList ? e.named("trials[" + i + "]") : e;
    }
  }

  private static void putMinima(ResultFields result, Given given, int[] minima) {
    if (given.isList("trials")) {
      result.wholesOrNone("minimum", minima);
    } else if (minima[0] < 0) {
      result.none("minimum");
    } else {
      result.whole("minimum", minima[0]);
    }
  }
}
