package blindlap.compute;

import blindlap.stats.distribution.Interval;
import blindlap.stats.tell.Discrimination;
import blindlap.stats.tell.Sensitivity;
import blindlap.stats.tell.Telling;
import blindlap.stats.tell.TellingPower;
import blindlap.stats.tell.TellingTrials;
import java.util.List;
import java.util.Set;

/** Runs of trials: can the rider tell, and as often as would matter? */
final class TellingCalculations {
  private TellingCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "telling",
            Set.of("task", "trials", "correct", "matters"),
            TellingCalculations::telling));
  }

  private static Evaluation telling(Given given) {
    TellingTrials run =
        TellingTrials.of(
            given.option("task", Discrimination.class),
            given.whole("trials"),
            given.has("matters") ? given.number("matters") : TellingTrials.USUAL_SHARE);
    TellingPower power = TellingPower.of(run);
    ResultFields result = new ResultFields();
    if (given.has("correct")) {
      read(result, Telling.of(run, given.whole("correct")));
    }
    if (run.least().isPresent()) {
      result.whole("minimum", run.least().getAsInt());
    } else {
      result.none("minimum");
    }
    result.number("power", power.power()).number("power_cannot", power.cannot());
    return Evaluation.of(
        result,
        "Exact binomial, each trial drawn on its own; Clopper-Pearson 90 % limits with guessing"
            + " taken out.");
  }

  /** What a run says, under the names of the result. */
  static void read(ResultFields result, Telling telling) {
    Interval limits = telling.limits();
    Sensitivity sensitivity = telling.sensitivity();
    result
        .text("verdict", telling.verdict().text())
        .flag("fewer_than_guessing", telling.fewer())
        .number("p", telling.p())
        .number("p_fewer", telling.pFewer())
        .number("really_told", telling.share())
        .interval("limits_90", limits.low(), limits.high())
        .number("d_prime", sensitivity.dPrime())
        .interval(
            "d_prime_interval_95", sensitivity.interval95().low(), sensitivity.interval95().high());
    telling
        .often()
        .ifPresentOrElse(
            often -> result.text("how_often", often.text()), () -> result.none("how_often"));
  }
}
