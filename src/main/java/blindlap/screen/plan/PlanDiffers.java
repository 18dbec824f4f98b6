package blindlap.screen.plan;

import blindlap.plan.Differences;
import blindlap.plan.Plan;
import blindlap.plan.Setup;
import blindlap.wording.SettingWords;
import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** What the setups have in common and where they differ, a row each, as it is read on the page. */
public final class PlanDiffers {
  private PlanDiffers() {}

  /**
   * One thing across the setups.
   *
   * @param name what it is
   * @param values a value per setup
   * @param note what is to be said of it
   * @param differs true if it differs
   */
  public record Row(String name, List<String> values, String note, boolean differs) {}

  /** Component, settings, the bikes' own differences, and what each setup puts on the scales. */
  static List<Row> rows(Plan plan) {
    Differences differences = Differences.of(plan);
    Stream<Row> settings =
        differences.rows().stream()
            .map(
                row ->
                    new Row(
                        row.name(),
                        row.shown(),
                        SettingWords.difference(row),
                        row.status() != Differences.Status.SAME));
    Stream<Row> bikes =
        differences.bikes().stream()
            .map(
                bike ->
                    new Row(
                        bike.name(),
                        List.of(bike.first(), bike.second()),
                        SettingWords.say("setting.bikes"),
                        true));
    return Stream.of(component(plan).stream(), settings, bikes, mass(plan).stream())
        .flatMap(rows -> rows)
        .toList();
  }

  private static Optional<Row> component(Plan plan) {
    List<String> typed = plan.setups().stream().map(setup -> setup.component().strip()).toList();
    if (typed.stream().allMatch(String::isEmpty)) {
      return Optional.empty();
    }
    boolean same = typed.stream().distinct().count() == 1;
    return Optional.of(
        new Row(
            SettingWords.say("setting.component"),
            typed.stream().map(words -> words.isEmpty() ? "–" : words).toList(),
            SettingWords.say(same ? "setting.same" : "setting.differs"),
            !same));
  }

  /** A mass is no setting and asks for no reason, so that it never has the highlighter. */
  private static Optional<Row> mass(Plan plan) {
    List<BigDecimal> known =
        plan.setups().stream().map(Setup::massOnBike).filter(Objects::nonNull).toList();
    if (known.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Row(
            SettingWords.say("setting.mass"),
            plan.setups().stream().map(SettingWords::mass).toList(),
            known.size() < plan.setups().size()
                ? SettingWords.say("setting.mass.some")
                : SettingWords.massesApart(known),
            false));
  }
}
