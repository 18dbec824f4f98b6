package blindlap.screen.plan;

import blindlap.plan.Differences;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.wording.AnswerWords;
import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** What the setups have in common and where they differ, a row each, as it is read on the page. */
final class PlanDiffers {
  private PlanDiffers() {}

  /** Component, settings, the bikes' own differences, and what each setup puts on the scales. */
  static List<PlanAnswerModel.Row> rows(Plan plan) {
    Differences differences = Differences.of(plan);
    Stream<PlanAnswerModel.Row> settings =
        differences.rows().stream()
            .map(
                row ->
                    new PlanAnswerModel.Row(
                        row.name(),
                        row.shown(),
                        AnswerWords.difference(row),
                        row.status() != Differences.Status.SAME));
    Stream<PlanAnswerModel.Row> bikes =
        differences.bikes().stream()
            .map(
                bike ->
                    new PlanAnswerModel.Row(
                        bike.name(),
                        List.of(bike.first(), bike.second()),
                        AnswerWords.say("setting.bikes"),
                        true));
    return Stream.of(component(plan).stream(), settings, bikes, mass(plan).stream())
        .flatMap(rows -> rows)
        .toList();
  }

  private static Optional<PlanAnswerModel.Row> component(Plan plan) {
    List<String> typed = plan.setups().stream().map(setup -> setup.component().strip()).toList();
    if (typed.stream().allMatch(String::isEmpty)) {
      return Optional.empty();
    }
    boolean same = typed.stream().distinct().count() == 1;
    return Optional.of(
        new PlanAnswerModel.Row(
            AnswerWords.say("setting.component"),
            typed.stream().map(words -> words.isEmpty() ? "–" : words).toList(),
            AnswerWords.say(same ? "setting.same" : "setting.differs"),
            !same));
  }

  /** A mass is no setting and asks for no reason, so that it never has the highlighter. */
  private static Optional<PlanAnswerModel.Row> mass(Plan plan) {
    List<BigDecimal> known =
        plan.setups().stream().map(Setup::massOnBike).filter(Objects::nonNull).toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new PlanAnswerModel.Row(
            AnswerWords.say("setting.mass"),
            plan.setups().stream().map(AnswerWords::mass).toList(),
            known.size() < plan.setups().size()
                ? AnswerWords.say("setting.mass.some")
                : AnswerWords.massesApart(known),
            false));
  }
}
