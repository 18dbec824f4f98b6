package blindlap.compute;

import blindlap.stats.look.Boundary;
import blindlap.stats.look.Spending;
import java.util.List;
import java.util.Set;

/** Bounds for looks before the end. */
final class StoppingCalculations {
  private static final String METHOD =
      "Recursive integration of a process with independent increments (Armitage, McPherson & Rowe"
          + " 1969)";

  private StoppingCalculations() {}

  static List<Calculation> all() {
    return List.of(
        Calculation.of(
            "stopping",
            Set.of("looks", "level", "spending", "two_sided_total", "boundary"),
            StoppingCalculations::stopping));
  }

  private static Evaluation stopping(Given given) {
    if (given.has("boundary")) {
      given.allowOnly(Set.of("looks", "level", "boundary"));
      return boundary(given);
    }
    double[] looks = given.numbers("looks");
    double[] spent = given.option("spending", Spending.class).spent(given.number("level"), looks);
    return Evaluation.of(
        new ResultFields()
            .numbers("spent", spent)
            .numbers("bounds", Boundary.spending(looks, spent, given.flag("two_sided_total"))),
        METHOD + "; the error is spent as Lan & DeMets (1983) propose.",
        "A bound of null may spend nothing: such a look can never stop.");
  }

  private static Evaluation boundary(Given given) {
    Boundary.Shape shape = given.option("boundary", Boundary.Shape.class);
    int looks = given.whole("looks");
    double constant = shape.constant(looks, given.number("level"));
    return Evaluation.of(
        new ResultFields()
            .number("constant", constant)
            .numbers("bounds", shape.bounds(looks, constant)),
        METHOD + "; two-sided, equally spaced looks.");
  }
}
