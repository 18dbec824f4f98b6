package blindlap.plan;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Checks of the setups, of what differs between them, and of the way of changing. */
final class SetupCheck {
  private static final int MOST_READINGS = 9;

  private final Plan plan;
  private final FoundProblems problems;

  SetupCheck(Plan plan, FoundProblems problems) {
    this.plan = plan;
    this.problems = problems;
  }

  void all() {
    boolean levels = plan.kind() == Plan.Kind.STEPS_DAY || plan.oneSetting() != null;
    if (!levels) {
      number();
    }
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < plan.setups().size(); i++) {
      Setup setup = plan.setups().get(i);
      String where = "setups[" + (i + 1) + "]";
      if (setup.name().isBlank()) {
        problems.add(PlanFault.MISSING_FIELD, where + ".name");
      } else if (!levels // of them LevelsCheck says what it finds
          && (!seen.add(setup.name().strip().toLowerCase(Locale.ROOT))
              | !seen.add("id " + setup.id()))) {
        problems.add(PlanFault.SAME_SETUP, where, setup.name());
      }
      setup(setup, where);
    }
    settings(plan.bike(), "bike");
    bikes();
    if (plan.kind().drawn() && !levels) { // of which LevelsCheck says what differs
      differences();
    }
  }

  private void number() {
    int number = plan.setups().size();
    int least = plan.kind() == Plan.Kind.NOISE_RUN ? 1 : 2;
    if (number < least) {
      problems.add(PlanFault.TOO_FEW_SETUPS, "setups", number, least);
    }
    if (number > 4) {
      problems.add(PlanFault.TOO_MANY_SETUPS, "setups", number);
    }
  }

  private void setup(Setup setup, String where) {
    settings(setup.settings(), where + ".settings");
    positive(setup.massGrams(), where + ".mass_g");
    notNegative(setup.ballastGrams(), where + ".ballast_g");
    notNegative(setup.price() == null ? null : setup.price().amount(), where + ".price.amount");
    Integer most = setup.mostRefits();
    if (most == null) {
      return;
    }
    int handled = Handlings.of(plan).perSetupAtMost();
    if (most < 0) {
      problems.add(PlanFault.NEGATIVE, where + ".most_refits", most);
    } else if (plan.change() == ChangeMethod.REFIT && handled > most) {
      refits(setup, where, handled, most);
    }
  }

  /** The levels of one setting are one part, whose handlings are counted together and said once. */
  private void refits(Setup setup, String where, int handled, int most) {
    StepsDay steps = plan.oneSetting();
    String name = steps == null ? setup.name() : steps.setup();
    if (steps == null || setup.equals(plan.setups().get(0))) {
      boolean telling = plan.kind() == Plan.Kind.TELLING_RUN;
      PlanFault fault = telling ? PlanFault.TELLING_REFITS : PlanFault.REFITS_EXCEEDED;
      problems.add(fault, where + ".most_refits", name, handled, most);
    }
  }

  private void settings(List<Setting> settings, String where) {
    Set<String> names = new HashSet<>();
    for (int i = 0; i < settings.size(); i++) {
      Setting setting = settings.get(i);
      String at = where + "[" + (i + 1) + "]";
      if (setting.name().isBlank()) {
        problems.add(PlanFault.MISSING_FIELD, at + ".name");
      } else if (!names.add(Setting.key(setting.name()))) {
        problems.add(PlanFault.SETTING_TWICE, at, setting.name());
      }
      setting(setting, at);
    }
  }

  private void setting(Setting setting, String at) {
    if (setting.value().isBlank()) {
      problems.add(PlanFault.MISSING_FIELD, at + ".value");
    }
    notNegative(setting.tolerance(), at + ".tolerance");
    positive(setting.range(), at + ".range");
    positive(setting.step(), at + ".step");
    if (setting.readings() < 1 || setting.readings() > MOST_READINGS) {
      problems.add(
          PlanFault.READINGS_RANGE, at + ".readings", setting.readings(), 1, MOST_READINGS);
    }
    BigDecimal value = setting.number();
    BigDecimal range = setting.range();
    BigDecimal step = setting.step();
    if (value == null) {
      return;
    }
    if (range != null && (value.signum() < 0 || value.compareTo(range) > 0)) {
      problems.add(
          PlanFault.OFF_THE_DIAL,
          at + ".value",
          setting.name(),
          setting.value(),
          range.toPlainString());
    }
    if (step != null && step.signum() > 0 && value.remainder(step).signum() != 0) {
      problems.add(
          PlanFault.BETWEEN_STEPS,
          at + ".value",
          setting.name(),
          setting.value(),
          step.toPlainString());
    }
  }

  private void bikes() {
    Bikes bikes = plan.bikes();
    if (plan.change() != ChangeMethod.TWO_BIKES) {
      if (bikes != null) {
        problems.add(PlanFault.BIKES_UNASKED, "bikes");
      }
      return;
    }
    if (plan.setups().size() != 2) {
      problems.add(PlanFault.BIKES_TWO_SETUPS, "change", plan.setups().size());
    }
    if (bikes == null || bikes.first().isBlank() || bikes.second().isBlank()) {
      problems.add(PlanFault.BIKES_MISSING, "bikes");
      return;
    }
    Integer after = bikes.changeAfter();
    if (after != null && (after < 1 || after >= plan.stints())) {
      problems.add(PlanFault.BIKES_CHANGE_RANGE, "bikes.change_after", after, plan.stints() - 1);
    }
  }

  private void differences() {
    Differences differences = Differences.of(plan);
    List<String> names = differences.names();
    if (names.size() > 1 && plan.differencesReason().isBlank()) {
      problems.add(
          PlanFault.DIFFERENCES_WITHOUT_REASON, "differences_reason", String.join(", ", names));
    }
    for (Differences.Row row : differences.broken()) {
      BigDecimal tolerance = row.tolerance();
      problems.add(
          PlanFault.PARITY_BROKEN,
          "setups",
          row.name(),
          String.join(" and ", row.shown()),
          tolerance == null ? "0" : tolerance.toPlainString());
    }
  }

  private void notNegative(@Nullable BigDecimal value, String where) {
    if (value != null && value.signum() < 0) {
      problems.add(PlanFault.NEGATIVE, where, value.toPlainString());
    }
  }

  private void positive(@Nullable BigDecimal value, String where) {
    if (value != null && value.signum() <= 0) {
      problems.add(PlanFault.NOT_POSITIVE, where, value.toPlainString());
    }
  }
}
