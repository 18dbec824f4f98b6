package blindlap.compute;

import blindlap.workshop.Sag;
import blindlap.workshop.SpringStep;
import blindlap.workshop.Unit;
import blindlap.workshop.Units;
import java.util.List;
import java.util.Set;

/** Units, sag and spring steps. */
final class WorkshopCalculations {
  private WorkshopCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of("convert", Set.of("value", "from", "to"), WorkshopCalculations::convert),
        Calculation.of(
            "sag", Set.of("stroke_mm", "sag_mm", "sag_percent"), WorkshopCalculations::sag),
        Calculation.of(
            "spring-step",
            Set.of("rate", "new_rate", "sag_percent"),
            WorkshopCalculations::springStep));
  }

  private static Evaluation convert(Given given) {
    double value = given.number("value");
    Unit from = Unit.ofSymbol("from", given.text("from"));
    Unit to = Unit.ofSymbol("to", given.text("to"));
    return Evaluation.of(
        new ResultFields().number("value", Units.convert(value, from, to)),
        "Exact factors: 0.45359237 kg, 25.4 mm, 9.80665 m/s²; rounded once.");
  }

  private static Evaluation sag(Given given) {
    double stroke = given.number("stroke_mm");
    if (given.has("sag_mm") && given.has("sag_percent")) {
      throw given.refuse("sag_percent", "must be left out when sag_mm is given.");
    }
    ResultFields result = new ResultFields();
    if (given.has("sag_percent")) {
      result.number("sag_mm", Sag.millimetres(stroke, given.number("sag_percent")));
    } else {
      result.number("sag_percent", Sag.percent(stroke, given.number("sag_mm")));
    }
    return Evaluation.of(result, "percent = 100·sag/stroke.");
  }

  private static Evaluation springStep(Given given) {
    double sag =
        SpringStep.sagPercent(
            given.number("rate"), given.number("new_rate"), given.number("sag_percent"));
    return Evaluation.of(
        new ResultFields().number("sag_percent", sag),
        "Same load on a linear coil: percent·rate/new_rate.",
        "Preload, friction and progressive springs are not in this figure.");
  }
}
